package org.isopter.model.note.grammar;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.isopter.model.exam.Fact;
import org.isopter.model.finding.Decoded;
import org.isopter.model.finding.Finding;
import org.isopter.model.note.token.ClockTime;
import org.isopter.model.note.token.Lexer;
import org.isopter.model.note.token.NotRead;
import org.isopter.model.note.token.Token;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Outcome;
import org.isopter.model.value.Result;
import org.isopter.model.value.Site;

/** One eye, or the pair, of an item: what was said of it, and the facts that this makes. */
public final class Eye {

  private static final Set<String> EYES = Set.of("od", "os", "re", "le", "eye");

  private final Site site;
  private final Optional<Site> named;
  private final Said said;
  private final Token at;
  private final Set<Slot<?>> used = new HashSet<>();
  private final List<Fact<?>> facts = new ArrayList<>();

  private Eye(Site site, Optional<Site> named, Said said, Token at) {
    this.at = at;
    this.site = site;
    this.named = named;
    this.said = said;
  }

  /** Says whether the side can only be that of an eye: OD, right eye, a line about one eye. */
  public boolean isNamedAsEye() {
    boolean side = Common.side(at).isPresent();
    return !side || Lexer.words(at.seen()).stream().anyMatch(EYES::contains);
  }

  /** Returns the facts of an eye; everything that was said is used, or it is not read. */
  static List<Fact<?>> facts(
      Grammar grammar,
      Site site,
      Optional<Site> named,
      Scan.Group group,
      Optional<OffsetDateTime> performed)
      throws NotRead {
    Eye eye = new Eye(site, named, group.said(), group.at());
    Optional<Absence> absence = eye.find(Common.ABSENCE);
    if (absence.isPresent()) {
      eye.absent(grammar, absence.get());
    } else {
      grammar.build().from(eye);
    }
    if (eye.facts.isEmpty()) {
      throw NotRead.because("nothing is said of it");
    }
    eye.applyMethod(grammar);
    eye.applyCourse();
    if (grammar.clockFace()) {
      eye.requireTimeOfDay();
    }
    eye.applyTime(performed);
    eye.requireAllUsed();
    return eye.facts;
  }

  /** Says whether nothing was found in this eye yet. */
  public boolean isEmpty() {
    return facts.isEmpty();
  }

  /** Returns which eye, or both together. */
  public Site site() {
    return site;
  }

  /** Says whether the eye was named by this word. */
  public boolean isCalled(String word) {
    return at.text().equalsIgnoreCase(word);
  }

  /** Returns the eye that a comparison of the two names. */
  public Optional<Site> named() {
    return named;
  }

  /**
   * Returns what was said in a slot that the item cannot do without.
   *
   * @throws NotRead when nothing was said in the slot
   */
  public <T> T get(Slot<T> slot) throws NotRead {
    Optional<T> value = find(slot);
    if (value.isEmpty()) {
      throw NotRead.because(place() + "the " + slot.name() + " is missing or not understood");
    }
    return value.get();
  }

  /** Returns the first that was said in a slot, if anything was. */
  public <T> Optional<T> find(Slot<T> slot) {
    return all(slot).stream().findFirst();
  }

  /** Returns all that was said in a slot, in the order of the note. */
  public <T> List<T> all(Slot<T> slot) {
    used.add(slot);
    return said.all(slot);
  }

  /** Says whether anything was said in a slot. */
  public boolean has(Slot<?> slot) {
    used.add(slot);
    return said.has(slot);
  }

  /**
   * Adds what was found in this eye.
   *
   * @throws NotRead when the finding forbids the fact
   */
  public <V> void found(Finding<V> finding, V value) throws NotRead {
    add(finding, site, Outcome.found(value));
  }

  /**
   * Adds what was found in this eye, or why nothing was.
   *
   * @throws NotRead when the finding forbids the fact
   */
  public <V> void outcome(Finding<V> finding, Outcome<V> outcome) throws NotRead {
    add(finding, site, outcome);
  }

  /**
   * Adds what was said in a slot, if anything was.
   *
   * @throws NotRead when the finding forbids the fact
   */
  public <V> void outcomeOf(Finding<V> finding, Slot<Outcome<V>> slot) throws NotRead {
    Optional<Outcome<V>> outcome = find(slot);
    if (outcome.isPresent()) {
      outcome(finding, outcome.get());
    }
  }

  /**
   * Adds a fact about an eye other than that of the item.
   *
   * @throws NotRead when the finding forbids the fact
   */
  public <V> void at(Site where, Finding<V> finding, V value) throws NotRead {
    add(finding, where, Outcome.found(value));
  }

  /**
   * Adds a fact about the pair of eyes.
   *
   * @throws NotRead when the finding forbids the fact
   */
  public <V> void pair(Finding<V> finding, Outcome<V> outcome) throws NotRead {
    add(finding, Site.BOTH, outcome);
  }

  private <V> void add(Finding<V> finding, Site where, Outcome<V> outcome) throws NotRead {
    if (!finding.sites().contains(where)) {
      throw NotRead.because("the " + finding.title() + " is said of one eye");
    }
    Optional<V> value = outcome.ifFound();
    if (value.isEmpty()) {
      facts.add(Fact.absent(finding, where, outcome.ifAbsent().orElseThrow()));
      return;
    }
    Result<Decoded<V>> fit = finding.layout().check(value.get());
    if (!fit.isOk()) {
      throw NotRead.because(
          fit.faults().stream().map(Eye::sentence).collect(Collectors.joining("; ")));
    }
    facts.add(Fact.of(finding, where, fit.orThrow()));
  }

  /** Returns a fault as one sentence: what was seen, what was wanted, what to do. */
  public static String sentence(Fault fault) {
    String advice = fault.advice().isEmpty() ? "" : " (" + fault.advice() + ")";
    return fault.seen() + " cannot be: wanted " + fault.wanted() + advice;
  }

  /** Keeps words in the remark of the fact that was added last; nothing where they are empty. */
  public void remark(String words) {
    if (!words.isEmpty()) {
      int last = facts.size() - 1;
      facts.set(last, facts.get(last).remarks(with(facts.get(last), words)));
    }
  }

  /**
   * Keeps how much of the one sign there is; a sign that is absent has no degree.
   *
   * @throws NotRead when the sign is absent, or one of several
   */
  public void degree(boolean there) throws NotRead {
    Optional<String> degree = find(Common.DEGREE);
    if (degree.isPresent() && (!there || facts.size() != 1)) {
      throw NotRead.at(said.place(Common.DEGREE), "it is not clear of what this is the degree");
    }
    remark(degree.map(any -> said.words(Common.DEGREE)).orElse(""));
  }

  /** Says whether what was said in one slot stands before what was said in another. */
  public boolean isBefore(Slot<?> one, Slot<?> other) {
    return said.place(one).start() < said.place(other).start();
  }

  /** Says whether a comma sets off what was said in a slot from the eye before it. */
  public boolean isSetOff(Slot<?> slot) {
    return said.has(slot) && said.isAfterComma(slot);
  }

  private void absent(Grammar grammar, Absence reason) throws NotRead {
    if (grammar.whole().isEmpty()) {
      throw NotRead.at(said.place(Common.ABSENCE), "it is not said of which finding this holds");
    }
    for (Finding<?> finding : grammar.whole()) {
      outcome(finding, Outcome.absent(reason));
    }
    keepConditions(grammar);
  }

  /** A condition of what was not done has no place in the record but a remark. */
  private void keepConditions(Grammar grammar) {
    List<String> words = new ArrayList<>();
    for (Slot<?> slot : said.slots()) {
      boolean ordered = slot.equals(Common.TIME) || grammar.method().equals(Optional.of(slot));
      if (slot.isCondition() && !ordered) {
        used.add(slot);
        words.add(said.words(slot));
      }
    }
    facts.replaceAll(fact -> fact.remarks(words));
  }

  private void applyMethod(Grammar grammar) {
    grammar
        .method()
        .flatMap(this::find)
        .ifPresent(method -> facts.replaceAll(fact -> by(fact, (Concept) method)));
  }

  /** Returns a fact by a technique; beside others there may be facts that have no such one. */
  private static Fact<?> by(Fact<?> fact, Concept method) {
    boolean fits =
        fact.finding().methods().filter(all -> all.concepts().contains(method)).isPresent();
    return fits ? fact.by(method) : fact;
  }

  /** Swollen, pale, R > L: of several findings it is not clear which is more on the right. */
  private void applyCourse() throws NotRead {
    Optional<String> course = find(Common.COURSE);
    if (course.isEmpty()) {
      return;
    }
    if (facts.stream().map(Fact::finding).distinct().count() > 1) {
      throw NotRead.at(
          said.place(Common.COURSE),
          "of several findings it is not clear of which \"" + course.get() + "\" is said");
    }
    facts.replaceAll(fact -> fact.remarks(with(fact, course.get())));
  }

  private static List<String> with(Fact<?> fact, String remark) {
    List<String> remarks = new ArrayList<>(fact.remarks());
    remarks.add(remark);
    return remarks;
  }

  private void applyTime(Optional<OffsetDateTime> performed) throws NotRead {
    Optional<ClockTime> time = find(Common.TIME);
    if (time.isEmpty()) {
      return;
    }
    if (performed.isEmpty()) {
      throw NotRead.at(
          said.place(Common.TIME), "a time needs the day of the examination, which is not known");
    }
    OffsetDateTime at = time.get().on(performed.get());
    facts.replaceAll(fact -> fact.at(at));
  }

  /** Refuses a bare hour behind all values: it may be a place as on the face of a clock. */
  private void requireTimeOfDay() throws NotRead {
    boolean hour = said.words(Common.TIME).matches("(?:(?:@|at) )?(?:[1-9]|1[0-2]) ?: ?[03]0");
    if (hour && said.isBehindValues(Common.TIME)) {
      throw NotRead.at(
              said.place(Common.TIME),
              "it may be a time of day, or a place as on the face of a clock")
          .write("disc R haemorrhage at 7 o'clock");
    }
  }

  private void requireAllUsed() throws NotRead {
    for (Slot<?> slot : said.slots()) {
      if (!used.contains(slot)) {
        throw NotRead.at(
            said.place(slot), "the " + slot.name() + " belongs to nothing that is said here");
      }
    }
  }

  private String place() {
    return named.isPresent() || site != Site.BOTH ? site.word() + ": " : "";
  }
}
