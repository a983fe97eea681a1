package org.isopter.model.text;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.isopter.model.answer.sight.FieldRegion;
import org.isopter.model.answer.sight.FieldResponse;
import org.isopter.model.catalogue.Fields;
import org.isopter.model.value.Outcome;

/** A field by confrontation in words: what is lost first, then what is full, then how. */
final class FieldText {

  private static final Set<FieldRegion> QUADRANTS =
      EnumSet.complementOf(EnumSet.of(FieldRegion.CENTRAL));

  /** Two neighbouring quadrants, by what they share. */
  private static final Map<List<String>, String> HALVES =
      Map.of(
          List.of("upper temporal", "lower temporal"), "temporal",
          List.of("upper nasal", "lower nasal"), "nasal",
          List.of("upper temporal", "upper nasal"), "upper",
          List.of("lower temporal", "lower nasal"), "lower");

  private FieldText() {}

  static String of(Fields.Confrontation field) {
    Map<String, Set<FieldRegion>> regions = new LinkedHashMap<>();
    Stream.of(FieldResponse.ABSENT, FieldResponse.REDUCED, FieldResponse.FULL)
        .map(FieldText::response)
        .forEach(words -> regions.put(words, EnumSet.noneOf(FieldRegion.class)));
    field
        .regions()
        .forEach(
            (region, outcome) ->
                regions
                    .computeIfAbsent(words(outcome), any -> EnumSet.noneOf(FieldRegion.class))
                    .add(region));
    List<String> words = new ArrayList<>();
    Set<FieldRegion> named = EnumSet.noneOf(FieldRegion.class);
    regions.forEach(
        (response, where) -> {
          if (!where.isEmpty()) {
            words.add(response + " " + where(where, named));
            named.addAll(where);
          }
        });
    String target = field.target().map(PlainWords::concept).orElse("");
    String far = field.distance().map(d -> "at " + PlainWords.quantity(d)).orElse("");
    words.add((target + " " + far).strip());
    return String.join(", ", words.stream().filter(some -> !some.isEmpty()).toList());
  }

  private static String words(Outcome<FieldResponse> outcome) {
    return outcome.fold(FieldText::response, PlainWords::untested);
  }

  private static String response(FieldResponse response) {
    return switch (response) {
      case FULL -> "full";
      case REDUCED -> "reduced";
      case ABSENT -> "nothing seen";
    };
  }

  /** Three quadrants are the other three where the fourth was named before. */
  private static String where(Set<FieldRegion> regions, Set<FieldRegion> before) {
    List<String> quadrants =
        regions.stream().filter(QUADRANTS::contains).map(FieldText::name).toList();
    List<String> where = new ArrayList<>();
    if (quadrants.size() == QUADRANTS.size()) {
      where.add("in the four quadrants");
    } else if (quadrants.size() == 3 && before.stream().anyMatch(QUADRANTS::contains)) {
      where.add("in the other three quadrants");
    } else if (HALVES.containsKey(quadrants)) {
      where.add("in the " + HALVES.get(quadrants) + " quadrants");
    } else if (!quadrants.isEmpty()) {
      String many = quadrants.size() > 1 ? "s" : "";
      where.add("in the " + PlainWords.list(quadrants) + " quadrant" + many);
    }
    if (regions.contains(FieldRegion.CENTRAL)) {
      where.add("in the centre");
    }
    return String.join(" and ", where);
  }

  private static String name(FieldRegion region) {
    return switch (region) {
      case SUPEROTEMPORAL -> "upper temporal";
      case SUPERONASAL -> "upper nasal";
      case INFEROTEMPORAL -> "lower temporal";
      case INFERONASAL -> "lower nasal";
      case CENTRAL -> "central";
    };
  }
}
