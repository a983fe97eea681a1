package org.isopter.mapper.foreign;

import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.isopter.model.value.Fault;

/**
 * What stands beside a value and may change what it says: a component or a technique of which
 * nothing was understood. A pinhole, a near card or a target pressure in unknown words would
 * otherwise be read plain.
 */
final class Qualifiers {

  private Qualifiers() {}

  /** Returns why an observation of which something was taken is kept all the same. */
  static Optional<Reason> unread(Vocabulary vocabulary, Raw resource, Ledger ledger) {
    Set<String> understood = new HashSet<>(ledger.understood());
    ledger.taken().forEach(taken -> understood.add(holder(taken.leaf().at())));
    return new Placed("", resource)
        .children().stream()
            .flatMap(child -> qualifiers(child).stream())
            .filter(one -> !understood.contains(holder(one.at())))
            .filter(one -> !isHarmless(vocabulary, one.value()))
            .findFirst()
            .map(Qualifiers::reason);
  }

  private static List<Placed> qualifiers(Placed element) {
    return switch (element.at()) {
      case "/component" -> element.children();
      case "/method" -> List.of(element);
      default -> List.of();
    };
  }

  /** Returns the component or the element at the root that a leaf stands in. */
  private static String holder(String at) {
    List<String> steps = Placed.steps(at);
    boolean component = steps.size() > 1 && steps.get(0).equals("component");
    return component ? "/component/" + steps.get(1) : "/" + steps.get(0);
  }

  /** A component without a value says nothing; some others are known to qualify nothing. */
  private static boolean isHarmless(Vocabulary vocabulary, Raw qualifier) {
    boolean component = qualifier.get("code").isPresent();
    boolean valued =
        qualifier instanceof Raw.Obj object
            && object.members().keySet().stream().anyMatch(name -> name.startsWith("value"));
    return (component && !valued) || vocabulary.habits().isHarmless(qualifier);
  }

  private static Reason reason(Placed qualifier) {
    String json = RawJson.write(qualifier.value());
    String seen = json.length() <= 160 ? json : json.substring(0, 157) + "...";
    return new Reason(
        Why.UNREAD_QUALIFIER,
        Fault.of(
            qualifier.at(),
            seen,
            "a component or technique that is known, or known to qualify nothing"));
  }
}
