package org.isopter.profiles.compiled;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.isopter.model.wire.ElementPath;

/** Compiles the steps of paths, each with what follows it. */
final class Walks implements ElementPath.Steps<Walks.Walk> {

  private static final Walk STAY = (item, accepts) -> accepts.test(item);

  private final Walk next;

  private Walks(Walk next) {
    this.next = next;
  }

  /** Leads from an item to others. */
  interface Walk {
    /** Says whether one of those to which an item leads is accepted; the rest is not visited. */
    boolean any(Item item, Predicate<Item> accepts);

    /** Returns where an item leads. */
    default List<Item> from(Item item) {
      List<Item> found = new ArrayList<>(2);
      any(
          item,
          each -> {
            found.add(each);
            return false;
          });
      return found;
    }
  }

  static Walk of(ElementPath path) {
    Walk walk = STAY;
    for (int i = path.steps().size() - 1; i >= 0; i--) {
      walk = path.steps().get(i).fold(new Walks(walk));
    }
    return walk;
  }

  @Override
  public Walk child(ElementPath.Child step) {
    Name name = Name.of(step.name());
    return (item, accepts) -> {
      List<Item> members = item.members();
      for (int i = 0; i < members.size(); i++) {
        Item each = members.get(i);
        if (each.isCalled(name) && next.any(each, accepts)) {
          return true;
        }
      }
      return false;
    };
  }

  @Override
  public Walk ofType(ElementPath.OfType step) {
    String type = step.type();
    return (item, accepts) -> item.type().equals(type) && next.any(item, accepts);
  }

  @Override
  public Walk where(ElementPath.Where step) {
    Judges.Judge judge = Judges.of(step.test());
    return (item, accepts) -> judge.judge(item) == Ternary.YES && next.any(item, accepts);
  }
}
