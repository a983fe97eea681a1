package org.isopter.profiles;

import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.isopter.model.wire.Condition;
import org.isopter.model.wire.FhirPath;

/** Puts the library's messages in words that say what was seen and what was wanted. */
final class LibraryWording {

  private static final Pattern PROFILE = Pattern.compile("(?:profile|from) ([^ |]+)\\|");
  private static final Pattern SLICE = Pattern.compile("^Slice '([^']+)'");
  private static final Pattern COUNT =
      Pattern.compile(
          "^(\\S+): (?:max allowed|minimum required) = (\\d+), but (?:only )?found (\\d+)");
  private static final Pattern TYPE =
      Pattern.compile("allows for the types? (.+) but found type (\\S+)$");
  private static final Pattern FIXED =
      Pattern.compile("^Value is '(.*)' but is fixed to '(.*)' in the profile");

  private final Definitions definitions;
  private final ValidatedResource document;

  LibraryWording(Definitions definitions, ValidatedResource document) {
    this.definitions = definitions;
    this.document = document;
  }

  public ValidationMessage of(RawMessage raw) {
    return new ValidationMessage(raw.severity(), raw.path(), text(raw));
  }

  private String text(RawMessage raw) {
    String id = raw.id();
    if (id.contains("#")) {
      return invariant(raw, id.substring(id.indexOf('#') + 1));
    }
    if (id.startsWith(Noise.NOT_IN_VALUE_SET)) {
      return notInValueSet(raw);
    }
    return switch (id) {
      case "Validation_VAL_Profile_Minimum_SLICE" -> missingSlice(raw);
      case "_DT_Fixed_Wrong" -> notFixed(raw);
      case "Validation_VAL_Profile_Maximum" -> count(raw, "at most");
      case "Validation_VAL_Profile_Minimum" -> count(raw, "at least");
      case Noise.WRONG_TYPE -> wrongType(raw);
      default -> raw.text();
    };
  }

  private String invariant(RawMessage raw, String key) {
    return definitions.rule(key).map(found -> invariant(raw, found)).orElse(raw.text());
  }

  private String invariant(RawMessage raw, Condition.Rule rule) {
    String seen =
        rule.seen().stream()
            .map(FhirPath::of)
            .map(path -> document.seen(raw.path() + "." + path))
            .collect(Collectors.joining(" beside "));
    return rule.key() + ": saw " + seen + ", wanted: " + rule.human();
  }

  private String missingSlice(RawMessage raw) {
    Matcher slice = SLICE.matcher(raw.text());
    Matcher profile = PROFILE.matcher(raw.text());
    if (!slice.find() || !profile.find()) {
      return raw.text();
    }
    String id = slice.group(1);
    String code = definitions.slice(profile.group(1), id);
    return "saw no element of slice " + id + ", wanted one with " + code;
  }

  private String notInValueSet(RawMessage raw) {
    Matcher set = Noise.VALUE_SET.matcher(raw.text());
    if (!set.find()) {
      return raw.text();
    }
    return definitions
        .members(set.group(1))
        .map(members -> "saw " + document.seen(raw.path()) + ", wanted one of: " + members)
        .orElse(raw.text());
  }

  private static String notFixed(RawMessage raw) {
    Matcher fixed = FIXED.matcher(raw.text());
    return fixed.find() ? "saw " + fixed.group(1) + ", wanted " + fixed.group(2) : raw.text();
  }

  private static String count(RawMessage raw, String limit) {
    Matcher count = COUNT.matcher(raw.text());
    return count.find()
        ? "saw %s of %s, wanted %s %s"
            .formatted(count.group(3), count.group(1), limit, count.group(2))
        : raw.text();
  }

  private static String wrongType(RawMessage raw) {
    Matcher type = TYPE.matcher(raw.text());
    return type.find()
        ? "saw a value of type " + type.group(2) + ", wanted " + type.group(1)
        : raw.text();
  }
}
