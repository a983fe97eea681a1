package org.isopter.mapper.message;

import java.util.List;
import java.util.stream.Stream;
import org.isopter.mapper.json.Raw;
import org.isopter.model.value.Canonical;

/**
 * The forms in which an observation may stand in a message, the fullest first. Which of them is
 * read again as the same fact is for the reader to say.
 */
final class Forms {

  private static final String NOTATION = Canonical.codeSystem("acuity-notation");
  private static final String CODE = "code";
  private static final String COUNT = "valueInteger";
  private static final String CONCEPT = "valueCodeableConcept";
  private static final String COMPONENT = "component";

  private Forms() {}

  static List<Raw.Obj> of(Raw.Obj observation) {
    Raw.Obj plain = withoutNotation(observation);
    Raw.Obj general = withGeneralCode(plain);
    return Stream.of(observation, plain, general, withoutName(plain), withoutName(general))
        .distinct()
        .toList();
  }

  /** An acuity without its notation: the unit says it as well, or the word beside a count. */
  private static Raw.Obj withoutNotation(Raw.Obj observation) {
    if (observation.objects(COMPONENT).stream().anyMatch(Forms::isLetters)) {
      String count =
          observation.get(COUNT).map(one -> one instanceof Raw.Leaf n ? n.text() : "").orElse("");
      return withoutPart(
          observation.without(COUNT).with("valueString", Raw.of(count + " letters")));
    }
    return withoutPart(observation);
  }

  private static Raw.Obj withoutPart(Raw.Obj observation) {
    List<Raw.Obj> parts =
        observation.objects(COMPONENT).stream().filter(part -> !isNotation(part)).toList();
    return parts.isEmpty()
        ? observation.without(COMPONENT)
        : observation.with(COMPONENT, Raw.of(parts));
  }

  private static boolean isNotation(Raw.Obj part) {
    return codings(part).anyMatch(coding -> coding.string("system").orElse("").equals(NOTATION));
  }

  private static boolean isLetters(Raw.Obj part) {
    return isNotation(part)
        && codings(part).anyMatch(coding -> coding.string(CODE).orElse("").equals("letters"));
  }

  private static Stream<Raw.Obj> codings(Raw.Obj part) {
    return part.object(CONCEPT).stream().flatMap(concept -> concept.objects("coding").stream());
  }

  /** A value by its code alone: a name that denies ("No double vision") may not be understood. */
  private static Raw.Obj withoutName(Raw.Obj observation) {
    List<Raw.Obj> codings = codings(observation).map(coding -> coding.without("display")).toList();
    return codings.isEmpty()
        ? observation
        : observation.with(CONCEPT, Raw.Obj.EMPTY.with("coding", Raw.of(codings)));
  }

  /** The last code is that of the test, those before it are of what it found or of a side. */
  private static Raw.Obj withGeneralCode(Raw.Obj observation) {
    Raw.Obj code = observation.object(CODE).orElse(Raw.Obj.EMPTY);
    List<Raw.Obj> codings = code.objects("coding");
    int first = Math.max(0, codings.size() - 1);
    return observation.with(
        CODE, code.with("coding", Raw.of(codings.subList(first, codings.size()))));
  }
}
