package org.isopter.sheet;

import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.fhir.FhirTree;
import org.isopter.mapper.record.PlainJson;
import org.isopter.mapper.record.RecordTree;
import org.isopter.model.check.Consistency;
import org.isopter.model.drawing.Drawing;
import org.isopter.model.drawing.Picture;
import org.isopter.model.entry.Amendment;
import org.isopter.model.entry.EntryField;
import org.isopter.model.entry.FieldAnswer;
import org.isopter.model.entry.UsualStep;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.Fact;
import org.isopter.model.exam.Header;
import org.isopter.model.letter.Letter;
import org.isopter.model.letter.Summary;
import org.isopter.model.note.NoteReader;
import org.isopter.model.text.FactText;
import org.isopter.model.text.PlainWords;
import org.isopter.model.value.Result;
import org.isopter.model.value.Site;

/**
 * Reads a whole sheet and says what it comes to, as a tree that {@link PlainJson} writes.
 *
 * <p>The record is what a note of the same words gives; it is made only when every field was
 * understood to the last word. Not safe for use by several threads.
 */
public final class Sheet {

  private static final OffsetDateTime ANY_DAY = OffsetDateTime.parse("2026-01-01T12:00:00Z");

  private final Map<String, FieldAnswer> read = new HashMap<>();
  private Optional<SheetStart> lastStart = Optional.empty();
  private Optional<Exam> exam = Optional.empty();

  /** Makes a sheet. */
  public Sheet() {}

  private FieldAnswer field(OffsetDateTime day, EntryField row, Site site, String words) {
    return read.computeIfAbsent(
        String.join("\t", day.toString(), row.key(), site.word(), words),
        any -> FieldAnswer.read(NoteReader.performed(day), row, site, words));
  }

  /** Makes what reading words needs, so that the first words are read without a wait. */
  public void prepare() {
    NoteReader.performed(ANY_DAY).read("VA R 6/6");
  }

  /** Returns what the form says, field by field and as a whole. */
  public Map<String, Object> read(String form) {
    SheetForm filled = new SheetForm(form);
    SheetStart start = SheetStart.of(filled, lastStart);
    lastStart = Optional.of(start);
    OffsetDateTime day = start.header().map(Header::performed).orElse(ANY_DAY);
    Map<String, Object> fields = new LinkedHashMap<>();
    List<FieldAnswer> written = new ArrayList<>();
    for (EntryField row : UsualStep.allFields()) {
      for (Site site : row.sites()) {
        String name = row.key() + "." + site.word();
        if (!filled.words(name).isEmpty()) {
          FieldAnswer field = field(day, row, site, filled.words(name));
          written.add(field);
          fields.put(name, shown(field, day));
        }
      }
    }
    Map<String, Object> view = new LinkedHashMap<>();
    view.put("fields", fields);
    whole(start, written, view);
    return view;
  }

  /**
   * Returns the examination of a form as a FHIR R4 bundle; empty where a field is not understood to
   * the last word.
   */
  public String fhir(String form) {
    read(form);
    return exam.map(whole -> PlainJson.of(FhirTree.of(whole, BundleKind.COLLECTION))).orElse("");
  }

  private static Map<String, Object> shown(FieldAnswer field, OffsetDateTime day) {
    Map<String, Object> shown = new LinkedHashMap<>();
    shown.put("clear", field.isClear());
    List<String> lines = new ArrayList<>(field.lines(day));
    field
        .unread()
        .forEach(unread -> lines.add("Not understood: " + unread.why() + ". " + unread.advice()));
    field.foreign().stream().map(Sheet::elsewhere).distinct().forEach(lines::add);
    if (lines.isEmpty()) {
      lines.add("Nothing is said here.");
    }
    shown.put("lines", lines);
    return shown;
  }

  private static String elsewhere(Fact<?> fact) {
    String eyes =
        fact.site() == Site.BOTH ? "both eyes together" : "the " + fact.site().word() + " eye";
    return "This speaks of " + eyes + ": write it in the field for that.";
  }

  private void whole(SheetStart start, List<FieldAnswer> written, Map<String, Object> view) {
    String note = String.join("\n", written.stream().map(FieldAnswer::note).toList());
    List<Fact<?>> stated = stated(written);
    exam = Optional.empty();
    view.put("note", note);
    start.old().ifPresent(old -> view.put("old", opened(old, stated)));
    List<String> faults = new ArrayList<>(start.faults());
    if (written.isEmpty()) {
      faults.add("Nothing is written yet.");
    } else if (!written.stream().allMatch(FieldAnswer::isClear)) {
      faults.add("A field is not understood to the last word.");
    }
    start
        .old()
        .ifPresent(
            old -> Amendment.unclear(old, stated).forEach(why -> faults.add(why.toString())));
    Optional<Exam> soFar = start.header().map(header -> start.exam(stated));
    view.put("breaches", soFar.map(Sheet::breaches).orElse(List.of()));
    view.put("pictures", soFar.map(Sheet::pictures).orElse(List.of()));
    if (faults.isEmpty()) {
      exam(start, note, stated, faults, view);
    }
    view.put("faults", faults);
  }

  /** Shows what stands in the record that is amended, and what of it is replaced. */
  private static Map<String, Object> opened(Exam old, List<Fact<?>> stated) {
    Map<String, Object> opened = new LinkedHashMap<>();
    opened.put("id", old.header().id().value());
    opened.put("subject", SheetStart.shown(old.header().subject()));
    opened.put("performer", old.header().performer().map(SheetStart::shown).orElse(""));
    opened.put("performed", old.header().performed().toString());
    List<Fact<?>> replaced = Amendment.replaced(old, stated);
    OffsetDateTime day = old.header().performed();
    opened.put(
        "lines",
        old.facts().stream()
            .map(fact -> (replaced.contains(fact) ? "Replaced: " : "") + whole(fact, day))
            .toList());
    return opened;
  }

  private static String whole(Fact<?> fact, OffsetDateTime day) {
    String eye =
        fact.site() == Site.BOTH
            ? "Both eyes together"
            : PlainWords.capital(fact.site().word()) + " eye";
    return eye + ", " + fact.finding().title() + ": " + FactText.of(fact, day);
  }

  private static List<String> pictures(Exam exam) {
    return Drawing.of(exam).stream().map(Picture::svg).toList();
  }

  private static List<Fact<?>> stated(List<FieldAnswer> written) {
    Set<Fact<?>> stated = new LinkedHashSet<>();
    written.forEach(field -> stated.addAll(field.facts()));
    return List.copyOf(stated);
  }

  private static List<String> breaches(Exam exam) {
    return Consistency.check(exam).stream()
        .map(breach -> breach.seen() + "; " + breach.wanted())
        .toList();
  }

  /** Makes record and letter of what a note of the same words gives. */
  private void exam(
      SheetStart start,
      String note,
      List<Fact<?>> stated,
      List<String> faults,
      Map<String, Object> view) {
    OffsetDateTime day = start.header().orElseThrow().performed();
    Result<List<Fact<?>>> facts = NoteReader.performed(day).facts(note);
    facts.faults().forEach(fault -> faults.add(fault.toString()));
    if (facts.isOk() && !new HashSet<>(facts.orThrow()).equals(new HashSet<>(stated))) {
      faults.add("Two fields change each other's meaning; write one of them differently.");
    }
    if (faults.isEmpty()) {
      Exam whole = start.exam(facts.orThrow());
      Summary summary = Summary.of(whole);
      view.put("letter", Letter.text().write(summary));
      view.put("silent", summary.silent().orElse(""));
      view.put("record", PlainJson.of(RecordTree.of(whole)));
      exam = Optional.of(whole);
    }
  }
}
