package org.isopter.mapper.foreign.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.json.Raw;

/** Lists the answers of a response, and its groups, each with what the form says of it. */
final class FormWalk {

  private final FormDefinition form;
  private final List<FormAnswer> answers = new ArrayList<>();
  private final List<FormAnswer> groups = new ArrayList<>();

  private FormWalk(FormDefinition form) {
    this.form = form;
  }

  static FormWalk of(FormDefinition form, Raw.Obj response) {
    FormWalk walk = new FormWalk(form);
    walk.items(response, "", List.of(), List.of());
    return walk;
  }

  /** Returns every answer, in the order of the response. */
  List<FormAnswer> answers() {
    return answers;
  }

  /** Returns every group. */
  List<FormAnswer> groups() {
    return groups;
  }

  private void items(Raw.Obj holder, String at, List<Raw.Obj> path, List<Raw.Obj> around) {
    List<Raw.Obj> items = holder.objects("item");
    for (int i = 0; i < items.size(); i++) {
      Raw.Obj item = items.get(i);
      String here = at + "/item/" + i;
      List<Raw.Obj> in = and(path, labelled(item));
      List<Raw.Obj> beside = and(around, item);
      List<Raw.Obj> given = item.objects("answer");
      for (int j = 0; j < given.size(); j++) {
        String place = here + "/answer/" + j;
        answers.add(new FormAnswer(place, at, in, Optional.of(given.get(j)), beside));
        items(given.get(j), place, in, beside);
      }
      if (given.isEmpty() && !item.objects("item").isEmpty()) {
        groups.add(new FormAnswer(here, at, in, Optional.empty(), beside));
      }
      items(item, here, in, beside);
    }
  }

  /** What the response itself calls a question stands beside what the form calls it. */
  private Raw.Obj labelled(Raw.Obj item) {
    Optional<Raw.Obj> known = form.item(item.string("linkId").orElse(""));
    Optional<String> own = item.string("text");
    return known
        .map(
            question ->
                own.filter(text -> !question.string("text").equals(Optional.of(text)))
                    .map(text -> question.with(FormLabel.SHOWN, Raw.of(text)))
                    .orElse(question))
        .orElse(Raw.Obj.EMPTY);
  }

  private static List<Raw.Obj> and(List<Raw.Obj> list, Raw.Obj last) {
    List<Raw.Obj> all = new ArrayList<>(list);
    all.add(last);
    return all;
  }
}
