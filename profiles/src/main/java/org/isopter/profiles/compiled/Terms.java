package org.isopter.profiles.compiled;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.isopter.model.exam.ExamCodes;
import org.isopter.model.value.Code;
import org.isopter.model.wire.Condition;
import org.isopter.model.wire.Element;
import org.isopter.model.wire.Fixed;

/** The codes that the profiles use, with their displays. */
final class Terms {

  private static final Name SYSTEM = Name.of("system");
  private static final Name CODE = Name.of("code");
  private static final Name DISPLAY = Name.of("display");

  private final Map<String, Map<String, String>> displays = new HashMap<>();

  Terms(List<Element> profiles) {
    add(ExamCodes.REPORT);
    add(ExamCodes.ASSEMBLER);
    profiles.forEach(this::add);
  }

  /** Says whether a coding has a known code, and no display or that of its code. */
  boolean isKnown(Item coding) {
    String display = displays.getOrDefault(coding.text(SYSTEM), Map.of()).get(coding.text(CODE));
    return display != null && !coding.any(DISPLAY, stated -> !stated.text().equals(display));
  }

  private void add(Element element) {
    element.conditions(Condition.Bound.class).forEach(bound -> bound.codes().forEach(this::add));
    element.conditions(Condition.Pattern.class).forEach(pattern -> add(pattern.fixed()));
    element.children().forEach(this::add);
    element.slicing().ifPresent(how -> how.slices().forEach(this::add));
  }

  private void add(Fixed fixed) {
    if (fixed instanceof Fixed.OfCoding coding) {
      add(coding.code());
    } else if (fixed instanceof Fixed.OfConcept concept) {
      add(concept.code());
    }
  }

  private void add(Code code) {
    displays
        .computeIfAbsent(code.system(), any -> new HashMap<>())
        .put(code.code(), code.display());
  }
}
