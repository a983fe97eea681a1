package org.isopter.mapper.foreign.reading;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * What goes along with an examination unchanged.
 *
 * @param leaves what nobody took of the resources that became facts
 * @param resources the resources that were kept whole
 * @param frame the leaves of the document around the resources
 */
public record Carried(List<OfFact> leaves, List<Whole> resources, List<PlacedLeaf> frame) {

  /** Nothing. */
  public static final Carried NOTHING = new Carried(List.of(), List.of(), List.of());

  /**
   * What is left over of one resource.
   *
   * @param fact the name of the first fact that the resource became, within the examination
   * @param leaves the leaves, each where it stood in the resource; where nothing of an object or a
   *     list was taken, it stands here as a whole
   */
  public record OfFact(String fact, List<PlacedLeaf> leaves) {
    public OfFact {
      leaves = List.copyOf(leaves);
    }
  }

  /**
   * A resource that was kept.
   *
   * @param fullUrl its address in the document, or one made from its content
   * @param why the word of the reason
   * @param resource the resource as it came
   */
  public record Whole(String fullUrl, String why, Raw.Obj resource) {}

  /** Returns this with more resources that were kept. */
  Carried and(List<Whole> more) {
    List<Whole> all = new ArrayList<>(resources);
    all.addAll(more);
    return new Carried(leaves, all, frame);
  }

  public Carried {
    leaves = List.copyOf(leaves);
    resources = List.copyOf(resources);
    frame = List.copyOf(frame);
  }

  /** Says whether there is nothing to carry. */
  public boolean isEmpty() {
    return leaves.isEmpty() && resources.isEmpty() && frame.isEmpty();
  }

  /** Returns this as JSON on one line. */
  public String toJson() {
    return RawJson.write(new Raw.Obj(members()));
  }

  /** Returns this as the members of a JSON object. */
  public Map<String, Raw> members() {
    Map<String, Raw> members = new LinkedHashMap<>();
    List<Raw> facts = new ArrayList<>();
    for (OfFact of : leaves) {
      Map<String, Raw> fact = new LinkedHashMap<>();
      fact.put("fact", Raw.of(of.fact()));
      fact.put("leaves", element(of.leaves()));
      facts.add(new Raw.Obj(fact));
    }
    members.put("leaves", Raw.of(facts));
    members.put("resources", Raw.of(resources.stream().map(Carried::json).toList()));
    members.put("frame", element(frame));
    return members;
  }

  /** Reads what {@link #toJson} wrote. */
  public static Result<Carried> of(String json) {
    return RawJson.OWN.read(json).flatMap(Carried::of);
  }

  /** Reads what goes along from its JSON, or returns the faults of it. */
  public static Result<Carried> of(Raw json) {
    List<OfFact> leaves = new ArrayList<>();
    for (Raw.Obj fact : json.objects("leaves")) {
      Optional<String> name = fact.string("fact");
      if (name.isEmpty()) {
        return Result.refused(Fault.of("leaves", RawJson.write(fact), "leaves of a named fact"));
      }
      leaves.add(new OfFact(name.get(), leaves(fact.list("leaves"))));
    }
    List<Whole> resources = json.objects("resources").stream().map(Carried::whole).toList();
    return Result.ok(new Carried(leaves, resources, leaves(json.list("frame"))));
  }

  private static Raw.Obj json(Whole whole) {
    Map<String, Raw> members = new LinkedHashMap<>();
    members.put("fullUrl", Raw.of(whole.fullUrl()));
    members.put("why", Raw.of(whole.why()));
    members.put("resource", whole.resource());
    return new Raw.Obj(members);
  }

  private static Whole whole(Raw json) {
    return new Whole(
        json.string("fullUrl").orElse(""),
        json.string("why").orElse(""),
        json.object("resource").orElse(Raw.Obj.EMPTY));
  }

  static Raw element(List<PlacedLeaf> leaves) {
    List<Raw> list = new ArrayList<>();
    for (PlacedLeaf leaf : leaves) {
      Map<String, Raw> members = new LinkedHashMap<>();
      members.put("at", Raw.of(leaf.at()));
      members.put("value", leaf.value());
      list.add(new Raw.Obj(members));
    }
    return Raw.of(list);
  }

  private static List<PlacedLeaf> leaves(List<Raw> list) {
    return list.stream()
        .filter(leaf -> leaf.string("at").isPresent() && leaf.get("value").isPresent())
        .map(
            leaf ->
                new PlacedLeaf(leaf.string("at").orElseThrow(), leaf.get("value").orElseThrow()))
        .toList();
  }
}
