package org.isopter.model.entry;

import static org.isopter.model.entry.EntryField.both;
import static org.isopter.model.entry.EntryField.eyes;
import static org.isopter.model.entry.UsualPart.expected;
import static org.isopter.model.entry.UsualPart.optional;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.isopter.model.answer.tissue.GlobeState;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.Colours;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.catalogue.FieldFeatures;
import org.isopter.model.catalogue.Fields;
import org.isopter.model.catalogue.Globes;
import org.isopter.model.catalogue.Lids;
import org.isopter.model.catalogue.Movements;
import org.isopter.model.catalogue.Perimetry;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.catalogue.Segments;
import org.isopter.model.exam.ExamView;
import org.isopter.model.finding.Finding;
import org.isopter.model.text.Eyes;
import org.isopter.model.value.Site;
import org.isopter.model.value.Term;

/**
 * The steps of an examination in their usual order: acuity before anything that dazzles, pressure
 * and movements late. Guided entry, the sheet, the letter and the tables of a pool take from here
 * what a usual examination has. Common practice, no source.
 *
 * <p>A step is asked for as a whole, in {@link #question}, or in {@link #fields}; normal records
 * the same in both. The signs at the front and the back of the eye are expected in a letter, and no
 * step of entry asks for them.
 */
public enum UsualStep {
  ACUITY(
      both("acuity", "acuity", "VA", "", "sc R 6/9 L 6/6"),
      List.of(eyes("acuity", "Acuity at distance", "VA", "", "6/9-2 sc")),
      expected("acuity at distance", Acuities.DISTANCE, Acuities.BOUND)),
  PINHOLE(
      both("pinhole", "pinhole", "PH", "", "R 6/6 L NI"),
      List.of(eyes("pinhole", "Acuity through a pinhole", "PH", "", "6/6")),
      optional(Acuities.PINHOLE)),
  NEAR(
      both("near", "near", "NV", "", "R N5 L N8"),
      List.of(eyes("near", "Acuity at near", "NV", "", "N5 @ 40 cm")),
      optional(Acuities.NEAR)),
  PUPILS(
      both("pupils", "pupils", "pupils", "PERL", "PERRLA, or R 3 mm L 4 mm dim"),
      List.of(
          eyes("pupil", "Pupil", "pupil", "direct reactive", "4 mm dim"),
          both("pupils", "Pupils compared", "pupils", "equal", "unequal")),
      expected("size of the pupil", Pupils.SIZE),
      expected("response to light", Pupils.DIRECT),
      optional(Pupils.EQUALITY, Pupils.CONSENSUAL, Pupils.NEAR)),
  AFFERENT_DEFECT(
      both("defect", "afferent defect", "RAPD", "no RAPD", "L 2+"),
      List.of(both("defect", "Relative afferent defect", "RAPD", "none", "L 2+")),
      optional(Pupils.AFFERENT_DEFECT)),
  COLOUR(
      both("colour", "colour", "ishihara", "", "R 13/15 L 12/15"),
      List.of(eyes("colour", "Colour plates", "ishihara", "", "13/15")),
      expected("colour vision", Colours.PLATES)),
  RED(
      both("red", "red", "red sat", "red sat R 100% L 100%", "R 70% L 100%"),
      List.of(eyes("red", "Red saturation", "red sat", "100%", "70%")),
      expected("colour vision", Colours.RED_SATURATION)),
  BLIND_SPOT(
      both("spot", "blind spot", "blind spot", "blind spot each normal", "L enlarged"),
      List.of(eyes("spot", "Blind spot", "blind spot", "normal", "enlarged")),
      optional(Fields.BLIND_SPOT)),
  FIELDS(
      both("field", "fields", "VF", "VF each full to confrontation", "L IT reduced, rest full"),
      List.of(eyes("field", "Field by confrontation", "VF", "full to confrontation", "ST reduced")),
      expected(
          "visual field",
          Fields.CONFRONTATION,
          FieldFeatures.ISOPTER,
          Perimetry.MEAN_DEVIATION,
          Perimetry.FIELD_INDEX)),
  DISC(
      both("disc", "disc", "disc", "disc each normal", "R pink, clear margins"),
      List.of(eyes("disc", "Optic disc", "disc", "normal", "pale, clear margins")),
      expected(
          "optic disc",
          Discs.SWELLING,
          Discs.MARGIN,
          Discs.COLOUR,
          Discs.VERTICAL_CUP,
          Discs.HORIZONTAL_CUP,
          Discs.UNDIRECTED_CUP,
          Discs.HAEMORRHAGE,
          Discs.SIGN)),
  LIDS(
      both("lids", "lids", "ptosis", "no ptosis", "L 2 mm"),
      List.of(eyes("lids", "Drooping lid", "ptosis", "absent", "2 mm")),
      expected("lids", Lids.PTOSIS, Lids.MARGIN_REFLEX, Lids.FISSURE)),
  PRESSURE(
      both("pressure", "pressure", "IOP", "", "R 14 L 16 GAT"),
      List.of(eyes("pressure", "Pressure in the eye", "IOP", "", "14 GAT")),
      expected("pressure", Pressures.INTRAOCULAR, Pressures.BEYOND)),
  MOVEMENTS(
      both(
          "movements",
          "movements",
          "EOM",
          "EOM full; no diplopia; no nystagmus",
          "R abduction -2, rest full"),
      List.of(
          eyes("movements", "Eye movements", "EOM", "full", "abduction -2, rest full"),
          both("double", "Double vision", "diplopia", "no diplopia", "binocular horizontal"),
          both(
              "nystagmus",
              "Nystagmus",
              "nystagmus",
              "no nystagmus",
              "OU horizontal jerk, fast left")),
      expected("range of movement", Movements.DUCTIONS)),
  FRONT(expected("signs at the front of the eye", Segments.ANTERIOR)),
  BACK(expected("signs at the back of the eye", Segments.POSTERIOR));

  /** The steps that entry asks for, in their order. */
  public static final List<UsualStep> ASKED =
      Stream.of(values()).filter(step -> !step.fields.isEmpty()).toList();

  private final EntryField question;
  private final List<EntryField> fields;
  private final List<UsualPart> parts;
  private final List<Finding<?>> findings;

  UsualStep(EntryField question, List<EntryField> fields, UsualPart... parts) {
    this.question = question;
    this.fields = fields;
    this.parts = List.of(parts);
    this.findings =
        this.parts.stream().<Finding<?>>flatMap(part -> part.findings().stream()).toList();
  }

  UsualStep(UsualPart unasked) {
    this(both("", unasked.title(), "", "", ""), List.of(), unasked);
  }

  /** Returns its name in a table: lower case, words joined by hyphens. */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** Returns the line that asks for the step as a whole, both eyes in it. */
  public EntryField question() {
    return question;
  }

  /** Returns the fields that ask for the step eye by eye. */
  public List<EntryField> fields() {
    return fields;
  }

  /** Returns the findings any of which says that the step was done, or that it was not. */
  public List<Finding<?>> findings() {
    return findings;
  }

  /** Returns the fields of all steps, in their order. */
  public static List<EntryField> allFields() {
    return Stream.of(values()).flatMap(step -> step.fields.stream()).toList();
  }

  /**
   * Returns what is missed where an examination does not speak of it: by its name in a letter, the
   * findings any of which speaks of it.
   */
  public static Map<String, List<Finding<?>>> expectedFindings() {
    Map<String, List<Finding<?>>> expected = new LinkedHashMap<>();
    Stream.of(values())
        .flatMap(step -> step.parts.stream())
        .filter(part -> !part.title().isEmpty())
        .forEach(
            part ->
                expected
                    .computeIfAbsent(part.title(), any -> new ArrayList<>())
                    .addAll(part.findings()));
    return expected;
  }

  /** Returns the eyes of which an examination says nothing of these; an eye that is gone is not. */
  public static Set<Eyes> silent(ExamView exam, List<Finding<?>> findings) {
    Set<Eyes> silent = EnumSet.noneOf(Eyes.class);
    Site.EACH_EYE.stream()
        .filter(eye -> !exam.eye(eye).has(Globes.STATE, GlobeState::isGone))
        .filter(eye -> findings.stream().allMatch(finding -> isSilent(exam, eye, finding)))
        .forEach(eye -> silent.add(Eyes.of(eye)));
    return Eyes.joined(silent);
  }

  /** Where nobody could look into the eye, that is what was found there. */
  private static boolean isInside(Finding<?> finding) {
    return DISC.findings.contains(finding) || BACK.findings.contains(finding);
  }

  private static boolean isNoView(Term view) {
    return view.word().equals("no-view");
  }

  /** What compares the eyes speaks of both of them. */
  private static boolean isSilent(ExamView exam, Site eye, Finding<?> finding) {
    if (isInside(finding) && exam.eye(eye).has(Globes.FUNDUS_VIEW, UsualStep::isNoView)) {
      return false;
    }
    boolean pair = finding.sites().equals(Site.PAIR);
    return pair ? exam.both().isSilentOn(finding) : exam.eye(eye).isSilentOn(finding);
  }
}
