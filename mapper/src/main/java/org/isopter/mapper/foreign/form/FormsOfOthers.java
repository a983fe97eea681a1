package org.isopter.mapper.foreign.form;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.foreign.document.Document;
import org.isopter.mapper.foreign.document.Neighbours;
import org.isopter.mapper.foreign.document.Panels;
import org.isopter.mapper.foreign.document.Versions;
import org.isopter.mapper.foreign.ledger.Reason;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.observation.Translation;
import org.isopter.mapper.foreign.observation.Translator;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.json.Raw;
import org.isopter.model.value.Fault;

/**
 * Reads the answers to forms of others (QuestionnaireResponse) where the questions are among what
 * is read together: each answer as an Observation, by the rules of those.
 */
public final class FormsOfOthers {

  /** Each answer is tried beside each other one. */
  private static final int MOST_ANSWERS = 400;

  private final Vocabulary vocabulary;
  private final Options options;
  private final Neighbours neighbours;
  private final List<Raw.Obj> forms;

  /** Makes a reader for the responses of a document. */
  public FormsOfOthers(
      Vocabulary vocabulary, Options options, Neighbours neighbours, Document document) {
    this.vocabulary = vocabulary;
    this.options = options;
    this.neighbours = neighbours;
    this.forms =
        document.parts().stream()
            .map(Document.Part::resource)
            .filter(FormDefinition::isForm)
            .toList();
  }

  /** Says whether a resource answers a form of others. */
  public static boolean isResponse(Document.Part part) {
    return Neighbours.type(part.resource()).equals("QuestionnaireResponse")
        && part.keptBefore().isEmpty()
        && !FormAnswers.isOurs(part.resource());
  }

  /** Returns a document with an Observation behind each response for each of its answers. */
  public Document answered(Document document) {
    if (document.parts().stream().noneMatch(FormsOfOthers::isResponse)) {
      return document;
    }
    List<Document.Part> parts = document.parts();
    Map<Integer, Reason> superseded =
        Versions.of(parts, part -> isResponse(part) ? Versions.names(part.resource()) : List.of())
            .superseded();
    Map<Document.Part, Map<String, Raw.Obj>> made = new LinkedHashMap<>();
    for (int i = 0; i < parts.size(); i++) {
      if (isResponse(parts.get(i)) && !superseded.containsKey(i)) {
        made.put(parts.get(i), statements(parts.get(i)));
      }
    }
    return document.with(made);
  }

  private Map<String, Raw.Obj> statements(Document.Part part) {
    List<FormDefinition> asked = FormDefinition.of(part.resource(), forms, neighbours);
    if (asked.size() != 1 || isTooLong(part)) {
      return Map.of();
    }
    Map<String, Raw.Obj> statements = new LinkedHashMap<>();
    FormStatements.of(vocabulary, new Rules(part), asked.get(0), part.resource())
        .forEach((at, statement) -> statements.put(at, of(part, statement)));
    statements.values().forEach(made -> neighbours.standsWith(part.resource(), made));
    return statements;
  }

  /** Returns an Observation with a reference to the response that it was made of. */
  private static Raw.Obj of(Document.Part part, Raw.Obj statement) {
    String name = part.fullUrl().orElseGet(() -> Panels.name(part));
    Raw.Obj source =
        new Raw.Obj(Map.of("reference", Raw.of(name), "type", Raw.of("QuestionnaireResponse")));
    return statement.with("derivedFrom", Raw.of(List.of(source)));
  }

  /** Returns why no answer of a response can be read; empty where its questions are known. */
  public Optional<Reason> reason(Document.Part part) {
    if (isTooLong(part)) {
      Fault fault = Fault.of("/item", "more answers", "at most " + MOST_ANSWERS + " answers");
      return Optional.of(new Reason(Why.UNREADABLE, fault));
    }
    int forms = FormDefinition.of(part.resource(), this.forms, neighbours).size();
    if (forms == 1) {
      return Optional.empty();
    }
    String address = part.resource().string("questionnaire").orElse("no form");
    String seen = forms == 0 ? address : address + ", of which several forms are there";
    Fault fault =
        Fault.of("/questionnaire", seen, "one Questionnaire that is read together with it");
    return Optional.of(new Reason(Why.FORM_UNKNOWN, fault));
  }

  private static boolean isTooLong(Document.Part part) {
    return answers(part.resource()) > MOST_ANSWERS;
  }

  private static int answers(Raw holder) {
    int count = 0;
    for (Raw.Obj item : holder.objects("item")) {
      count += answers(item);
      for (Raw.Obj answer : item.objects("answer")) {
        count += 1 + answers(answer);
      }
    }
    return count;
  }

  /** The rules of Observations, for what was made of the answers of a response. */
  private final class Rules implements FormRules {

    private final Document.Part part;

    private Rules(Document.Part part) {
      this.part = part;
    }

    @Override
    public boolean names(Raw.Obj observation) {
      return Translator.names(vocabulary, neighbours, observation);
    }

    @Override
    public Translation read(Raw.Obj observation) {
      return Translator.of(
          vocabulary, options, neighbours, of(part, observation), Optional.empty());
    }
  }
}
