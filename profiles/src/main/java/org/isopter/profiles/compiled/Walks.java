package org.isopter.profiles.compiled;

import java.util.ArrayList;
import java.util.List;
import org.isopter.model.wire.Path;

/** Compiles paths. */
final class Walks implements Path.Steps<Walks.Walk> {

  private static final Walks STEPS = new Walks();

  private Walks() {}

  /** Leads from items to others. */
  interface Walk {
    /** Adds to {@code found} where an item leads. */
    void from(Item item, List<Item> found);

    /** Returns where an item leads. */
    default List<Item> from(Item item) {
      List<Item> found = new ArrayList<>(2);
      from(item, found);
      return found;
    }
  }

  static Walk of(Path path) {
    Walk walk = (item, found) -> found.add(item);
    for (Path.Step step : path.steps()) {
      Walk before = walk;
      Walk next = step.fold(STEPS);
      walk = (item, found) -> before.from(item).forEach(each -> next.from(each, found));
    }
    return walk;
  }

  @Override
  public Walk child(Path.Child step) {
    String name = step.name();
    return (item, found) -> {
      for (Item each : item.members()) {
        if (each.isCalled(name)) {
          found.add(each);
        }
      }
    };
  }

  @Override
  public Walk ofType(Path.OfType step) {
    String type = step.type();
    return (item, found) -> {
      if (item.type().equals(type)) {
        found.add(item);
      }
    };
  }

  @Override
  public Walk where(Path.Where step) {
    Judges.Judge judge = Judges.of(step.test());
    return (item, found) -> {
      if (judge.judge(item) == Truth.YES) {
        found.add(item);
      }
    };
  }
}
