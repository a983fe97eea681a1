package org.isopter.mapper.foreign.returned;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.foreign.document.LeftOver;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;
import org.isopter.model.value.Code;

/**
 * A resource as it was written here, taken out of what a server made of it: without what servers,
 * terminology services and senders add, and with our displays.
 *
 * <p>Only additions that cannot change what an observation says are set apart. Everything else
 * stays, for the reader of our own form to refuse.
 */
final class ReturnedResource {

  /** How a resource is kept, sent and shown: read over, for it is no finding. */
  private static final Set<String> TRANSPORT = Set.of("id", "meta", "text", "language");

  /** What a server or a sender may add to an observation without changing what it says. */
  private static final Set<String> ADDED = Set.of("issued", "encounter", "basedOn", "partOf");

  /** Of a reference to a person by identifier, what the server knows of that person. */
  private static final Set<String> PARTIES = Set.of("subject", "performer", "who", "author");

  private final WrittenCodes codes;
  private final List<PlacedLeaf> additions = new ArrayList<>();
  private boolean clear = true;

  private ReturnedResource(WrittenCodes codes) {
    this.codes = codes;
  }

  /**
   * A resource as it was written.
   *
   * @param ours the resource
   * @param additions what was set apart, each where it stood
   * @param isClear whether nothing that was set apart may contradict it
   */
  record Found(Raw.Obj ours, List<PlacedLeaf> additions, boolean isClear) {

    Found with(Raw.Obj other, List<PlacedLeaf> more) {
      List<PlacedLeaf> all = new ArrayList<>(additions);
      all.addAll(more);
      return new Found(other, all, isClear);
    }
  }

  /** Takes a resource of ours out of what it has become. */
  static Found of(WrittenCodes codes, Raw.Obj resource) {
    LeftOver.Found before = LeftOver.outOf(resource);
    ReturnedResource own = new ReturnedResource(codes);
    own.additions.addAll(before.leaves());
    return new Found(own.whole(before.ours()), own.additions, own.clear);
  }

  private Raw.Obj whole(Raw.Obj resource) {
    Map<String, Raw> members = new LinkedHashMap<>();
    for (PlacedLeaf member : new PlacedLeaf("", resource).children()) {
      String name = PlacedLeaf.steps(member.at()).get(0);
      if (name.equals("meta")) {
        labels(member);
      } else if (ADDED.contains(name)) {
        additions.add(member);
      } else if (!TRANSPORT.contains(name)) {
        members.put(name, value(name, member));
      }
    }
    return new Raw.Obj(members);
  }

  /** Which profiles and versions a server names is transport; what it labels is kept. */
  private void labels(PlacedLeaf meta) {
    for (PlacedLeaf member : meta.children()) {
      String name = PlacedLeaf.steps(member.at()).get(1);
      if (name.equals("tag") || name.equals("security")) {
        additions.add(member);
      }
    }
  }

  private Raw value(String name, PlacedLeaf element) {
    if (element.value() instanceof Raw.Arr) {
      return name.equals("coding") ? codings(element) : list(name, element);
    }
    if (!(element.value() instanceof Raw.Obj)) {
      return element.value();
    }
    Map<String, Raw> members = new LinkedHashMap<>();
    for (PlacedLeaf member : element.children()) {
      List<String> steps = PlacedLeaf.steps(member.at());
      String inner = steps.get(steps.size() - 1);
      if (PARTIES.contains(name) && inner.equals("reference")) {
        additions.add(member);
      } else {
        members.put(inner, value(inner, member));
      }
    }
    return new Raw.Obj(members);
  }

  private Raw list(String name, PlacedLeaf element) {
    return Raw.of(element.children().stream().map(item -> value(name, item)).toList());
  }

  /** Beside a coding of ours those of others are additions; of ours the display is known. */
  private Raw codings(PlacedLeaf element) {
    boolean known =
        element.children().stream().anyMatch(item -> codes.of(item.value()).isPresent());
    List<Raw> kept = new ArrayList<>();
    for (PlacedLeaf item : element.children()) {
      Optional<Code> code = codes.of(item.value());
      if (code.isPresent()) {
        kept.add(coding(item, code.get()));
      } else if (known) {
        additions.add(item);
        clear &= codes.isNeutral(item.value());
      } else {
        kept.add(item.value());
      }
    }
    return Raw.of(kept);
  }

  private Raw coding(PlacedLeaf item, Code code) {
    Map<String, Raw> members = new LinkedHashMap<>();
    members.put("system", Raw.of(code.system()));
    members.put("code", Raw.of(code.code()));
    members.put("display", Raw.of(code.display()));
    for (PlacedLeaf member : item.children()) {
      List<String> steps = PlacedLeaf.steps(member.at());
      String name = steps.get(steps.size() - 1);
      if (!member.value().equals(members.get(name))) {
        additions.add(member);
      }
    }
    return new Raw.Obj(members);
  }
}
