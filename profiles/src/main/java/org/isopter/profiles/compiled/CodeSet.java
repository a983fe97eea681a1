package org.isopter.profiles.compiled;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.isopter.model.value.Code;

/** Codes, found by their system and then by the code itself. */
final class CodeSet {

  private static final Name CODE = Name.of("code");
  private static final Name SYSTEM = Name.of("system");
  private static final Name CODING = Name.of("coding");

  private final Map<String, Set<String>> bySystem = new HashMap<>();
  private final Set<String> all = new HashSet<>();

  CodeSet(Collection<Code> codes) {
    for (Code code : codes) {
      bySystem.computeIfAbsent(code.system(), any -> new HashSet<>()).add(code.code());
      all.add(code.code());
    }
  }

  /** Says whether a concept has a coding, or a code is that, of one of the codes. */
  boolean holds(Item item) {
    if (item.type().equals("code")) {
      return all.contains(item.text());
    }
    return item.any(CODING, this::holdsCoding);
  }

  private boolean holdsCoding(Item coding) {
    Set<String> codes = bySystem.get(coding.text(SYSTEM));
    return codes != null && codes.contains(coding.text(CODE));
  }
}
