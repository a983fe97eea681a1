package org.isopter.mapper.foreign.vocabulary;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.isopter.mapper.foreign.ledger.Ledger;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.finding.Codes;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Spec;
import org.isopter.model.finding.Variant;
import org.isopter.model.finding.When;
import org.isopter.model.text.Memo;
import org.isopter.model.value.Code;
import org.isopter.model.value.Site;

/** Every code that is understood: the catalogue's own, and those of the tables of habits. */
public final class Vocabulary {

  /** The semantic tags of SNOMED CT that names of findings, answers and conditions have. */
  private static final Pattern TAG =
      Pattern.compile(
          "\\s\\((observable entity|finding|disorder|procedure|qualifier value|body structure"
              + "|physical object|regime/therapy|situation|attribute|morphologic abnormality)\\)$",
          Pattern.CASE_INSENSITIVE);

  private static final Set<String> ACUITIES =
      Set.of(Effect.ACUITY, "distance-acuity", "pinhole-acuity", "near-acuity");

  private final Catalogue catalogue;
  private final Habits habits;
  private final Map<String, Effect> own = new HashMap<>();
  private final Map<String, Map<String, Part<?, ?>>> parts = new HashMap<>();
  private final Map<String, String> partDisplays = new HashMap<>();
  private final Map<String, Effect> byTitle = new HashMap<>();
  private final Map<String, Effect> byWords = new HashMap<>();
  private final Map<String, Effect> conditions = new HashMap<>();
  private final FamiliarWords familiar;
  private final Memo<Optional<List<Effect>>> titlesRead =
      new Memo<>(text -> new CodeText(this).titled(text));
  private final Memo<Optional<List<Effect>>> conditionsRead =
      new Memo<>(text -> new CodeText(this).readConditions(text));

  public Vocabulary(Catalogue catalogue) {
    this(catalogue, DepartmentAliases.none());
  }

  /** Makes the vocabulary of a department that has aliases of its own. */
  public Vocabulary(Catalogue catalogue, DepartmentAliases aliases) {
    this.catalogue = catalogue;
    this.habits = Habits.with(aliases);
    catalogue.all().forEach(this::index);
    habits.titles().forEach((title, token) -> effect(token).ifPresent(e -> byTitle.put(title, e)));
    byTitle.putAll(habits.words().titled());
    catalogue.all().forEach(f -> byTitle.put(Habits.plain(f.title()), plain(f, f.title())));
    byTitle.forEach((title, effect) -> byWords.putIfAbsent(CodeText.words(title), effect));
    habits.words().conditions().forEach((words, e) -> conditions.put(CodeText.words(words), e));
    familiar = habits.familiarWords();
    familiar.add(byWords.keySet());
    familiar.add(partDisplays.values());
    own.values().forEach(effect -> familiar.add(List.of(effect.display())));
    catalogue.all().stream()
        .flatMap(finding -> finding.methods().stream())
        .flatMap(methods -> methods.concepts().stream())
        .forEach(method -> familiar.add(List.of(method.word(), method.code().display())));
  }

  /** Returns the findings that are read. */
  public Catalogue catalogue() {
    return catalogue;
  }

  /** Returns the words and codes by which they are known. */
  public Habits habits() {
    return habits;
  }

  /** Returns what a code says of a finding. */
  public Optional<Effect> effect(String token) {
    return Optional.ofNullable(own.get(token)).or(() -> habits.code(token));
  }

  /** Returns what a title or a display says of a finding, where it is exactly one that is known. */
  public Optional<Effect> titled(String text) {
    return Optional.ofNullable(byTitle.get(Habits.plain(withoutTag(text))));
  }

  /** Returns what a title says in words without dots and hyphens. */
  Optional<Effect> titleOf(String words) {
    return Optional.ofNullable(byWords.get(words));
  }

  /** Returns what was read from the words of codes. */
  Memo<Optional<List<Effect>>> titlesRead() {
    return titlesRead;
  }

  /** Returns what was read from words that only tell how something was tested. */
  Memo<Optional<List<Effect>>> conditionsRead() {
    return conditionsRead;
  }

  /** Returns what words say of how something was tested. */
  Optional<Effect> condition(String words) {
    return Optional.ofNullable(conditions.get(words));
  }

  /** Returns true if every word of a text stands in some name or phrase that is known. */
  public boolean isFamiliar(String text) {
    return familiar.areAll(text);
  }

  /** Says whether a finding is an acuity of any kind. */
  public boolean isAcuity(Optional<String> finding) {
    return finding.filter(ACUITIES::contains).isPresent();
  }

  /** Says whether a condition may be said of the finding of a title. */
  public boolean fits(Effect title, Effect condition) {
    return title.equals(condition)
        || title.finding().filter(finding -> fits(finding, condition)).isPresent();
  }

  /** Says whether a condition may be said of a finding. */
  public boolean fits(String finding, Effect condition) {
    boolean acuity = ACUITIES.contains(finding);
    boolean same =
        condition
            .finding()
            .map(f -> f.equals(finding) || (acuity && ACUITIES.contains(f)))
            .orElse(true);
    boolean notation = condition.notation().isEmpty() || acuity;
    Optional<Finding<?>> known =
        catalogue.byId(finding.equals(Effect.ACUITY) ? "distance-acuity" : finding);
    boolean parts =
        condition.parts().keySet().stream()
            .allMatch(key -> known.flatMap(f -> partNamed(f, key)).isPresent());
    boolean method =
        condition
            .method()
            .map(word -> known.flatMap(Finding::methods).flatMap(m -> m.byWord(word)).isPresent())
            .orElse(true);
    boolean unit =
        condition.unit().map(code -> known.filter(f -> isIn(f, code)).isPresent()).orElse(true);
    return same && notation && parts && method && unit;
  }

  private static boolean isIn(Finding<?> finding, String ucum) {
    return finding.layout().variants().get(0).value().stream()
        .filter(Spec.Measure.class::isInstance)
        .flatMap(spec -> ((Spec.Measure) spec).spans().stream())
        .anyMatch(span -> span.unit().isCoded(ucum));
  }

  /** Says whether a code has any meaning as the code of an observation or a component. */
  public boolean knows(String token) {
    return effect(token).isPresent()
        || habits.part(token).isPresent()
        || habits.group(token).isPresent()
        || habits.isQuestion(token)
        || habits.statement(token).isPresent()
        || partDisplays.containsKey(token);
  }

  /** Returns the name that the code's system gives it, where it is known. */
  public Optional<String> display(String token) {
    return effect(token)
        .or(() -> habits.part(token))
        .or(() -> habits.group(token))
        .map(Effect::display)
        .or(() -> habits.statement(token).map(CodedStatement::display))
        .or(() -> Optional.ofNullable(partDisplays.get(token)));
  }

  /** Returns the part of a finding that travels under a code. */
  public Optional<Part<?, ?>> part(Finding<?> finding, String token) {
    return Optional.ofNullable(parts.getOrDefault(finding.id(), Map.of()).get(token));
  }

  /** Returns the part of a finding with a key. */
  public static Optional<Part<?, ?>> partNamed(Finding<?> finding, String key) {
    for (Variant variant : finding.layout().variants()) {
      for (Part<?, ?> part : variant.parts()) {
        if (part.key().equals(key)) {
          return Optional.of(part);
        }
      }
    }
    return Optional.empty();
  }

  /** Returns a display without its semantic tag; other words in brackets may say anything. */
  public static String withoutTag(String display) {
    return display.endsWith(")") ? TAG.matcher(display).replaceFirst("") : display;
  }

  /** Says whether two displays name the same, apart from case and semantic tag. */
  public static boolean sameName(String one, String other) {
    // Most codings have no display, or the very one: neither needs to be made plain first.
    return one.equals(other)
        || (!other.isBlank()
            && Habits.plain(withoutTag(one)).equals(Habits.plain(withoutTag(other))));
  }

  private void index(Finding<?> finding) {
    Codes codes = finding.codes();
    codes.general().forEach(code -> own.put(code.token(), plain(finding, code.display())));
    codes
        .bySite()
        .forEach((site, code) -> own.put(code.token(), sided(finding, code, site, Map.of())));
    codes.former().stream()
        .filter(Code::isLocal)
        .forEach(code -> own.putIfAbsent(code.token(), plain(finding, code.display())));
    codes.refined().stream()
        .filter(Codes.Refined::isSided)
        .forEach(
            refined ->
                refined
                    .bySite()
                    .forEach(
                        (site, code) ->
                            own.put(code.token(), refined(finding, code, site, refined.when()))));
    Map<String, Part<?, ?>> byCode = parts.computeIfAbsent(finding.id(), any -> new HashMap<>());
    for (Variant variant : finding.layout().variants()) {
      for (Part<?, ?> part : variant.parts()) {
        byCode.putIfAbsent(part.code().token(), part);
        partDisplays.putIfAbsent(part.code().token(), part.code().display());
      }
    }
    for (Code code : codes.general()) {
      byTitle.put(Habits.plain(withoutTag(code.display())), plain(finding, code.display()));
    }
  }

  private static Effect refined(Finding<?> finding, Code code, Site site, When when) {
    boolean names = when instanceof When.Part;
    return sided(
        finding,
        code,
        site,
        names ? Map.of(when.subject(), when.answers().get(0).word()) : Map.of());
  }

  private static Effect plain(Finding<?> finding, String display) {
    return effect(finding, display, Optional.empty(), Map.of());
  }

  private static Effect sided(
      Finding<?> finding, Code code, Site site, Map<String, String> implied) {
    return effect(finding, code.display(), Optional.of(site), implied);
  }

  private static Effect effect(
      Finding<?> finding, String display, Optional<Site> site, Map<String, String> implied) {
    return new Effect(
        Ledger.CATALOGUE,
        display,
        Optional.of(finding.id()),
        site,
        Optional.empty(),
        implied,
        Optional.empty(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }
}
