package org.isopter.mapper.privacy;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import org.isopter.mapper.table.FactOrigin;
import org.isopter.mapper.table.Person;
import org.isopter.mapper.table.PooledExam;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;
import org.isopter.model.exam.Party;
import org.isopter.model.value.Fault;
import org.isopter.model.value.FaultException;

/**
 * Takes the identity out of an examination: pseudonyms for identifiers, all times of a person moved
 * by the same number of days and given by the week, ages from 90 on as one; no names, no examiner,
 * no instrument and, unless asked for, no free text.
 *
 * <p>What is left is still about one person: a rare finding or a rare course may be known again.
 *
 * <p>Safe for use by several threads at once.
 */
public final class Deidentifier {

  /** Birthdays move too, or an age that changes between two visits would tell when they were. */
  private static final int BIRTHDAYS = 365;

  /** The system of the invented persons of the documentation. */
  private static final String DEMO = "https://quillhaven.example/people";

  private final SecretKey key;
  private final boolean freeText;
  private final TimeGrain grain;
  private final DateShift shift;
  private final Set<Kept> kept;
  private final Rounding rounding;
  private final Optional<String> site;

  /**
   * Makes one that tells times by the week.
   *
   * @param freeText whether remarks stay
   */
  public Deidentifier(SecretKey key, boolean freeText) {
    this(key, freeText, TimeGrain.WEEK);
  }

  /**
   * Makes one.
   *
   * @param freeText whether remarks stay
   * @param grain how finely times are given
   */
  public Deidentifier(SecretKey key, boolean freeText, TimeGrain grain) {
    this(key, freeText, grain, DateShift.AHEAD, Set.of(), Rounding.NONE, Optional.empty());
  }

  private Deidentifier(
      SecretKey key,
      boolean freeText,
      TimeGrain grain,
      DateShift shift,
      Set<Kept> kept,
      Rounding rounding,
      Optional<String> site) {
    this.key = key;
    this.freeText = freeText;
    this.grain = grain;
    this.shift = shift;
    this.kept = Set.copyOf(kept);
    this.rounding = rounding;
    this.site = site;
  }

  /** Returns one that tells times so finely. */
  public Deidentifier telling(TimeGrain other) {
    return new Deidentifier(key, freeText, other, shift, kept, rounding, site);
  }

  /** Returns one that moves times elsewhere. */
  public Deidentifier moving(DateShift other) {
    return new Deidentifier(key, freeText, grain, other, kept, rounding, site);
  }

  /** Returns one that gives pseudonyms to what it would drop. */
  public Deidentifier keeping(Collection<Kept> wanted) {
    return new Deidentifier(key, freeText, grain, shift, Set.copyOf(wanted), rounding, site);
  }

  /** Returns one whose numbers are rounded; {@link #rounding} does it. */
  public Deidentifier rounding(Rounding other) {
    return new Deidentifier(key, freeText, grain, shift, kept, other, site);
  }

  /** Returns one that names the site of all examinations by a pseudonym. */
  public Deidentifier at(Optional<String> name) {
    return new Deidentifier(key, freeText, grain, shift, kept, rounding, name);
  }

  /** Returns how numbers are rounded once everything was concluded from the exact ones. */
  public Rounding rounding() {
    return rounding;
  }

  /** Returns the examination without the identity of the person; facts of an eye by their time. */
  public PooledExam apply(PooledExam pooled) {
    Exam exam = pooled.exam();
    requireDemo(exam.header().subject());
    String person = person(exam.header().subject());
    int days = shift.days(key, person);
    List<Fact<?>> facts = new ArrayList<>();
    List<FactOrigin> origins = new ArrayList<>();
    for (int at : byTime(exam)) {
      facts.add(fact(exam.facts().get(at), days));
      origins.add(pooled.origins().get(at));
    }
    Exam known = new Exam(header(exam.header(), person, days), facts);
    return new PooledExam(known, known(pooled, person), origins, site.map(this::site));
  }

  /** Returns the pseudonym that an examination gets. */
  public Identifier examination(Identifier id) {
    return pseudonym("e", "examination", id.toString());
  }

  /** Returns the pseudonym that a person gets. */
  public Identifier subject(Party subject) {
    return pseudonym("p", "person", person(subject));
  }

  /** Returns how this works apart from its key, as one text. */
  public String settings() {
    return String.join(
        " ",
        Boolean.toString(freeText),
        grain.toString(),
        shift.toString(),
        kept.stream().sorted().toList().toString(),
        rounding.toString(),
        site.map(this::site).orElse(""));
  }

  /** Returns a keyed hash of bytes: whoever lacks the key cannot tell whether they hold them. */
  public String digest(String text) {
    return key.pseudonym("document", text);
  }

  /** The demo key is known to all: whoever is not of the demo would be known with it. */
  private void requireDemo(Party subject) {
    boolean invented =
        subject.identifier().flatMap(Identifier::system).filter(DEMO::equals).isPresent();
    if (key.isOfDemo() && !invented) {
      throw new FaultException(
          new Fault(
              "key",
              "the public key of the demo, and a person who is not of the demo",
              "a secret of your own",
              "make one at random, and keep it apart from the tables"));
    }
  }

  private Person known(PooledExam pooled, String person) {
    int days = key.number("birthday", person, BIRTHDAYS) - BIRTHDAYS / 2;
    LocalDate day = pooled.exam().header().performed().toLocalDate();
    String examination = pooled.exam().header().id().toString();
    return pooled.person().older(slip(examination)).bornLater(days, day).pooled();
  }

  /**
   * Where an age stands without a date of birth, the birthday cannot be moved: the age is a year
   * less at every fourth examination, and a year more at every fourth.
   */
  private int slip(String examination) {
    return switch (key.number("age", examination, 4)) {
      case 0 -> -1;
      case 1 -> 1;
      default -> 0;
    };
  }

  /**
   * Once times of day are gone, the order of the facts of one measurement tells which was first.
   */
  private static List<Integer> byTime(Exam exam) {
    List<Fact<?>> facts = exam.facts();
    return IntStream.range(0, facts.size())
        .boxed()
        .sorted(
            Comparator.comparingInt((Integer at) -> group(facts, at))
                .thenComparing(at -> at(exam, at)))
        .toList();
  }

  /** Returns where the facts of the same finding and eye begin. */
  private static int group(List<Fact<?>> facts, int at) {
    int first = at;
    while (first > 0
        && facts.get(first - 1).finding() == facts.get(at).finding()
        && facts.get(first - 1).site() == facts.get(at).site()) {
      first--;
    }
    return first;
  }

  private static OffsetDateTime at(Exam exam, int at) {
    return exam.facts().get(at).at().orElse(exam.header().performed());
  }

  private Header header(Header header, String person, int days) {
    return new Header(
        examination(header.id()),
        Party.of(pseudonym("p", "person", person)),
        header.performer().filter(any -> kept.contains(Kept.EXAMINER)).map(this::examiner),
        moved(header.performed(), days),
        header.status(),
        header.setting(),
        header.amends().map(this::examination),
        header.remark().filter(any -> freeText));
  }

  private <V> Fact<V> fact(Fact<V> fact, int days) {
    Fact<V> moved = fact.at().map(time -> fact.at(moved(time, days))).orElse(fact);
    Fact<V> plain = moved.withoutDevice().remarks(freeText ? fact.remarks() : List.of());
    return fact.device()
        .filter(any -> kept.contains(Kept.DEVICE))
        .map(device -> plain.with(pseudonym("d", "device", device).value()))
        .orElse(plain);
  }

  private String site(String name) {
    return pseudonym("s", "site", name).value();
  }

  private Party examiner(Party examiner) {
    return Party.of(pseudonym("x", "examiner", person(examiner)));
  }

  private Identifier pseudonym(String letter, String kind, String name) {
    return Identifier.of(letter + key.pseudonym(kind, name));
  }

  /** The clock of the place, without its offset: that tells a season and a place. */
  private OffsetDateTime moved(OffsetDateTime time, int days) {
    LocalDateTime local = time.toLocalDateTime().plusDays(days);
    return grain.of(local).atOffset(ZoneOffset.UTC);
  }

  /** A person is known by the identifier where there is one; a name may be written in two ways. */
  private static String person(Party subject) {
    return subject
        .identifier()
        .map(id -> "id " + id)
        .orElseGet(() -> "name " + subject.name().orElseThrow());
  }
}
