package org.isopter.profiles;

import java.util.List;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Tells the messages that say something new from those that repeat or do not concern a sender. */
final class Noise {

  static final String NOT_IN_VALUE_SET = "Terminology_TX_NoValid";
  static final Pattern VALUE_SET = Pattern.compile("\\(([a-z]+:[^|) ]+)");
  static final String WRONG_TYPE = "Extension_PROF_Type";
  private static final String UNKNOWN_CODE = "Terminology_PassThrough_TX_Message";
  private static final String UNKNOWN_PROFILE = "Validation_VAL_Profile_Unknown";
  private static final String STANDARD_REASONS = "http://hl7.org/fhir/ValueSet/data-absent-reason";
  private static final String OPEN_SLICE = "Details_for__matching_against_Profile_";

  private static final Pattern CODES = Pattern.compile("\\(codes = ([^)]+)\\)$");
  private static final Pattern COMMA = Pattern.compile(", ");

  private static final Set<String> FROM_WRONG_TYPE =
      Set.of("Profile_VAL_MissingElement", "Validation_VAL_Profile_Minimum");

  private final Definitions definitions;
  private final List<RawMessage> all;

  private Noise(Definitions definitions, List<RawMessage> all) {
    this.definitions = definitions;
    this.all = all;
  }

  static List<RawMessage> without(Definitions definitions, List<RawMessage> messages) {
    Noise noise = new Noise(definitions, messages);
    return messages.stream().filter(message -> !noise.is(message)).toList();
  }

  private boolean is(RawMessage message) {
    // The standard's list of reasons may be extended; what ours adds is checked against ours.
    boolean extended = !message.isError() && message.text().contains(STANDARD_REASONS);
    // The library stumbles over a code system that is not at hand, and warns of its own mistake.
    boolean stumbled = !message.isError() && message.text().contains("\"this.codeSystem\" is null");
    return extended || stumbled || isListed(message) || isNamed(message);
  }

  /** The library wants every coding in the value set where it does not know one's code system. */
  private boolean isListed(RawMessage message) {
    Matcher set = VALUE_SET.matcher(message.text());
    Matcher codes = CODES.matcher(message.text());
    return message.id().startsWith(NOT_IN_VALUE_SET)
        && set.find()
        && codes.find()
        && COMMA.splitAsStream(codes.group(1)).anyMatch(c -> definitions.lists(set.group(1), c));
  }

  private boolean isNamed(RawMessage message) {
    return switch (message.id()) {
      case OPEN_SLICE -> true;
      // A code of a system that is not at hand is only warned of, and is not for us to judge.
      case UNKNOWN_CODE -> !message.isError() || isExplained(message);
      case UNKNOWN_PROFILE -> message.path().isEmpty();
      default -> FROM_WRONG_TYPE.contains(message.id()) && isBelow(message, WRONG_TYPE);
    };
  }

  /** An unknown code adds nothing where the element that has it is refused as a whole. */
  private boolean isExplained(RawMessage message) {
    return all.stream()
        .anyMatch(
            other ->
                other.isError()
                    && !other.id().equals(UNKNOWN_CODE)
                    && !other.id().contains("#")
                    && message.isWithin(other));
  }

  private boolean isBelow(RawMessage message, String id) {
    return all.stream().anyMatch(other -> other.id().equals(id) && message.isWithin(other));
  }
}
