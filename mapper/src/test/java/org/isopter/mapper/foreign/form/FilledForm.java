package org.isopter.mapper.foreign.form;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.record.PlainJson;
import org.isopter.mapper.record.RecordTree;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.finding.Finding;
import org.isopter.model.finding.Spec;
import org.isopter.model.form.Form;
import org.isopter.model.form.FormItem;
import org.isopter.model.value.Code;

/** Fills our form with an examination, as a person before a renderer would. */
final class FilledForm {

  private FilledForm() {}

  static String json(Exam exam) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("resourceType", "QuestionnaireResponse");
    tree.put("questionnaire", Form.URL);
    tree.put("status", "completed");
    tree.put("subject", Map.of("identifier", identifier(exam)));
    tree.put("authored", exam.header().performed().toString().replace("30+", "30:00+"));
    List<Object> items = new ArrayList<>();
    Map<?, ?> findings = (Map<?, ?>) RecordTree.of(exam).get("findings");
    findings.forEach(
        (id, sites) -> {
          List<Object> inner = new ArrayList<>();
          ((Map<?, ?>) sites).forEach((site, entries) -> site(id + "/" + site, entries, inner));
          items.add(Map.of("linkId", id, "item", inner));
        });
    tree.put("item", items);
    return PlainJson.of(tree);
  }

  private static Map<String, Object> identifier(Exam exam) {
    Map<String, Object> identifier = new LinkedHashMap<>();
    exam.header()
        .subject()
        .identifier()
        .ifPresent(
            id -> {
              id.system().ifPresent(system -> identifier.put("system", system));
              identifier.put("value", id.value());
            });
    return identifier;
  }

  private static void site(String name, Object entries, List<Object> into) {
    List<?> list = entries instanceof List<?> several ? several : List.of(entries);
    list.forEach(entry -> into.add(Map.of("linkId", name, "item", entry(name, entry))));
  }

  private static List<Object> entry(String name, Object entry) {
    Map<?, ?> members = entry instanceof Map<?, ?> keyed ? keyed : Map.of("value", entry);
    List<Object> items = new ArrayList<>();
    Finding<?> finding =
        Catalogue.standard().byId(name.substring(0, name.indexOf('/'))).orElseThrow();
    for (FormItem question : Form.questions(finding)) {
      Optional<Object> value =
          question.key().endsWith(".absent")
              ? part(members.get(question.key().replace(".absent", "")))
              : Optional.<Object>ofNullable(members.get(question.key()))
                  .filter(found -> !(found instanceof Map));
      value.ifPresent(
          found -> {
            List<?> all = found instanceof List<?> several ? several : List.of(found);
            List<Object> answers = new ArrayList<>();
            all.forEach(one -> answers.add(answer(question, one)));
            items.add(Map.of("linkId", name + "/" + question.key(), "answer", answers));
          });
    }
    return items;
  }

  private static Optional<Object> part(@org.jspecify.annotations.Nullable Object member) {
    return member instanceof Map<?, ?> absent
        ? Optional.ofNullable(absent.get("absent"))
        : Optional.empty();
  }

  private static Map<String, Object> answer(FormItem question, Object value) {
    if (question.spec().orElse(null) instanceof Spec.Coded coded) {
      Code code = coded.answers().byWord((String) value).orElseThrow().code();
      return Map.of("valueCoding", Map.of("system", code.system(), "code", code.code()));
    }
    if (value instanceof Boolean) {
      return Map.of("valueBoolean", value);
    }
    String text = value instanceof java.math.BigDecimal n ? n.toPlainString() : value.toString();
    String bare = question.unit().map(unit -> text.replace(" " + unit, "")).orElse(text);
    return Map.of("valueString", bare);
  }
}
