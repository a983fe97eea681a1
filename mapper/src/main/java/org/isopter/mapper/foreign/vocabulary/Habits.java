package org.isopter.mapper.foreign.vocabulary;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.text.Memo;
import org.isopter.model.value.Site;

/** The tables of what others write: codes, sites, units and words, read from one file. */
public final class Habits {

  private static final String FILE = "habits.json";

  private static final Pattern SPACES = Pattern.compile("\\s+");
  private static final Pattern UNEVEN = Pattern.compile("\\s\\s|[\\t\\n\\r]");

  private static final Memo<String> PLAIN = new Memo<>(Habits::madePlain);

  /** The table of sites knows these eyes without a side. */
  private static final String EITHER = "eye";

  private final Map<String, Effect> codes;
  private final Map<String, Effect> parts;
  private final Map<String, Effect> groups;
  private final Set<String> questions;
  private final Map<String, Effect> wider;
  private final Map<String, String> methods;
  private final Map<String, CodedStatement> statements;
  private final Map<String, Topic> topics = new HashMap<>();
  private final Map<String, String> sites;
  private final Map<String, String> qualifiers;
  private final Map<String, String> values;
  private final Map<String, String> absences;
  private final Map<String, String> answers = new HashMap<>();
  private final Map<String, String> units = new HashMap<>();
  private final Map<String, String> notations = new HashMap<>();
  private final Map<String, String> lowVision = new HashMap<>();
  private final Map<String, String> profiles = new HashMap<>();
  private final Map<String, String> titles = new HashMap<>();
  private final Words words;
  private final Surroundings surroundings;
  private final Raw.Obj tables;

  private Habits(Raw.Obj tables) {
    this.tables = tables;
    words = new Words(tables);
    surroundings = new Surroundings(tables);
    codes = table(tables, "codes", Effect::of);
    parts = table(tables, "parts", Effect::of);
    groups = table(tables, "groups", Effect::of);
    questions = table(tables, "questions", row -> row).keySet();
    wider = table(tables, "wider", Effect::of);
    methods = table(tables, "methods", row -> text(row, "method"));
    statements = table(tables, "statements", CodedStatement::of);
    tables.objects("topics").forEach(this::topic);
    sites = table(tables, "sites", row -> text(row, "is"));
    qualifiers = table(tables, "qualifiers", row -> text(row, "is"));
    values = table(tables, "values", row -> text(row, "text"));
    absences = table(tables, "absences", row -> text(row, "word"));
    tables
        .objects("answers")
        .forEach(r -> answers.put(text(r, "list") + "|" + token(r), text(r, "word")));
    spellings(tables, "units", "ucum", units);
    spellings(tables, "notations", "text", notations);
    spellings(tables, "lowVision", "text", lowVision);
    spellings(tables, "titles", "as", titles);
    tables.objects("profiles").forEach(r -> profiles.put(text(r, "url"), text(r, "notation")));
  }

  /** Returns the tables; they are read when they are first asked for. */
  static Habits tables() {
    return Holder.HABITS;
  }

  /** Returns the tables with the aliases of a department. */
  static Habits with(DepartmentAliases aliases) {
    return aliases.isEmpty() ? tables() : new Habits(aliases.behind((Raw.Obj) load(FILE)));
  }

  /** Returns the words of all names and phrases. */
  FamiliarWords familiarWords() {
    return new FamiliarWords(tables);
  }

  /** Returns what a code says of a finding. */
  Optional<Effect> code(String token) {
    return Optional.ofNullable(codes.get(token));
  }

  /** Returns the part of a finding that a code stands for. */
  public Optional<Effect> part(String token) {
    return Optional.ofNullable(parts.get(token));
  }

  /** Returns what the code of a mere group of findings says. */
  public Optional<Effect> group(String token) {
    return Optional.ofNullable(groups.get(token));
  }

  /** Returns what a coded finding says. */
  public Optional<CodedStatement> statement(String token) {
    return Optional.ofNullable(statements.get(token));
  }

  /** Returns what may be said under a finding, or under a group of that name. */
  public Optional<Topic> topic(String name) {
    return Optional.ofNullable(topics.get(name));
  }

  /** Says whether the code asks for what another code answers. */
  public boolean isQuestion(String token) {
    return questions.contains(token);
  }

  /** Returns true if a code says less than the finding that it is written beside. */
  public boolean isWider(String token) {
    return wider.containsKey(token);
  }

  /** Returns what such a code says alone. */
  public Optional<Effect> wider(String token) {
    return Optional.ofNullable(wider.get(token));
  }

  /** Returns the word of the technique that a code of others stands for. */
  public Optional<String> method(String token) {
    return Optional.ofNullable(methods.get(token));
  }

  /** Says whether the code is that of an eye of either side. */
  public boolean isEye(String token) {
    return EITHER.equals(sites.get(token));
  }

  /** Returns the site of a body site code. */
  public Optional<Site> site(String token) {
    return Optional.ofNullable(sites.get(token)).filter(s -> !s.equals(EITHER)).map(Effect::site);
  }

  /** Returns the side of a laterality qualifier. */
  public Optional<Site> qualifier(String token) {
    return Optional.ofNullable(qualifiers.get(token)).map(Effect::site);
  }

  /** Returns the written form of an acuity that a code stands for. */
  public Optional<String> acuity(String token) {
    return Optional.ofNullable(values.get(token));
  }

  /** Returns the word of a list of answers that a code stands for. */
  public Optional<String> answer(String list, String token) {
    return Optional.ofNullable(answers.get(list + "|" + token));
  }

  /** Returns the word of the reason for absence that a code stands for. */
  public Optional<String> absence(String token) {
    return Optional.ofNullable(absences.get(token));
  }

  /** Returns the UCUM code of a unit in any spelling; {@code kPa} included. */
  public Optional<String> ucum(String spelling) {
    return Optional.ofNullable(units.get(plain(spelling)));
  }

  /** Returns the text of an acuity notation that is written like a unit. */
  public Optional<String> notation(String spelling) {
    return Optional.ofNullable(notations.get(plain(spelling)));
  }

  /** Returns the abbreviation of a vision too low for a chart. */
  Optional<String> lowVision(String words) {
    return Optional.ofNullable(lowVision.get(plain(words)));
  }

  /** Returns the tokens of codes by the words that name the same; the words are plain. */
  Map<String, String> titles() {
    return titles;
  }

  /** Returns the words that others use. */
  public Words words() {
    return words;
  }

  /** Returns what may stand around a value without changing it. */
  public Surroundings surroundings() {
    return surroundings;
  }

  /** Returns the notation that a published profile fixes. */
  public Optional<String> profileNotation(String url) {
    return Optional.ofNullable(profiles.get(url));
  }

  /** Returns the tokens of the codes that are known apart from the catalogue's. */
  Set<String> tokens() {
    Set<String> tokens = new HashSet<>(codes.keySet());
    tokens.addAll(groups.keySet());
    return tokens;
  }

  /** Returns a text in lower case with single spaces, as the tables hold it. */
  public static String plain(String text) {
    return isPlain(text) ? text : PLAIN.of(text);
  }

  /** Codes and most names are plain as they are. */
  private static boolean isPlain(String text) {
    char before = ' ';
    for (int i = 0; i < text.length(); i++) {
      char each = text.charAt(i);
      boolean space = each == ' ';
      if (each > '~' || each < ' ' || (each >= 'A' && each <= 'Z') || (space && before == ' ')) {
        return false;
      }
      before = each;
    }
    return text.isEmpty() || before != ' ';
  }

  private static String madePlain(String text) {
    String lower = text.replace('\u00a0', ' ').strip().toLowerCase(Locale.ROOT);
    return UNEVEN.matcher(lower).find() ? SPACES.matcher(lower).replaceAll(" ") : lower;
  }

  private static <T> Map<String, T> table(Raw tables, String name, Function<Raw, T> value) {
    Map<String, T> table = new HashMap<>();
    for (Raw row : tables.objects(name)) {
      if (table.put(token(row), value.apply(row)) != null) {
        throw new IllegalStateException(FILE + " lists " + token(row) + " twice in " + name);
      }
    }
    return table;
  }

  private void topic(Raw row) {
    row.list("of").forEach(name -> topics.put(name.string().orElseThrow(), Topic.of(row)));
  }

  private static void spellings(Raw tables, String name, String key, Map<String, String> into) {
    for (Raw row : tables.objects(name)) {
      row.list("spellings").forEach(s -> into.put(s.string().orElseThrow(), text(row, key)));
    }
  }

  private static String token(Raw row) {
    return text(row, "system") + "|" + text(row, "code");
  }

  private static String text(Raw row, String name) {
    return row.string(name).orElseThrow(() -> new IllegalStateException(name + " in " + row));
  }

  /** Holds the tables. */
  private static final class Holder {
    static final Habits HABITS = new Habits((Raw.Obj) load(FILE));
  }

  /** Reads a JSON file that stands beside this class. */
  static Raw load(String file) {
    try (InputStream in = Objects.requireNonNull(Habits.class.getResourceAsStream(file))) {
      return RawJson.OWN.read(in.readAllBytes()).orThrow();
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
