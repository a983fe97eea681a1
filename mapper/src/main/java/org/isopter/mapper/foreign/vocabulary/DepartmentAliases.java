package org.isopter.mapper.foreign.vocabulary;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.phrase.PhraseLine;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * Codes, units and words of a department, as lines of its file of habits of the kind {@code fhir}.
 *
 * <p>What a line means is in its second column: {@code code FINDING}, with {@code right} or {@code
 * left} behind it where the code names the eye; {@code name FINDING}; {@code part KEY}; {@code
 * condition KEY WORD}; {@code method WORD}; {@code unit UCUM}; {@code notation NAME}; {@code answer
 * LIST WORD}; {@code eye right}, {@code left} or {@code both}; {@code category}; {@code harmless};
 * {@code note}. Its phrases are words, or codes as {@code system#code}.
 */
@API(status = Status.STABLE)
public final class DepartmentAliases {

  private static final String CODE = "/code";

  /** What a line says of words that notes may have beside a value. */
  private static final String NOTE = "note";

  private final Map<String, List<Raw>> rows;
  private final Map<String, Integer> lines;
  private final Map<String, Integer> ofNotes;

  private DepartmentAliases(
      Map<String, List<Raw>> rows, Map<String, Integer> lines, Map<String, Integer> ofNotes) {
    this.rows = rows;
    this.lines = lines;
    this.ofNotes = ofNotes;
  }

  /** Returns aliases of nothing. */
  public static DepartmentAliases none() {
    return new DepartmentAliases(Map.of(), Map.of(), Map.of());
  }

  /** Reads the lines of a file of habits, or says what is wrong with each of them. */
  public static Result<DepartmentAliases> of(List<PhraseLine> lines, Catalogue catalogue) {
    AliasLines read = new AliasLines(new Vocabulary(catalogue));
    List<Fault> faults = new ArrayList<>();
    Map<String, Integer> phrases = new LinkedHashMap<>();
    Map<String, Integer> ofNotes = new LinkedHashMap<>();
    for (PhraseLine line : lines) {
      for (String phrase : line.phrases()) {
        read.add(line, phrase).ifPresent(faults::add);
        Map<String, Integer> kind = line.meaning().equals(NOTE) ? ofNotes : phrases;
        if (kind.putIfAbsent(key(phrase), line.line()) != null) {
          faults.add(Fault.of(line.place(), "\"" + phrase + "\" twice", "one meaning of a phrase"));
        }
      }
    }
    return faults.isEmpty()
        ? Result.ok(new DepartmentAliases(read.rows(), phrases, ofNotes))
        : Result.refused(faults);
  }

  /** Returns whether there is none. */
  public boolean isEmpty() {
    return lines.isEmpty() && ofNotes.isEmpty();
  }

  /** Returns a short text that is another for other aliases. */
  public String digest() {
    Map<String, Raw> tables = new LinkedHashMap<>();
    rows.forEach((name, list) -> tables.put(name, Raw.of(list)));
    return isEmpty() ? "none" : Integer.toHexString(RawJson.write(new Raw.Obj(tables)).hashCode());
  }

  /** Returns tables with these rows behind their own. */
  Raw.Obj behind(Raw.Obj tables) {
    Map<String, Raw> all = new LinkedHashMap<>(tables.members());
    rows.forEach(
        (name, more) -> {
          List<Raw> both = new ArrayList<>(tables.list(name));
          both.addAll(more);
          all.put(name, Raw.of(both));
        });
    return new Raw.Obj(all);
  }

  /**
   * Returns which lines a resource was read by, as {@code habits-line-3}. In its notes only the
   * lines about words of notes count.
   */
  public Set<String> usedIn(Raw resource) {
    Set<String> used = new LinkedHashSet<>();
    if (!isEmpty()) {
      Map<String, String> texts = texts(resource);
      texts.forEach(
          (at, text) -> {
            if (at.endsWith(CODE)) {
              String holder = at.substring(0, at.length() - CODE.length());
              line(texts.getOrDefault(holder + "/system", "") + "#" + text).ifPresent(used::add);
            }
            line(text).ifPresent(used::add);
          });
      for (Raw.Obj note : resource.objects("note")) {
        used.addAll(lines(ofNotes, note.string("text").orElse("")));
      }
    }
    return used;
  }

  /** Returns the texts of a resource without its notes, each by its place. */
  private static Map<String, String> texts(Raw resource) {
    Map<String, String> texts = new LinkedHashMap<>();
    for (PlacedLeaf leaf : resource.leaves()) {
      boolean remark = leaf.at().startsWith("/note") || leaf.at().startsWith("/text");
      if (!remark) {
        leaf.value().string().ifPresent(text -> texts.put(leaf.at(), text));
      }
    }
    return texts;
  }

  private Optional<String> line(String phrase) {
    return lines(lines, phrase).stream().findFirst();
  }

  private static List<String> lines(Map<String, Integer> phrases, String text) {
    String words = " " + key(text) + " ";
    return phrases.entrySet().stream()
        .filter(entry -> words.contains(" " + entry.getKey() + " "))
        .map(entry -> "habits-line-" + entry.getValue())
        .toList();
  }

  private static String key(String phrase) {
    return phrase.indexOf('#') >= 0 ? phrase.strip() : CodeText.words(phrase);
  }
}
