package org.isopter.model.note.habit;

import java.time.LocalTime;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.isopter.model.exam.Setting;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.phrase.PhraseLine;
import org.isopter.model.value.Fault;

/**
 * What holds for all records of a department unless a record says otherwise.
 *
 * <p>Each is a line of kind {@code set} in the file of habits: {@code performer}, {@code setting}
 * (a word of {@link Setting}), {@code zone} (the name of a time zone), {@code hours} (08:00-18:00,
 * when the clinic is open), {@code id-system} and {@code subject-system} (URIs).
 */
@API(status = Status.STABLE)
public final class Settings {

  private static final String HOURS = "([01]\\d|2[0-3]):[0-5]\\d-([01]\\d|2[0-3]):[0-5]\\d";

  private static final Map<String, String> FORMS =
      Map.of(
          "performer", "\\S.*",
          "setting", words(),
          "zone", "[A-Za-z][A-Za-z0-9_+-]*(/[A-Za-z0-9_+-]+)*",
          "hours", HOURS,
          "id-system", "[a-z][a-z0-9+.-]*:\\S+",
          "subject-system", "[a-z][a-z0-9+.-]*:\\S+");

  private final Map<String, String> values;

  private Settings(Map<String, String> values) {
    this.values = Map.copyOf(values);
  }

  static Settings none() {
    return new Settings(Map.of());
  }

  /** Returns the settings of a file; adds what is wrong with a line to the faults. */
  static Settings of(List<PhraseLine> lines, List<Fault> faults) {
    Map<String, String> values = new HashMap<>();
    for (PhraseLine line : lines) {
      String form = FORMS.getOrDefault(line.meaning(), "");
      String value = String.join("|", line.phrases());
      if (form.isEmpty()) {
        faults.add(
            Fault.of(line.place(), "\"" + line.meaning() + "\"", String.join(", ", names())));
      } else if (!value.matches(form)) {
        faults.add(Fault.of(line.place(), "\"" + value + "\"", wanted(line.meaning())));
      } else if (values.put(line.meaning(), value) != null) {
        faults.add(Fault.of(line.place(), "\"" + line.meaning() + "\" twice", "it once"));
      }
    }
    return new Settings(values);
  }

  /** Returns the name of who examines. */
  public Optional<String> performer() {
    return value("performer");
  }

  /** Returns where is examined. */
  public Optional<Setting> setting() {
    return value("setting")
        .flatMap(
            word ->
                List.of(Setting.values()).stream().filter(s -> s.word().equals(word)).findFirst());
  }

  /** Returns the name of the time zone of the clock on the wall. */
  public Optional<String> zone() {
    return value("zone");
  }

  /** Returns the URI of who gives out the ids of records. */
  public Optional<String> idSystem() {
    return value("id-system");
  }

  /** Returns the URI of who gives out the ids of persons. */
  public Optional<String> subjectSystem() {
    return value("subject-system");
  }

  /** Returns the one reading of a time that lies in the hours of the clinic. */
  Optional<PossibleReading> open(List<PossibleReading> readings) {
    List<PossibleReading> open =
        readings.stream()
            .filter(reading -> reading.kind().equals("time"))
            .filter(reading -> value("hours").filter(hours -> isIn(hours, reading)).isPresent())
            .toList();
    return open.stream().findFirst().filter(any -> open.size() == 1);
  }

  private static boolean isIn(String hours, PossibleReading reading) {
    LocalTime from = LocalTime.parse(hours.substring(0, 5));
    LocalTime to = LocalTime.parse(hours.substring(6));
    return time(reading).filter(time -> !time.isBefore(from) && !time.isAfter(to)).isPresent();
  }

  /** Returns the time of a reading, which is on the clock of 24 hours. */
  private static Optional<LocalTime> time(PossibleReading reading) {
    List<String> words = Lexer.words(reading.text());
    for (int i = 1; i + 1 < words.size(); i++) {
      if (words.get(i).equals(":")
          && words.get(i - 1).matches("\\d\\d")
          && words.get(i + 1).matches("\\d\\d")) {
        return Optional.of(LocalTime.parse(words.get(i - 1) + ":" + words.get(i + 1)));
      }
    }
    return Optional.empty();
  }

  private Optional<String> value(String name) {
    return Optional.ofNullable(values.get(name));
  }

  private static String words() {
    return String.join("|", List.of(Setting.values()).stream().map(Setting::word).toList());
  }

  private static List<String> names() {
    return FORMS.keySet().stream().sorted().toList();
  }

  private static String wanted(String name) {
    return switch (name) {
      case "setting" -> words().replace("|", ", ");
      case "zone" -> "the name of a time zone: Europe/London";
      case "hours" -> "opening and closing: 08:00-18:00";
      default -> "a URI: https://hospital.example/ids";
    };
  }
}
