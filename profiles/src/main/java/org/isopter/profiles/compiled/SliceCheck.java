package org.isopter.profiles.compiled;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.isopter.model.wire.Condition;
import org.isopter.model.wire.Element;
import org.isopter.model.wire.Slicing;

/** The compiled form of a slicing. */
final class SliceCheck {

  private static final Name CODE = Name.of("code");

  private final boolean closed;
  private final List<Slice> slices;
  private final String wanted;

  /**
   * A slice.
   *
   * @param is whether an item belongs to it
   * @param words what tells it apart, in words
   */
  private record Slice(ElementCheck check, Predicate<Item> is, String words) {}

  SliceCheck(Slicing how, String id) {
    this.closed = how.closed();
    this.slices = how.slices().stream().map(slice -> slice(how.by(), slice, id)).toList();
    this.wanted =
        slices.stream()
            .map(slice -> slice.check().element().name() + " " + slice.words())
            .collect(Collectors.joining(", "));
  }

  private static Slice slice(Slicing.By by, Element slice, String id) {
    ElementCheck check = new ElementCheck(slice, id + ":" + slice.name());
    if (by == Slicing.By.TYPE) {
      List<String> types = slice.conditions(Condition.OneOfTypes.class).get(0).types();
      return new Slice(check, item -> types.contains(item.type()), "");
    }
    Patterns.Pattern pattern = pattern(by == Slicing.By.CODE ? slice.children().get(0) : slice);
    Predicate<Item> is =
        by == Slicing.By.CODE ? item -> item.any(CODE, pattern.fits()) : pattern.fits();
    return new Slice(check, is, pattern.words());
  }

  private static Patterns.Pattern pattern(Element element) {
    return Patterns.of(element.conditions(Condition.Pattern.class).get(0).fixed());
  }

  /** Checks the occurrences of the sliced element. */
  void check(Item parent, List<Item> found, Judgement report) {
    boolean[] matched = new boolean[found.size()];
    for (Slice slice : slices) {
      List<Item> mine = new ArrayList<>(2);
      for (int i = 0; i < matched.length; i++) {
        if (slice.is().test(found.get(i))) {
          mine.add(found.get(i));
          matched[i] = true;
        }
      }
      check(slice, parent, mine, report);
    }
    for (int i = 0; i < matched.length; i++) {
      if (!matched[i]) {
        unmatched(found.get(i), report);
      }
    }
  }

  private void unmatched(Item item, Judgement report) {
    if (closed) {
      report.wrong(item, "saw " + SeenWords.of(item) + ", wanted one of the slices: " + wanted);
    } else {
      report.doubt(item, "one beside the slices");
    }
  }

  private static void check(Slice slice, Item parent, List<Item> mine, Judgement report) {
    Element element = slice.check().element();
    String id = slice.check().id();
    if (mine.size() < element.min()) {
      report.wrong(parent, "saw no element of slice " + id + ", wanted one with " + slice.words());
    }
    if (element.max() != Element.AS_BASE && mine.size() > element.max()) {
      report.wrong(
          parent, "saw %d of %s, wanted at most %d".formatted(mine.size(), id, element.max()));
    }
    mine.forEach(item -> slice.check().check(item, report));
  }
}
