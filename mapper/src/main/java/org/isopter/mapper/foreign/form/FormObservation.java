package org.isopter.mapper.foreign.form;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.foreign.vocabulary.Surroundings;
import org.isopter.mapper.foreign.vocabulary.Vocabulary;
import org.isopter.mapper.json.Raw;

/** Makes Observations and their components of answers. */
final class FormObservation {

  private static final String TEXT = "text";
  private static final String NOTE = "note";
  private static final String METHOD = "method";
  private static final String COMPONENT = "component";
  private static final String UNKNOWN = "urn:isopter:question-that-the-form-does-not-have";

  private final Vocabulary vocabulary;
  private final Raw.Obj form;
  private final Map<String, Raw> frame;
  private final Map<Raw.Obj, FormLabel> labels = new HashMap<>();

  FormObservation(Vocabulary vocabulary, Raw.Obj form, Raw.Obj response) {
    this.vocabulary = vocabulary;
    this.form = form;
    this.frame = FormFrame.of(form, response);
  }

  /** Says whether what a group is called names an eye and nothing else. */
  boolean isEye(Raw.Obj question) {
    return label(question).isEye();
  }

  /** Says whether an answer, or a group that it is in, is about something else than a test. */
  boolean isApart(FormAnswer other) {
    return other.path().stream()
        .map(this::label)
        .anyMatch(
            label ->
                label.shown().isEmpty()
                    && vocabulary.habits().surroundings().isApart(label.text()));
  }

  /** Returns an answer under the name of its question, or of the group where that names an eye. */
  Raw.Obj alone(FormAnswer each) {
    List<FormLabel> names = names(each);
    int last = names.size() - 1;
    return last < 0
        ? made(each, Optional.empty(), List.of())
        : made(each, Optional.of(names.get(last).concept()), names.subList(0, last));
  }

  /** Returns an answer under the names of groups and its question together, the nearest first. */
  List<Raw.Obj> joined(FormAnswer each) {
    List<FormLabel> names = names(each);
    int last = names.size() - 1;
    List<Raw.Obj> joined = new ArrayList<>();
    for (int i = last - 1; i >= 0; i--) {
      List<FormLabel> outer = new ArrayList<>(names.subList(0, i));
      outer.addAll(names.subList(i + 1, last));
      joined.add(made(each, Optional.of(names.get(i).with(names.get(last))), outer));
    }
    return joined;
  }

  /**
   * Returns an Observation with answers that stand beside it.
   *
   * @param far those of a group apart, whose name may say anything of them
   */
  Raw.Obj with(Raw.Obj observation, List<FormAnswer> beside, Set<FormAnswer> far) {
    List<Raw> components = new ArrayList<>();
    List<Raw> notes = new ArrayList<>(observation.list(NOTE));
    Optional<Raw.Obj> method = Optional.empty();
    for (FormAnswer other : beside) {
      FormLabel label = label(other.question());
      String as = place(other, far.contains(other));
      if (as.equals(NOTE)) {
        notes.add(text(words(other)));
      } else if (as.equals(METHOD) && method.isEmpty()) {
        method = Optional.of(method(other, label));
      } else {
        components.add(component(other, label, far.contains(other)));
      }
    }
    Raw.Obj by = method.map(how -> observation.with(METHOD, how)).orElse(observation);
    Raw.Obj noted = notes.isEmpty() ? by : by.with(NOTE, Raw.of(notes));
    return components.isEmpty() ? noted : noted.with(COMPONENT, Raw.of(components));
  }

  /**
   * Returns the member of an Observation that an answer belongs in.
   *
   * @param far whether it is one of a group apart
   */
  String place(FormAnswer other, boolean far) {
    String question = label(other.question()).text();
    Surroundings known = vocabulary.habits().surroundings();
    Optional<Raw.Obj> answer = other.answer();
    boolean worded = answer.flatMap(given -> given.string("valueString")).isPresent();
    boolean coded = answer.flatMap(given -> given.object("valueCoding")).isPresent();
    if (!far && worded && known.asksForRemark(question)) {
      return NOTE;
    }
    return !far && (worded || coded) && known.asksForMethod(question) ? METHOD : COMPONENT;
  }

  private static String words(FormAnswer other) {
    return other.answer().flatMap(answer -> answer.string("valueString")).orElse("");
  }

  private Raw.Obj method(FormAnswer other, FormLabel label) {
    Map<String, Raw> members = new LinkedHashMap<>();
    value(members, other, label);
    extensions(members, other, 1);
    Raw concept = members.remove("valueCodeableConcept");
    Raw.Obj method = concept instanceof Raw.Obj coded ? coded : text(words(other));
    return members.get("extension") == null
        ? method
        : method.with("extension", Raw.of(list(members, "extension")));
  }

  private Raw.Obj component(FormAnswer other, FormLabel label, boolean far) {
    Map<String, Raw> component = new LinkedHashMap<>();
    component.put("code", far ? Raw.Obj.EMPTY : label.concept());
    value(component, other, label);
    extensions(component, other, 1);
    return new Raw.Obj(component);
  }

  private Raw.Obj made(FormAnswer each, Optional<Raw.Obj> code, List<FormLabel> outer) {
    Map<String, Raw> members = new LinkedHashMap<>(frame);
    members.put("resourceType", Raw.of("Observation"));
    code.ifPresent(concept -> members.put("code", concept));
    List<FormLabel> all = each.path().stream().map(this::label).toList();
    List<Raw> categories = new ArrayList<>();
    outer.stream().filter(label -> !label.isEmpty()).forEach(l -> categories.add(l.concept()));
    all.forEach(label -> label.shown().ifPresent(text -> categories.add(text(text))));
    FormFrame.put(members, "category", categories);
    List<FormLabel> eyes = all.stream().filter(FormLabel::isEye).toList();
    if (!eyes.isEmpty()) {
      members.put("bodySite", FormLabel.site(eyes));
    }
    value(members, each, label(each.question()));
    extensions(members, each, each.around().size());
    FormFrame.put(members, NOTE, instructions(each));
    return new Raw.Obj(members);
  }

  private void value(Map<String, Raw> members, FormAnswer each, FormLabel label) {
    each.answer()
        .ifPresent(
            answer -> new FormValue(vocabulary, each.question(), label).addTo(members, answer));
  }

  /** What extends an answer, its question, or a group, may say anything of it. */
  private static void extensions(Map<String, Raw> members, FormAnswer each, int levels) {
    List<Raw> plain = new ArrayList<>(list(members, "extension"));
    List<Raw> modifying = new ArrayList<>(list(members, "modifierExtension"));
    List<Raw.Obj> around = each.around();
    List<Raw.Obj> holders = new ArrayList<>(around.subList(around.size() - levels, around.size()));
    each.answer().ifPresent(holders::add);
    for (Raw.Obj holder : holders) {
      plain.addAll(holder.list("extension"));
      modifying.addAll(holder.list("modifierExtension"));
    }
    for (Raw.Obj question : each.path()) {
      modifying.addAll(question.list("modifierExtension"));
      if (question.members().isEmpty()) {
        modifying.add(new Raw.Obj(Map.of("url", Raw.of(UNKNOWN))));
      }
    }
    FormFrame.put(members, "extension", plain);
    FormFrame.put(members, "modifierExtension", modifying);
  }

  /** What the form tells those who fill it in may say how everything is tested. */
  private List<Raw> instructions(FormAnswer each) {
    List<Raw> notes = new ArrayList<>();
    List<Raw.Obj> holders = new ArrayList<>(List.of(form));
    holders.addAll(each.path());
    for (Raw.Obj holder : holders) {
      holder.objects("item").stream()
          .filter(item -> item.string("type").equals(Optional.of("display")))
          .filter(item -> !FormValue.isUnit(item))
          .flatMap(item -> item.string(TEXT).stream())
          .forEach(words -> notes.add(text(words)));
    }
    return notes;
  }

  /** Returns what question and groups are called that names no eye, the outermost first. */
  private List<FormLabel> names(FormAnswer each) {
    return each.path().stream()
        .map(this::label)
        .filter(label -> !label.isEye() && !label.isEmpty())
        .toList();
  }

  private FormLabel label(Raw.Obj question) {
    return labels.computeIfAbsent(question, any -> FormLabel.of(vocabulary, any));
  }

  private static Raw.Obj text(String words) {
    return new Raw.Obj(Map.of(TEXT, Raw.of(words)));
  }

  private static List<Raw> list(Map<String, Raw> members, String name) {
    return members.get(name) instanceof Raw.Arr list ? list.items() : List.of();
  }
}
