package org.isopter.model.note;

import java.time.OffsetDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.Colours;
import org.isopter.model.catalogue.VisualFunctions;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Finding;
import org.isopter.model.note.grammar.Common;
import org.isopter.model.note.grammar.Wording;
import org.isopter.model.note.item.Grammars;
import org.isopter.model.note.token.Token;
import org.isopter.model.note.token.WrittenWords;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;
import org.isopter.model.value.Site;

/**
 * Writes facts as bedside shorthand, one item a line, so that a {@link NoteReader} gives back the
 * same facts.
 *
 * <p>Shorthand has no words for: remarks; a device; a time on another day, in another offset, or
 * with seconds; the edges of a blind spot; a field of which no region is said; the figures that a
 * perimeter prints; two different values of one finding, eye, condition, technique and time. See
 * {@link #canSay}.
 */
public final class NoteWriter {

  private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);

  /** What is tested of each eye or of both together: OU alone does not tell which. */
  private static final Set<Finding<?>> ASKED =
      Set.of(
          Acuities.DISTANCE,
          Acuities.NEAR,
          Acuities.BOUND,
          Colours.PLATES,
          VisualFunctions.FIXATION,
          VisualFunctions.CONTRAST,
          VisualFunctions.PREFERENTIAL_LOOKING);

  private static final Map<Finding<?>, Wording<?>> WORDINGS = new HashMap<>();

  static {
    Grammars.WORDINGS.forEach(wording -> WORDINGS.put(wording.finding(), wording));
  }

  private final Optional<OffsetDateTime> performed;

  private NoteWriter(Optional<OffsetDateTime> performed) {
    this.performed = performed;
  }

  /** Returns a writer of facts that have no times of their own. */
  public static NoteWriter standard() {
    return new NoteWriter(Optional.empty());
  }

  /** Returns a writer of facts of an examination; times on its day can be written. */
  public static NoteWriter performed(OffsetDateTime when) {
    return new NoteWriter(Optional.of(Objects.requireNonNull(when, "when")));
  }

  /** Returns the facts of an examination in shorthand; its header is not written. */
  public static Result<String> write(Exam exam) {
    return performed(exam.header().performed()).write(exam.facts());
  }

  /** Returns the facts in shorthand, or a fault for each that shorthand cannot say. */
  public Result<String> write(List<Fact<?>> facts) {
    List<Fault> faults = new ArrayList<>();
    List<String> lines = new ArrayList<>();
    for (Fact<?> fact : facts) {
      line(fact).ifPresentOrElse(line -> lines.add(line + "\n"), () -> faults.add(unsayable(fact)));
    }
    repeated(facts).map(NoteWriter::repeatedFault).ifPresent(faults::add);
    return faults.isEmpty() ? Result.ok(String.join("", lines)) : Result.refused(faults);
  }

  /** Says whether shorthand has words for a fact. */
  public boolean canSay(Fact<?> fact) {
    return line(fact).isPresent();
  }

  private Optional<String> line(Fact<?> fact) {
    boolean plain = fact.remarks().isEmpty() && fact.device().isEmpty();
    return plain ? clock(fact).flatMap(time -> line(fact, time)) : Optional.empty();
  }

  @SuppressWarnings("unchecked") // A wording is kept under its own finding.
  private static <V> Optional<String> line(Fact<V> fact, String time) {
    return Optional.ofNullable((Wording<V>) WORDINGS.get(fact.finding()))
        .flatMap(wording -> line(wording, fact, time));
  }

  private static <V> Optional<String> line(Wording<V> wording, Fact<V> fact, String time) {
    Optional<String> words =
        fact.outcome().fold(wording.value(), reason -> Optional.of(Common.ABSENCES.phrase(reason)));
    return words.map(
        value ->
            WrittenWords.join(
                wording.heading(),
                fact.outcome().ifFound().map(wording.conditions()).orElse(""),
                fact.method().map(NoteWriter::phrase).orElse(""),
                time,
                side(fact),
                wording.lead(),
                value));
  }

  private static String phrase(Concept concept) {
    return concept.word().replace('-', ' ');
  }

  private static String side(Fact<?> fact) {
    boolean pair = fact.finding().sites().equals(Site.PAIR);
    if (ASKED.contains(fact.finding()) && fact.site() == Site.BOTH) {
      return Common.BOTH_OPEN;
    }
    return pair ? "" : Common.SIDES.phrase(fact.site());
  }

  /** Returns the time in words, nothing said for no time; empty when it cannot be said. */
  private Optional<String> clock(Fact<?> fact) {
    if (fact.at().isEmpty()) {
      return Optional.of("");
    }
    OffsetDateTime at = fact.at().get();
    return performed
        .map(day -> day.with(at.toLocalTime()))
        .filter(said -> said.equals(at) && at.getSecond() == 0 && at.getNano() == 0)
        .map(said -> "@ " + CLOCK.format(said));
  }

  private static Optional<Fact<?>> repeated(List<Fact<?>> facts) {
    Token place = new Token(Token.Kind.WORD, "", "", 0, 0, 1, 1);
    List<NotedFact> noted = new ArrayList<>();
    for (Fact<?> fact : facts) {
      NotedFact next = new NotedFact(fact, place, "");
      if (noted.stream()
          .anyMatch(earlier -> earlier.fact().equals(fact) || earlier.contradicts(next))) {
        return Optional.of(fact);
      }
      noted.add(next);
    }
    return Optional.empty();
  }

  private static Fault repeatedFault(Fact<?> fact) {
    return Fault.of(
        path(fact), "a second fact of its kind", "one fact where nothing tells two apart");
  }

  private static Fault unsayable(Fact<?> fact) {
    return Fault.of(
        path(fact), "a fact that shorthand has no words for", "a fact that canSay admits");
  }

  private static String path(Fact<?> fact) {
    return fact.finding().id() + "." + fact.site().word();
  }
}
