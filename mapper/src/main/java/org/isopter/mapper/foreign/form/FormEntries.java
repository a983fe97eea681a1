package org.isopter.mapper.foreign.form;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.isopter.mapper.foreign.ledger.Ledger;
import org.isopter.mapper.foreign.ledger.Place;
import org.isopter.mapper.foreign.ledger.Refusal;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.json.Raw;
import org.isopter.model.finding.Spec;
import org.isopter.model.form.Form;
import org.isopter.model.form.FormItem;
import org.isopter.model.value.Concept;

/** The answers of a form, put together as the findings of a record. */
final class FormEntries {

  private static final Pattern NUMBER = Pattern.compile("[+-]?(0|[1-9]\\d{0,8})(\\.\\d{1,9})?");
  private static final String PART_ABSENT = "." + Form.ABSENT;

  private final FormNames names;
  private final Map<String, Map<String, Map<String, Object>>> findings = new LinkedHashMap<>();
  private final List<Place> taken = new ArrayList<>();

  private FormEntries(FormNames names) {
    this.names = names;
  }

  /**
   * Reads the items of a response.
   *
   * @throws Refusal when an answer is of no question of the form, or of none of its kinds
   */
  static FormEntries of(FormNames names, Place response) throws Refusal {
    FormEntries entries = new FormEntries(names);
    entries.items(response, "");
    return entries;
  }

  boolean isEmpty() {
    return findings.isEmpty();
  }

  /** Takes the answers and the names of their questions. */
  void take() {
    taken.forEach(place -> place.take(Ledger.CATALOGUE, "linkId", "answer"));
  }

  /** Returns the findings as a record has them: by finding and by site, several in a list. */
  Map<String, Object> findings() {
    Map<String, Object> all = new LinkedHashMap<>();
    findings.forEach(
        (name, entries) -> {
          int slash = name.indexOf('/');
          List<Object> list = new ArrayList<>(entries.values());
          sites(all, name.substring(0, slash))
              .put(name.substring(slash + 1), list.size() == 1 ? list.get(0) : list);
        });
    return all;
  }

  @SuppressWarnings("unchecked")
  private static Map<String, Object> sites(Map<String, Object> all, String finding) {
    return (Map<String, Object>)
        all.computeIfAbsent(finding, any -> new LinkedHashMap<String, Object>());
  }

  /** A group that repeats is another entry each time: its place tells them apart. */
  private void items(Place holder, String group) throws Refusal {
    for (Place item : holder.list("item")) {
      String name = item.text("linkId");
      Place around = names.isEntry(holder.text("linkId")) ? holder : item;
      FormSurroundings.check(item, around, names.question(name).map(FormItem::title).orElse(""));
      if (item.has("answer")) {
        answers(item, name, group);
      } else if (names.isGroup(name)) {
        taken.add(item);
      }
      items(item, names.isEntry(name) ? item.at() : group);
    }
  }

  private void answers(Place item, String name, String group) throws Refusal {
    FormItem question =
        names
            .question(name)
            .orElseThrow(
                () ->
                    Refusal.of(
                        Why.UNKNOWN_CODE, item.at() + "/linkId", name, "a question of the form"));
    FormSurroundings.checkUnit(item, question);
    List<Place> answers = item.list("answer");
    if (answers.isEmpty() || (answers.size() > 1 && !question.repeats())) {
      throw Refusal.of(Why.VALUE_UNFIT, item.at(), "several answers", "one answer");
    }
    List<Object> values = new ArrayList<>();
    for (Place answer : answers) {
      if (answer.has("item")) {
        throw Refusal.of(Why.UNREAD_QUALIFIER, answer.at(), "items in an answer", "an answer");
      }
      values.add(value(answer, question));
    }
    Map<String, Object> entry =
        findings
            .computeIfAbsent(FormNames.entry(name), any -> new LinkedHashMap<>())
            .computeIfAbsent(group, any -> new LinkedHashMap<>());
    put(entry, question, values, item);
    taken.add(item);
  }

  private static void put(
      Map<String, Object> entry, FormItem question, List<Object> values, Place item)
      throws Refusal {
    boolean absent = question.key().endsWith(PART_ABSENT);
    String key =
        absent
            ? question.key().substring(0, question.key().length() - PART_ABSENT.length())
            : question.key();
    Object value = question.repeats() ? values : values.get(0);
    Object before = entry.putIfAbsent(key, absent ? Map.of(Form.ABSENT, value) : value);
    if (before != null) {
      throw Refusal.of(Why.VALUE_UNFIT, item.at(), "a second answer", "one answer to a question");
    }
  }

  private static Object value(Place answer, FormItem question) throws Refusal {
    Spec spec = question.spec().orElseGet(() -> new Spec.Text(Integer.MAX_VALUE));
    if (spec instanceof Spec.Coded coded) {
      return coded(answer, coded);
    }
    if (spec instanceof Spec.Truth) {
      return truth(answer);
    }
    String text = text(answer);
    boolean number = NUMBER.matcher(text).matches();
    if (number && (spec instanceof Spec.Count || isBare(spec))) {
      return new BigDecimal(text);
    }
    boolean unitless = number || (spec instanceof Spec.Ratio && !text.contains(" "));
    return question.unit().filter(unit -> unitless).map(unit -> text + " " + unit).orElse(text);
  }

  private static boolean isBare(Spec spec) {
    return spec instanceof Spec.Measure measure
        && measure.spans().size() == 1
        && measure.spans().get(0).unit().text().isEmpty();
  }

  private static String text(Place answer) throws Refusal {
    Optional<String> number = answer.number("valueInteger").or(() -> answer.number("valueDecimal"));
    return answer
        .value()
        .string("valueString")
        .or(() -> number)
        .map(String::strip)
        .orElseThrow(() -> unfit(answer, "a text"));
  }

  private static String coded(Place answer, Spec.Coded spec) throws Refusal {
    return answer
        .child("valueCoding")
        .flatMap(coding -> spec.answers().byCode(coding.text("system"), coding.text("code")))
        .map(Concept::word)
        .orElseThrow(() -> unfit(answer, spec.answers().choices()));
  }

  private static Boolean truth(Place answer) throws Refusal {
    return answer
        .value()
        .get("valueBoolean")
        .filter(leaf -> leaf instanceof Raw.Leaf one && one.kind() == Raw.Kind.TRUTH)
        .map(leaf -> ((Raw.Leaf) leaf).text().equals("true"))
        .orElseThrow(() -> unfit(answer, "true or false"));
  }

  private static Refusal unfit(Place answer, String wanted) {
    return Refusal.of(Why.VALUE_UNFIT, answer.at(), "another kind of answer", wanted);
  }
}
