package org.isopter.task.check;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.io.FailureText;
import org.isopter.model.check.Rules;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;
import org.snakeyaml.engine.v2.api.Load;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/**
 * Reads a file of suppressions: a YAML list of {@code rule}, {@code reason} and, where it is to
 * hold for less, {@code file} and {@code path}. Every fault is reported at once.
 */
public final class SuppressFile {

  private static final Set<String> KEYS = Set.of("rule", "file", "path", "reason");

  private final List<Fault> faults = new ArrayList<>();

  private SuppressFile() {}

  /** Reads a file of what to pass over, or returns every fault of it. */
  public static Result<List<KnownViolation>> read(Path file) {
    try {
      return new SuppressFile().list(load(Files.readString(file, UTF_8)));
    } catch (IOException failed) {
      return Result.refused(Fault.of("", FailureText.of(failed), "a YAML file that can be read"));
    } catch (YamlEngineException noYaml) {
      return Result.refused(Fault.of("", String.valueOf(noYaml.getMessage()), "YAML"));
    }
  }

  private static Optional<Object> load(String text) {
    return Optional.ofNullable(new Load(LoadSettings.builder().build()).loadFromString(text));
  }

  private Result<List<KnownViolation>> list(Optional<Object> whole) {
    List<KnownViolation> read = new ArrayList<>();
    Object seen = whole.orElse("nothing");
    if (seen instanceof List<?> entries) {
      for (int i = 0; i < entries.size(); i++) {
        entry("[" + i + "]", entries.get(i)).ifPresent(read::add);
      }
    } else {
      faults.add(
          Fault.of("", String.valueOf(seen), "a list of entries with the keys rule and reason"));
    }
    return faults.isEmpty() ? Result.ok(read) : Result.refused(faults);
  }

  private Optional<KnownViolation> entry(String at, Object entry) {
    if (!(entry instanceof Map<?, ?> keys)) {
      faults.add(Fault.of(at, String.valueOf(entry), "an entry with the keys rule and reason"));
      return Optional.empty();
    }
    keys.keySet().stream()
        .filter(key -> !KEYS.contains(key))
        .forEach(key -> faults.add(Fault.of(at, "the key " + key, "rule, file, path or reason")));
    Optional<String> rule = required(at, keys, "rule").filter(id -> isKnown(at, id));
    Optional<String> reason = required(at, keys, "reason");
    Optional<String> file = text(at, keys, "file");
    Optional<String> path = text(at, keys, "path");
    return rule.flatMap(id -> reason.map(why -> new KnownViolation(id, file, path, why)));
  }

  private boolean isKnown(String at, String id) {
    boolean known = Rules.byId(id).isPresent();
    if (!known) {
      String advice = "the rules are listed in docs/rules.md";
      faults.add(new Fault(at + ".rule", id, "the id of a rule", advice));
    }
    return known;
  }

  private Optional<String> required(String at, Map<?, ?> keys, String key) {
    Optional<String> found = text(at, keys, key);
    if (!keys.containsKey(key)) {
      faults.add(Fault.of(at + "." + key, "nothing", "a " + key));
    }
    return found;
  }

  private Optional<String> text(String at, Map<?, ?> keys, String key) {
    if (!keys.containsKey(key)) {
      return Optional.empty();
    }
    Object value = keys.get(key);
    if (value instanceof String text && !text.isBlank()) {
      return Optional.of(text);
    }
    faults.add(Fault.of(at + "." + key, String.valueOf(value), "text that is not blank"));
    return Optional.empty();
  }
}
