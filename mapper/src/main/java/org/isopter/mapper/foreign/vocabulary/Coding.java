package org.isopter.mapper.foreign.vocabulary;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import org.isopter.mapper.foreign.ledger.Ledger;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.RuleId;
import org.isopter.model.text.Memo;
import org.isopter.model.value.Code;

/**
 * A coding as it is understood.
 *
 * @param place where it stands
 * @param token its code as {@code system|code}, with the system it belongs to
 * @param rule how the system was found, empty where it is the one that is written
 * @param sure whether it may stand alone; otherwise another coding must say the same
 */
public record Coding(Place place, String token, String rule, boolean sure) {

  private static final Pattern SNOMED_SHAPE = Pattern.compile("[1-9]\\d{5,17}");
  private static final Pattern LOINC_SHAPE = Pattern.compile("(LA)?\\d{1,7}-\\d");

  /** The systems whose codes others may know; branch 19 of HL7's identifiers is for examples. */
  private static final Pattern PUBLISHED =
      Pattern.compile(
          "snomed|loinc|hl7\\.org|dicom|unitsofmeasure|/sid/|^urn:oid:2\\.16\\.840\\.1\\.113883\\.(?!19\\.)");

  private static final Memo<Boolean> SYSTEMS =
      new Memo<>(system -> PUBLISHED.matcher(system).find());

  /** The systems by the other names that they are known under. */
  private static final Map<String, String> ALIASES =
      Map.ofEntries(
          Map.entry("urn:oid:2.16.840.1.113883.6.96", Code.SNOMED),
          Map.entry("https://snomed.info/sct", Code.SNOMED),
          Map.entry("http://snomed.info/sct/", Code.SNOMED),
          Map.entry("SNOMED CT", Code.SNOMED),
          Map.entry("SNOMED-CT", Code.SNOMED),
          // The names in table 0396 of HL7 version 2.
          Map.entry("SCT", Code.SNOMED),
          Map.entry("LN", Code.LOINC),
          Map.entry("LOINC", Code.LOINC),
          Map.entry("urn:oid:2.16.840.1.113883.6.1", Code.LOINC),
          Map.entry("https://loinc.org", Code.LOINC),
          Map.entry("http://loinc.org/", Code.LOINC));

  /** Returns the codings of a concept. */
  public static List<Coding> of(Place concept, Predicate<String> known, Vocabulary vocabulary) {
    List<Coding> codings = new ArrayList<>();
    for (Place place : concept.list("coding")) {
      codings.add(single(place, known, vocabulary));
    }
    return codings;
  }

  /** Takes the coding; its display too, where it is the one that is known. */
  public void take(String byRule, Optional<String> display) {
    String by = rule.isEmpty() ? byRule : rule;
    place.take(by, "system", "code");
    display
        .filter(known -> Vocabulary.sameName(known, place.text("display")))
        .ifPresent(known -> place.take(by, "display"));
  }

  /** Returns one coding. */
  public static Coding single(Place place, Predicate<String> known, Vocabulary vocabulary) {
    String system = place.text("system").strip();
    String code = place.text("code").strip();
    String plain = system + "|" + code;
    if (known.test(plain)) {
      return new Coding(place, plain, Ledger.CATALOGUE, true);
    }
    String alias = alias(system) + "|" + code;
    if (known.test(alias)) {
      return new Coding(place, alias, RuleId.CODE_SYSTEM_ALIAS, true);
    }
    Optional<String> shaped = shaped(code).filter(known);
    if (shaped.isEmpty() || !isMistakable(system)) {
      return new Coding(place, plain, Ledger.CATALOGUE, true);
    }
    String rule = system.isEmpty() ? RuleId.CODE_MISSING_SYSTEM : RuleId.CODE_WRONG_SYSTEM;
    boolean named =
        vocabulary
            .display(shaped.get())
            .filter(name -> Vocabulary.sameName(name, place.text("display")))
            .isPresent();
    return new Coding(place, shaped.get(), rule, named);
  }

  /** Says whether a coding has no code that others may know: its display is then all it says. */
  public static boolean isLocal(Place coding) {
    String code = coding.text("code");
    String system = alias(coding.text("system"));
    boolean unnamed = system.isEmpty() && shaped(code).isEmpty();
    return code.isEmpty() || unnamed || (!system.isEmpty() && !isPublished(system));
  }

  private static boolean isPublished(String system) {
    return system.equals(Code.SNOMED) || system.equals(Code.LOINC) || SYSTEMS.of(system);
  }

  private static String alias(String system) {
    // An edition or version of SNOMED CT is named behind a slash.
    return system.startsWith(Code.SNOMED + "/")
        ? Code.SNOMED
        : ALIASES.getOrDefault(system, system);
  }

  /** A private system may use the same digits for something else; a published one may not. */
  private static boolean isMistakable(String system) {
    return system.isEmpty() || system.equals(Code.SNOMED) || system.equals(Code.LOINC);
  }

  private static Optional<String> shaped(String code) {
    if (SNOMED_SHAPE.matcher(code).matches()) {
      return Optional.of(Code.SNOMED + "|" + code);
    }
    return LOINC_SHAPE.matcher(code).matches()
        ? Optional.of(Code.LOINC + "|" + code)
        : Optional.empty();
  }
}
