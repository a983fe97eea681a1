package org.isopter.model.note.habit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.isopter.model.note.word.WordFiles;
import org.isopter.model.note.word.WordRole;
import org.isopter.model.phrase.PhraseFile;
import org.isopter.model.phrase.PhraseLine;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * What a department means by forms that others read otherwise, and phrases of its own.
 *
 * <p>A file of phrases ({@link PhraseFile}) with lines of these kinds: {@code fhir} is for reading
 * what other systems write and says nothing of notes; {@code set} states what holds for all records
 * ({@link Settings}); {@code say} adds phrases; {@code habit} states what a form means: {@code
 * eyes} (14/16 without sides) {@code right then left} or {@code left then right}; {@code both} (OU
 * where both eyes may be tested together) {@code together} or {@code each eye}; {@code notation}
 * (0.8) {@code decimal} or {@code logMAR}; {@code light} (a pupil of 3 mm) {@code room}, {@code
 * bright} or {@code dim}; {@code direction} (C/D 0.3) {@code vertical} or {@code horizontal};
 * {@code plates} (colour vision 14/17) {@code ishihara} or {@code HRR}.
 */
@API(status = Status.STABLE)
public final class Habits {

  private static final Map<String, Set<String>> CHOICES =
      Map.of(
          "eyes", Set.of("right then left", "left then right"),
          "both", Set.of("together", "each eye"),
          "notation", Set.of("decimal", "logMAR", "letters"),
          "light", Set.of("room", "bright", "dim"),
          "direction", Set.of("vertical", "horizontal"),
          "plates", Set.of("ishihara", "HRR"));

  /** What a cup-disc ratio without a direction stands for. */
  private static final String RATIO = "CDR";

  private final Map<String, String> choices;
  private final Phrasebook book;
  private final Settings settings;
  private final List<PhraseLine> fhir;
  private final UnclearWords unclear;

  private Habits(
      Map<String, String> choices,
      Phrasebook book,
      UnclearWords unclear,
      Settings settings,
      List<PhraseLine> fhir) {
    this.unclear = unclear;
    this.fhir = List.copyOf(fhir);
    this.choices = Map.copyOf(choices);
    this.book = book;
    this.settings = settings;
  }

  /** Returns habits that state nothing: what is not clear is asked. */
  public static Habits none() {
    return new Habits(
        Map.of(), StandardPhrases.BOOK, UnclearWords.STANDARD, Settings.none(), List.of());
  }

  /** Reads a file of habits, or says what is wrong with each of its lines. */
  public static Result<Habits> read(String text) {
    Result<List<PhraseLine>> lines = PhraseFile.read(text);
    return lines.isOk() ? of(lines.orThrow()) : Result.refused(lines.faults());
  }

  private static Result<Habits> of(List<PhraseLine> lines) {
    Map<String, String> choices = new HashMap<>();
    List<PhraseLine> said = new ArrayList<>();
    List<PhraseLine> set = new ArrayList<>();
    List<PhraseLine> fhir = new ArrayList<>();
    List<PhraseLine> asked = new ArrayList<>();
    List<Fault> faults = new ArrayList<>();
    for (PhraseLine line : lines) {
      switch (line.kind()) {
        case "habit" -> habit(line, choices, faults);
        case "say" -> {
          faults.addAll(OwnPhrases.faults(line));
          said.add(line);
        }
        case "set" -> set.add(line);
        case "fhir" -> fhir.add(line);
        case "ask" -> ask(line, asked, faults);
        default -> role(line, said, faults);
      }
    }
    asked.addAll(said);
    UnclearWords unclear = asked.isEmpty() ? UnclearWords.STANDARD : UnclearWords.with(asked);
    Settings settings = Settings.of(set, faults);
    return faults.isEmpty()
        ? Result.ok(
            new Habits(
                choices,
                book(said, choices.getOrDefault("direction", "")),
                unclear,
                settings,
                fhir))
        : Result.refused(faults);
  }

  /** Returns the standard book with the phrases of a department. */
  private static Phrasebook book(List<PhraseLine> said, String direction) {
    List<PhraseLine> lines = new ArrayList<>(said);
    if (!direction.isEmpty()) {
      WordFiles.lines(WordRole.SAY).stream()
          .filter(line -> line.meaning().equals(RATIO))
          .map(line -> line.standingFor(RATIO + " " + direction.charAt(0)))
          .forEach(lines::add);
    }
    return lines.isEmpty()
        ? StandardPhrases.BOOK
        : StandardPhrases.BOOK.with(lines, direction.isEmpty() ? Set.of() : Set.of(RATIO));
  }

  private static void habit(PhraseLine line, Map<String, String> choices, List<Fault> faults) {
    Set<String> known = CHOICES.getOrDefault(line.meaning(), Set.of());
    String choice = line.phrases().get(0);
    if (known.isEmpty()) {
      faults.add(
          Fault.of(
              line.place(),
              "\"" + line.meaning() + "\"",
              "eyes, both, notation, light, direction or plates"));
    } else if (!known.contains(choice) || line.phrases().size() > 1) {
      faults.add(Fault.of(line.place(), "\"" + choice + "\"", String.join(" or ", sorted(known))));
    } else if (choices.put(line.meaning(), choice) != null) {
      faults.add(Fault.of(line.place(), "\"" + line.meaning() + "\" twice", "one habit of a kind"));
    }
  }

  private static void ask(PhraseLine line, List<PhraseLine> asked, List<Fault> faults) {
    if (UnclearWords.Doubt.of(line.meaning()).isPresent()) {
      asked.add(line);
    } else {
      faults.add(Fault.of(line.place(), "\"" + line.meaning() + "\"", UnclearWords.doubts()));
    }
  }

  /** Adds words of a role: each stands for the first word that the library knows of that role. */
  private static void role(PhraseLine line, List<PhraseLine> said, List<Fault> faults) {
    WordRole.of(line.kind())
        .filter(WordRole::isOpen)
        .map(role -> WordFiles.of(role).iterator().next())
        .ifPresentOrElse(
            word -> said.add(line.standingFor(word)),
            () -> faults.add(Fault.of(line.place(), "\"" + line.kind() + "\"", kinds())));
  }

  private static String kinds() {
    return "say, habit, set, fhir, ask"
        + List.of(WordRole.values()).stream()
            .filter(WordRole::isOpen)
            .map(role -> ", " + role.word())
            .collect(Collectors.joining());
  }

  private static List<String> sorted(Set<String> words) {
    return words.stream().sorted().toList();
  }

  /** Returns the phrases that are read, with their languages and sources. */
  @API(status = Status.INTERNAL)
  public Phrasebook book() {
    return book;
  }

  /** Returns the reading that the habits choose, if they choose one. */
  public Optional<PossibleReading> chosen(List<PossibleReading> readings) {
    return readings.stream()
        .filter(
            reading -> reading.isCertain() || reading.choice().equals(choices.get(reading.kind())))
        .findFirst()
        .or(() -> settings.open(readings));
  }

  /** Returns the words that may mean one of several things. */
  UnclearWords unclear() {
    return unclear;
  }

  /** Returns the lines about FHIR of others, which say nothing of notes. */
  public List<PhraseLine> fhir() {
    return fhir;
  }

  /** Returns what holds for all records of the department. */
  public Settings settings() {
    return settings;
  }
}
