package org.isopter.mapper.foreign.form;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.foreign.document.Neighbours;
import org.isopter.mapper.json.Raw;

/** The questions of a form of others (Questionnaire), by the ids that answers name them by. */
final class FormDefinition {

  private static final String TYPE = "Questionnaire";

  private final Raw.Obj form;
  private final Map<String, Raw.Obj> items = new HashMap<>();
  private final Set<String> twice = new HashSet<>();

  private FormDefinition(Raw.Obj form) {
    this.form = form;
    index(form);
  }

  private void index(Raw.Obj holder) {
    for (Raw.Obj item : holder.objects("item")) {
      String name = item.string("linkId").orElse("");
      if (items.putIfAbsent(name, item) != null) {
        twice.add(name);
      }
      index(item);
    }
  }

  /**
   * Returns the forms that a response may answer: one where it is there, several where an address
   * names different ones.
   *
   * @param forms the forms that are read together with the response
   */
  static List<FormDefinition> of(Raw.Obj response, List<Raw.Obj> forms, Neighbours neighbours) {
    String address = response.string("questionnaire").orElse("");
    Set<Raw.Obj> found = new HashSet<>();
    if (address.startsWith("#")) {
      neighbours.find(response, address).filter(FormDefinition::isForm).ifPresent(found::add);
    } else if (!address.isEmpty()) {
      List<Raw.Obj> all = new ArrayList<>(forms);
      response.objects("contained").stream().filter(FormDefinition::isForm).forEach(all::add);
      all.stream().filter(one -> isAt(one, address)).forEach(found::add);
      if (found.isEmpty()) {
        neighbours
            .find(response, address)
            .filter(FormDefinition::isForm)
            .filter(one -> one.string("url").isEmpty())
            .ifPresent(found::add);
      }
    }
    return found.stream().map(FormDefinition::new).toList();
  }

  static boolean isForm(Raw.Obj resource) {
    return Neighbours.type(resource).equals(TYPE);
  }

  /** An address may end with the version that is meant. */
  private static boolean isAt(Raw.Obj form, String address) {
    String url = form.string("url").orElse("");
    String version = form.string("version").map(text -> "|" + text).orElse("");
    return !url.isEmpty() && (address.equals(url) || address.equals(url + version));
  }

  /** Returns what a question, or a group, is; empty where the form has none or two of that name. */
  Optional<Raw.Obj> item(String name) {
    return twice.contains(name) ? Optional.empty() : Optional.ofNullable(items.get(name));
  }

  /** Returns the form itself. */
  Raw.Obj form() {
    return form;
  }
}
