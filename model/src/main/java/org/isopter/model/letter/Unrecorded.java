package org.isopter.model.letter;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
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

/**
 * What a usual examination has and this one does not mention, not even as not done; common
 * practice, no source. Where there is no eye, nothing is missed.
 */
enum Unrecorded {
  ACUITY("acuity at distance", Acuities.DISTANCE, Acuities.BOUND),
  FIELD(
      "visual field",
      Fields.CONFRONTATION,
      FieldFeatures.ISOPTER,
      Perimetry.MEAN_DEVIATION,
      Perimetry.FIELD_INDEX),
  DISC(
      "optic disc",
      Discs.SWELLING,
      Discs.MARGIN,
      Discs.COLOUR,
      Discs.VERTICAL_CUP,
      Discs.HORIZONTAL_CUP,
      Discs.UNDIRECTED_CUP,
      Discs.HAEMORRHAGE,
      Discs.SIGN),
  SIZE("size of the pupil", Pupils.SIZE),
  LIGHT("response to light", Pupils.DIRECT),
  COLOUR("colour vision", Colours.PLATES, Colours.RED_SATURATION),
  LIDS("lids", Lids.PTOSIS, Lids.MARGIN_REFLEX, Lids.FISSURE),
  MOVEMENTS("range of movement", Movements.DUCTIONS),
  PRESSURE("pressure", Pressures.INTRAOCULAR, Pressures.BEYOND),
  FRONT("signs at the front of the eye", Segments.ANTERIOR),
  BACK("signs at the back of the eye", Segments.POSTERIOR);

  private final String title;
  private final List<Finding<?>> findings;

  Unrecorded(String title, Finding<?>... findings) {
    this.title = title;
    this.findings = Arrays.asList(findings);
  }

  /** Returns what is not recorded, with the eyes, in one line; empty where all is. */
  static Optional<String> sentence(ExamView exam) {
    Map<Eyes, List<String>> silent = new EnumMap<>(Eyes.class);
    for (Unrecorded one : values()) {
      one.silent(exam)
          .forEach(eyes -> silent.computeIfAbsent(eyes, any -> new ArrayList<>()).add(one.title));
    }
    String list =
        silent.entrySet().stream()
            .map(line -> line.getKey().lacking() + ": " + String.join(", ", line.getValue()))
            .collect(Collectors.joining("; "));
    return list.isEmpty()
        ? Optional.empty()
        : Optional.of("Not recorded, " + list + ". This says nothing about them.");
  }

  private Set<Eyes> silent(ExamView exam) {
    Set<Eyes> silent = EnumSet.noneOf(Eyes.class);
    Site.EACH_EYE.stream()
        .filter(eye -> !exam.eye(eye).has(Globes.STATE, GlobeState::isGone))
        .filter(eye -> isSilent(exam, eye))
        .forEach(eye -> silent.add(Eyes.of(eye)));
    return Eyes.joined(silent);
  }

  private boolean isSilent(ExamView exam, Site eye) {
    return findings.stream().allMatch(finding -> exam.eye(eye).isSilentOn(finding));
  }
}
