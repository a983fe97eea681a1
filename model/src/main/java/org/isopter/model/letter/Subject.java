package org.isopter.model.letter;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.catalogue.Acuities;
import org.isopter.model.catalogue.Alignments;
import org.isopter.model.catalogue.Colours;
import org.isopter.model.catalogue.Corneas;
import org.isopter.model.catalogue.Discs;
import org.isopter.model.catalogue.Drops;
import org.isopter.model.catalogue.FieldFeatures;
import org.isopter.model.catalogue.Fields;
import org.isopter.model.catalogue.Globes;
import org.isopter.model.catalogue.Lids;
import org.isopter.model.catalogue.Movements;
import org.isopter.model.catalogue.Perimetry;
import org.isopter.model.catalogue.Pressures;
import org.isopter.model.catalogue.Pupils;
import org.isopter.model.catalogue.Refractions;
import org.isopter.model.catalogue.Segments;
import org.isopter.model.catalogue.VisualFunctions;
import org.isopter.model.exam.ExamView;
import org.isopter.model.finding.Finding;

/**
 * The rows of a letter in their order, each with its findings and what they are called within the
 * row; common practice, no source. A finding of none of them has a row of its own.
 *
 * @param title what stands before the row
 * @param labels what each finding is called in the row; nothing where its words say it
 */
record Subject(String title, Map<Finding<?>, String> labels) {

  private static final List<Subject> ORDER =
      List.of(
          of("Globe").and(Globes.STATE, ""),
          of("Acuity")
              .and(Acuities.DISTANCE, "")
              .and(Acuities.BOUND, "")
              .and(Acuities.PINHOLE, "pinhole")
              .and(Acuities.NEAR, "near")
              .and(VisualFunctions.FIXATION, "fixation")
              .and(VisualFunctions.PREFERENTIAL_LOOKING, "grating")
              .and(VisualFunctions.CONTRAST, "contrast")
              .and(VisualFunctions.PHOTOSTRESS, "recovery after bright light"),
          of("Confrontation")
              .and(Fields.CONFRONTATION, "")
              .and(FieldFeatures.BORDER, "loss")
              .and(FieldFeatures.CRESCENT, "temporal crescent"),
          of("Kinetic field").and(FieldFeatures.ISOPTER, ""),
          of("Blind spot").and(Fields.BLIND_SPOT, ""),
          of("Perimetry")
              .and(Perimetry.MEAN_DEVIATION, "mean deviation")
              .and(Perimetry.PATTERN_DEVIATION, "pattern standard deviation")
              .and(Perimetry.FIELD_INDEX, "index")
              // How far it may be trusted, in the order of DICOM PS3.6, group 0024.
              .and(Perimetry.FIXATION_LOSSES, "fixation losses")
              .and(Perimetry.FALSE_NEGATIVES, "false negatives")
              .and(Perimetry.FALSE_POSITIVES, "false positives")
              .and(Perimetry.DURATION, "lasted"),
          of("Optic disc")
              .and(Discs.SWELLING, "swelling")
              .and(Discs.MARGIN, "margin")
              .and(Discs.COLOUR, "colour")
              .and(Discs.HAEMORRHAGE, "haemorrhage")
              .and(Discs.VERTICAL_CUP, "vertical cup-disc")
              .and(Discs.HORIZONTAL_CUP, "horizontal cup-disc")
              .and(Discs.UNDIRECTED_CUP, "cup-disc, direction not stated,")
              .and(Discs.SIGN, "")
              .and(Discs.DIAMETER, "height")
              .and(Discs.VENOUS_PULSATION, "venous pulsation"),
          of("Pupil")
              .and(Pupils.SIZE, "")
              .and(Pupils.OUTLINE, "outline")
              .and(Pupils.DIRECT, "direct")
              .and(Pupils.CONSENSUAL, "consensual")
              .and(Pupils.NEAR, "near")
              .and(Pupils.FEATURE, ""),
          of("Colour")
              .and(Colours.PLATES, "")
              .and(Colours.RED_SATURATION, "red saturation")
              .and(Colours.BRIGHTNESS, "brightness")
              .and(Colours.ACROSS_MERIDIAN, "across the meridian:"),
          of("Central grid").and(VisualFunctions.GRID, ""),
          of("Lids, face")
              .and(Lids.PTOSIS, "ptosis")
              .and(Lids.MARGIN_REFLEX, "margin reflex")
              .and(Lids.FISSURE, "fissure")
              .and(Lids.LEVATOR, "levator")
              .and(Lids.SWEATING, "sweating"),
          of("Movements")
              .and(Movements.DUCTIONS, "")
              .and(Movements.PAIN, "pain on movement")
              .and(Movements.SACCADES, "saccades")
              .and(Movements.NYSTAGMUS, "nystagmus"),
          of("Pressure").and(Pressures.INTRAOCULAR, "").and(Pressures.BEYOND, ""),
          of("Front")
              .and(Segments.ANTERIOR, "")
              .and(Corneas.THICKNESS, "central thickness")
              .and(Corneas.CURVATURE, "cornea"),
          of("Back")
              .and(Globes.FUNDUS_VIEW, "view of the fundus:")
              .and(Globes.RED_REFLEX, "red reflex")
              .and(Segments.POSTERIOR, ""),
          of("Refraction").and(Refractions.REFRACTION, ""),
          of("Protrusion").and(Alignments.PROTRUSION, ""),
          of("Drops").and(Drops.DILATION, "").and(Drops.TEST, "pupil"));

  private static Subject of(String title) {
    return new Subject(title, Map.of());
  }

  private Subject and(Finding<?> finding, String label) {
    Map<Finding<?>, String> more = new LinkedHashMap<>(labels);
    more.put(finding, label);
    return new Subject(title, more);
  }

  /** Returns the subjects that an examination speaks of, in their order. */
  static List<Subject> of(ExamView exam) {
    List<Finding<?>> spoken = exam.findings().toList();
    List<Subject> subjects = new ArrayList<>();
    ORDER.stream()
        .filter(subject -> spoken.stream().anyMatch(subject.labels()::containsKey))
        .forEach(subjects::add);
    spoken.stream()
        .filter(finding -> ORDER.stream().noneMatch(one -> one.labels().containsKey(finding)))
        .forEach(finding -> subjects.add(of(finding.title()).and(finding, "")));
    return subjects;
  }

  /** Returns what a finding is called before its words. */
  String label(Finding<?> finding) {
    return Optional.ofNullable(labels.get(finding))
        .filter(label -> !label.isEmpty())
        .map(label -> label + " ")
        .orElse("");
  }
}
