package org.isopter.mapper.foreign.returned;

import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.isopter.mapper.fhir.FhirWriter;
import org.isopter.mapper.foreign.vocabulary.Habits;
import org.isopter.mapper.foreign.vocabulary.SideText;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.json.Raw;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Demographics;
import org.isopter.model.exam.ExamCodes;
import org.isopter.model.exam.Setting;
import org.isopter.model.finding.Answers;
import org.isopter.model.finding.Choice;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Part;
import org.isopter.model.finding.Spec;
import org.isopter.model.finding.Variant;
import org.isopter.model.value.Absence;
import org.isopter.model.value.Code;
import org.isopter.model.value.Concept;
import org.isopter.model.value.Site;

/** The codes that records of a catalogue are written with, each with the display it is written. */
public final class WrittenCodes {

  private final Map<String, Code> byToken = new HashMap<>();

  private final Vocabulary vocabulary;

  public WrittenCodes(Catalogue catalogue, Vocabulary vocabulary) {
    this.vocabulary = vocabulary;
    catalogue.all().forEach(this::finding);
    List.of(ExamCodes.PANEL, ExamCodes.DERIVED, ExamCodes.REPORT, ExamCodes.SETTING)
        .forEach(this::add);
    Stream.<Concept[]>of(Site.values(), Absence.values(), Setting.values())
        .flatMap(Arrays::stream)
        .map(Concept::code)
        .forEach(this::add);
    Demographics.LAYOUT.variants().forEach(this::parts);
    FhirWriter.FRAME_CODES.forEach(this::add);
  }

  /** Returns the code of a coding as it is written here; empty for a code of others. */
  Optional<Code> of(Raw coding) {
    String token = coding.string("system").orElse("") + "|" + coding.string("code").orElse("");
    return Optional.ofNullable(byToken.get(token));
  }

  /** Says whether a coding of others means nothing that is known here, and names no eye. */
  boolean isNeutral(Raw coding) {
    String token = coding.string("system").orElse("") + "|" + coding.string("code").orElse("");
    Habits habits = vocabulary.habits();
    boolean eye =
        habits.isEye(token)
            || habits.site(token).isPresent()
            || habits.qualifier(token).isPresent()
            || !SideText.in(coding.string("display").orElse("")).isEmpty();
    return !eye && !vocabulary.knows(token);
  }

  /** Returns the code of the panel as it is written. */
  Raw.Obj panel() {
    Map<String, Raw> coding = new LinkedHashMap<>();
    coding.put("system", Raw.of(ExamCodes.PANEL.system()));
    coding.put("code", Raw.of(ExamCodes.PANEL.code()));
    coding.put("display", Raw.of(ExamCodes.PANEL.display()));
    Map<String, Raw> code = new LinkedHashMap<>();
    code.put("coding", Raw.of(List.of(new Raw.Obj(coding))));
    code.put("text", Raw.of(ExamCodes.PANEL.display()));
    return new Raw.Obj(code);
  }

  private void finding(Finding<?> finding) {
    finding.codes().all().forEach(this::add);
    finding.methods().ifPresent(this::answers);
    finding.layout().choice().map(Choice::code).ifPresent(this::add);
    finding.layout().choice().map(Choice::notations).ifPresent(this::answers);
    for (Variant variant : finding.layout().variants()) {
      variant.value().ifPresent(this::spec);
      parts(variant);
    }
  }

  private void parts(Variant variant) {
    variant.parts().stream().map(Part::code).forEach(this::add);
    variant.parts().forEach(part -> spec(part.spec()));
  }

  private void spec(Spec spec) {
    if (spec instanceof Spec.Coded coded) {
      answers(coded.answers());
    }
  }

  private void answers(Answers answers) {
    answers.concepts().forEach(concept -> add(concept.code()));
  }

  private void add(Code code) {
    byToken.put(code.token(), code);
  }
}
