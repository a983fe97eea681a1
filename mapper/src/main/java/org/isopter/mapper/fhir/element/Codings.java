package org.isopter.mapper.fhir.element;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.model.finding.Answers;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;

/** Reads coded elements, each of which has one coding with the display of its code system. */
public final class Codings {

  private Codings() {}

  /** Takes one coding; the display may be left out, but may not be another's. */
  static Code take(ElementCursor coding) {
    String system = coding.text("system").orElse("");
    String code = coding.text("code").orElse("");
    String display = coding.text("display").orElse("");
    return new Code(system, code.isEmpty() ? "(none)" : code, display);
  }

  /** Takes a concept that must be this one. */
  public static void expect(ElementCursor holder, String name, Code wanted) {
    if (holder.takeWritten(name, WrittenJson.concept(wanted))) {
      return;
    }
    holder
        .required(name)
        .flatMap(concept -> concept.only("coding"))
        .ifPresent(coding -> same(coding, take(coding), wanted));
  }

  /** Takes a concept that must be one of a list. */
  public static Optional<Concept> oneOf(ElementCursor holder, String name, Answers answers) {
    Optional<Concept> written = holder.takeWritten(name, answers);
    return written.isPresent()
        ? written
        : holder
            .required(name)
            .flatMap(concept -> concept.only("coding"))
            .flatMap(coding -> oneOf(coding, answers));
  }

  /** Takes the codings of a concept that must be these, in any order. */
  public static void expectAll(ElementCursor concept, List<Code> wanted) {
    expectAll(concept, wanted, List.of());
  }

  /**
   * Takes the codings of a concept that must be these, in any order; one that older versions wrote
   * stands for what it was replaced by.
   */
  public static void expectAll(ElementCursor concept, List<Code> wanted, List<Code> former) {
    if (concept.takeWritten("coding", wanted)) {
      return;
    }
    List<Code> missing = new ArrayList<>(wanted);
    for (ElementCursor coding : concept.objects("coding")) {
      Code seen = take(coding);
      if (isFormer(seen, wanted, former)) {
        missing.clear();
      } else {
        check(coding, seen, wanted);
        missing.removeIf(seen::sameAs);
      }
    }
    for (Code code : missing) {
      concept.fault("coding", "no " + show(code), show(code));
    }
  }

  /** Of a code that is still written only the display may be an older one. */
  private static boolean isFormer(Code seen, List<Code> wanted, List<Code> former) {
    return wanted.stream().anyMatch(seen::sameAs)
        ? former.contains(seen)
        : former.stream().anyMatch(seen::sameAs);
  }

  private static void check(ElementCursor coding, Code seen, List<Code> wanted) {
    for (Code code : wanted) {
      if (seen.sameAs(code)) {
        same(coding, seen, code);
        return;
      }
    }
    List<String> all = wanted.stream().map(Codings::show).toList();
    coding.fault("", show(seen), all.size() == 1 ? all.get(0) : "one of " + all);
  }

  private static Optional<Concept> oneOf(ElementCursor coding, Answers answers) {
    Code seen = take(coding);
    Optional<Concept> concept = answers.byCode(seen.system(), seen.code());
    if (concept.isEmpty()) {
      coding.fault("", show(seen), answers.choices());
    }
    concept
        .filter(found -> !seen.equals(found.code()))
        .filter(found -> found.formerCodes().stream().noneMatch(seen::sameAs))
        .ifPresent(found -> same(coding, seen, found.code()));
    return concept;
  }

  private static void same(ElementCursor coding, Code seen, Code wanted) {
    if (!seen.sameAs(wanted)) {
      coding.fault("", show(seen), show(wanted));
    } else if (!seen.display().isEmpty() && !seen.display().equals(wanted.display())) {
      coding.fault("display", show(seen), show(wanted));
    }
  }

  private static String show(Code code) {
    String display = code.display().isEmpty() ? "" : " \"" + code.display() + "\"";
    return code.token() + display;
  }
}
