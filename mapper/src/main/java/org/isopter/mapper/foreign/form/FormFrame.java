package org.isopter.mapper.foreign.form;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.json.Raw;

/** What all Observations of a response share: of whom, when, by whom, and the name of the form. */
final class FormFrame {

  /** FHIR R4 questionnaire-answers-status, as the status of what was observed. */
  private static final Map<String, String> STATUS =
      Map.of(
          "completed", "final",
          "amended", "amended",
          "in-progress", "preliminary",
          "stopped", "cancelled",
          "entered-in-error", "entered-in-error");

  private static final List<String> SAME =
      List.of("implicitRules", "subject", "encounter", "basedOn", "partOf", "extension");

  private FormFrame() {}

  /**
   * Returns the members of each Observation. When the answers were last changed is when they were
   * issued: the test may have been before.
   */
  static Map<String, Raw> of(Raw.Obj form, Raw.Obj response) {
    Map<String, Raw> frame = new LinkedHashMap<>();
    response
        .string("status")
        .flatMap(status -> Optional.ofNullable(STATUS.get(status)))
        .ifPresent(status -> frame.put("status", Raw.of(status)));
    SAME.forEach(name -> response.get(name).ifPresent(value -> frame.put(name, value)));
    response.get("modifierExtension").ifPresent(value -> frame.put("modifierExtension", value));
    response.get("authored").ifPresent(value -> frame.put("issued", value));
    List<Raw> people = new ArrayList<>();
    response.get("author").ifPresent(people::add);
    response.get("source").filter(who -> !people.contains(who)).ifPresent(people::add);
    put(frame, "performer", people);
    response.object("meta").ifPresent(meta -> labels(frame, meta));
    List<Raw> contained =
        response.objects("contained").stream()
            .filter(inner -> !FormDefinition.isForm(inner))
            .<Raw>map(inner -> inner)
            .toList();
    put(frame, "contained", contained);
    narrative(frame, form);
    return frame;
  }

  private static void labels(Map<String, Raw> frame, Raw.Obj meta) {
    Map<String, Raw> labels = new LinkedHashMap<>();
    for (String name : List.of("tag", "security")) {
      meta.get(name).ifPresent(value -> labels.put(name, value));
    }
    if (!labels.isEmpty()) {
      frame.put("meta", new Raw.Obj(labels));
    }
  }

  /** The title of the form may say that all of it is of another eye, or of targets. */
  private static void narrative(Map<String, Raw> frame, Raw.Obj form) {
    String title = form.string("title").or(() -> form.string("name")).orElse("");
    if (!title.isEmpty()) {
      String escaped = title.replace("&", "&amp;").replace("<", "&lt;");
      Map<String, Raw> text = new LinkedHashMap<>();
      text.put("status", Raw.of("generated"));
      text.put("div", Raw.of("<div xmlns=\"http://www.w3.org/1999/xhtml\">" + escaped + "</div>"));
      frame.put("text", new Raw.Obj(text));
    }
  }

  /** Adds a list to members; an empty one is none. */
  static void put(Map<String, Raw> members, String name, Collection<Raw> all) {
    if (!all.isEmpty()) {
      members.put(name, Raw.of(List.copyOf(all)));
    }
  }
}
