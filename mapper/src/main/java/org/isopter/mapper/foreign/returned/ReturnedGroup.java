package org.isopter.mapper.foreign.returned;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.regex.Pattern;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.foreign.document.Document;
import org.isopter.mapper.foreign.document.Head;
import org.isopter.mapper.foreign.ledger.Reason;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;
import org.isopter.model.value.Fault;

/**
 * The resources of one record, from which its bundle is put together again. A page may hold some of
 * them only, or a single observation: then what is there makes the record.
 */
final class ReturnedGroup {

  /** References that a bundle of ours can do without, when what they lead to is on another page. */
  private static final Set<String> PARTIAL = Set.of("hasMember", "target", "result", "entry");

  private static final Set<String> REFERENCES =
      Set.of("hasMember", "target", "result", "entry", "derivedFrom");

  /** What each observation of a record says as its panel does. */
  private static final List<String> SAME_OF_PANEL =
      List.of("extension", "status", "category", "subject", "effectiveDateTime", "performer");

  private static final Pattern NUMBER = Pattern.compile("\\.\\d+$");
  private static final Pattern OWN_TIME = Pattern.compile("\\.\\d{4}-\\d\\d-\\d\\dT.*Z$");

  private final WrittenName name;
  private final WrittenCodes codes;
  private final BiFunction<Document.Part, Raw.Obj, Optional<Document.Part>> resolve;
  private final Map<Document.Part, Member> members = new LinkedHashMap<>();
  private final Map<String, Document.Part> byKey = new HashMap<>();
  private boolean whole = true;

  /** When the examination was performed, where no panel says so. */
  private Optional<String> performed = Optional.empty();

  /** A resource of the record. */
  private record Member(Document.Part part, String key, ReturnedResource.Found found, String url) {}

  ReturnedGroup(
      WrittenName name,
      WrittenCodes codes,
      BiFunction<Document.Part, Raw.Obj, Optional<Document.Part>> resolve) {
    this.name = name;
    this.codes = codes;
    this.resolve = resolve;
  }

  void add(Document.Part part, String key) {
    String url = url("" + members.size());
    members.put(part, new Member(part, key, ReturnedResource.of(codes, part.resource()), url));
  }

  /**
   * Sets apart the facts that the panel of the record, where it is there, does not name: they were
   * part of an earlier version of it. Returns each with the reason.
   */
  Map<Document.Part, Reason> unlisted() {
    List<Member> panels = members.values().stream().filter(ReturnedGroup::isPanel).toList();
    Map<Document.Part, Reason> unlisted = new LinkedHashMap<>();
    if (panels.size() != 1) {
      return unlisted;
    }
    Document.Part panel = panels.get(0).part();
    List<Raw.Obj> names = panel.resource().objects("hasMember");
    Set<Document.Part> listed = new HashSet<>();
    names.forEach(name -> resolve.apply(panel, name).ifPresent(listed::add));
    if (listed.isEmpty() && !names.isEmpty()) {
      // Its members are elsewhere, or have addresses that say nothing here.
      return unlisted;
    }
    Fault fault =
        Fault.of("", "not among the members of " + panel.at(), "a member of its examination");
    facts().stream()
        .map(Member::part)
        .filter(fact -> !listed.contains(fact))
        .forEach(fact -> unlisted.put(fact, new Reason(Why.NOT_LISTED, fault)));
    unlisted.keySet().forEach(members::remove);
    return unlisted;
  }

  /** Returns its resources, each with its name within the record. */
  Map<Document.Part, String> keys() {
    Map<Document.Part, String> keys = new LinkedHashMap<>();
    members.forEach((part, member) -> keys.put(part, member.key()));
    return keys;
  }

  boolean has(Document.Part part) {
    return members.containsKey(part);
  }

  /** Returns what was set apart of each resource. */
  Map<Document.Part, List<PlacedLeaf>> additions() {
    Map<Document.Part, List<PlacedLeaf>> additions = new LinkedHashMap<>();
    members.forEach((part, member) -> additions.put(part, member.found().additions()));
    return additions;
  }

  /** Returns the bundle of the record; empty where it cannot be told which resources it is of. */
  Optional<Raw.Obj> bundle() {
    List<Member> panels = members.values().stream().filter(ReturnedGroup::isPanel).toList();
    long names = members.values().stream().map(Member::key).filter(k -> !k.isEmpty()).count();
    long apart =
        members.values().stream().map(Member::key).filter(k -> !k.isEmpty()).distinct().count();
    boolean clear = members.values().stream().allMatch(member -> member.found().isClear());
    boolean empty =
        facts().isEmpty()
            && panels.stream().anyMatch(p -> p.found().ours().get("hasMember").isPresent());
    if (!clear || names != apart || panels.size() > 1 || empty) {
      return Optional.empty();
    }
    members.replaceAll((part, member) -> linked(member));
    List<Raw> entries = new ArrayList<>();
    if (panels.isEmpty()) {
      Optional<Raw.Obj> panel = panel();
      if (panel.isEmpty()) {
        return Optional.empty();
      }
      entries.add(entry(url("panel"), panel.get()));
    }
    renumber();
    identifyWholes();
    members.values().forEach(member -> entries.add(entry(member.url(), member.found().ours())));
    return whole ? Optional.of(bundle(entries)) : Optional.empty();
  }

  private static Raw.Obj bundle(List<Raw> entries) {
    Map<String, Raw> bundle = new LinkedHashMap<>();
    bundle.put("resourceType", Raw.of("Bundle"));
    bundle.put("type", Raw.of(BundleKind.COLLECTION.word()));
    bundle.put("entry", Raw.of(entries));
    return new Raw.Obj(bundle);
  }

  private String url(String of) {
    return "urn:uuid:" + Head.fingerprint(Raw.of(name + "/" + of));
  }

  private static boolean isPanel(Member member) {
    return ReturnedBundle.isPanel(member.part().resource());
  }

  private static Raw.Obj entry(String url, Raw.Obj resource) {
    return new Raw.Obj(Map.of("fullUrl", Raw.of(url), "resource", resource));
  }

  /** Returns a resource with its references leading to the entries of the bundle. */
  private Member linked(Member member) {
    List<PlacedLeaf> gone = new ArrayList<>();
    Raw.Obj resource = (Raw.Obj) linked(member, new PlacedLeaf("", member.found().ours()), gone);
    return new Member(
        member.part(), member.key(), member.found().with(resource, gone), member.url());
  }

  private Raw linked(Member member, PlacedLeaf element, List<PlacedLeaf> gone) {
    if (!(element.value() instanceof Raw.Obj object)) {
      return element.value();
    }
    Map<String, Raw> all = new LinkedHashMap<>(object.members());
    for (PlacedLeaf child : element.children()) {
      List<String> steps = PlacedLeaf.steps(child.at());
      String list = steps.get(steps.size() - 1);
      if (REFERENCES.contains(list)) {
        references(member, child, gone)
            .ifPresentOrElse(found -> all.put(list, found), () -> all.remove(list));
      } else if (list.equals("section")) {
        all.put(list, Raw.of(child.children().stream().map(s -> linked(member, s, gone)).toList()));
      }
    }
    return new Raw.Obj(all);
  }

  private Optional<Raw> references(Member member, PlacedLeaf list, List<PlacedLeaf> gone) {
    List<String> steps = PlacedLeaf.steps(list.at());
    List<Raw> found = new ArrayList<>();
    for (PlacedLeaf item : list.children()) {
      Optional<Member> target =
          item.value() instanceof Raw.Obj reference
              ? resolve.apply(member.part(), reference).map(members::get)
              : Optional.empty();
      target.ifPresentOrElse(
          to -> found.add(new Raw.Obj(Map.of("reference", Raw.of(to.url())))),
          () -> gone.add(item));
      whole &= target.isPresent() || PARTIAL.contains(steps.get(steps.size() - 1));
    }
    return Optional.of(found).filter(some -> !some.isEmpty()).map(Raw::of);
  }

  /** Makes the panel of observations that came without it. */
  private Optional<Raw.Obj> panel() {
    return facts().stream()
        .min(Comparator.comparing(member -> hasOwnTime(member.key())))
        .map(member -> panel(member.found().ours()));
  }

  private static boolean hasOwnTime(String key) {
    return OWN_TIME.matcher(withoutNumber(key)).find();
  }

  private Raw.Obj panel(Raw.Obj first) {
    performed = first.string("effectiveDateTime");
    Map<String, Raw> panel = new LinkedHashMap<>();
    panel.put("resourceType", Raw.of("Observation"));
    panel.put("identifier", Raw.of(List.of(identifier(name.value()))));
    for (String same : SAME_OF_PANEL) {
      first.get(same).ifPresent(value -> panel.put(same, value));
    }
    panel.put("code", codes.panel());
    panel.put(
        "hasMember",
        Raw.of(
            facts().stream()
                .map(member -> new Raw.Obj(Map.of("reference", Raw.of(member.url()))))
                .toList()));
    return new Raw.Obj(panel);
  }

  private Raw.Obj identifier(String value) {
    Map<String, Raw> identifier = new LinkedHashMap<>();
    identifier.put("system", Raw.of(name.system()));
    identifier.put("value", Raw.of(value));
    return new Raw.Obj(identifier);
  }

  /** Returns the observations of facts, a second reading behind the first. */
  private List<Member> facts() {
    return members.values().stream()
        .filter(member -> WrittenName.isFact(member.key()))
        .sorted(Comparator.comparingInt(ReturnedGroup::number))
        .toList();
  }

  private static String withoutNumber(String key) {
    return NUMBER.matcher(key).replaceFirst("");
  }

  /** A second reading without the first is the first of what is there. */
  private void renumber() {
    Map<String, Integer> seen = new HashMap<>();
    for (Member member : facts()) {
      String base = base(member);
      int number = seen.merge(base, 1, Integer::sum);
      String key = number == 1 ? base : base + "." + number;
      Raw.Obj named =
          member
              .found()
              .ours()
              .with("identifier", Raw.of(List.of(identifier(name.value() + "/" + key))));
      List<PlacedLeaf> others = others(member, name.value() + "/" + member.key());
      byKey.put(key, member.part());
      members.put(
          member.part(),
          new Member(
              member.part(), member.key(), member.found().with(named, others), member.url()));
    }
  }

  /** Returns the name without its number, and without a time that is that of the examination. */
  private String base(Member member) {
    String key = member.key();
    boolean numbered = NUMBER.matcher(key).find() && isRepeat(key);
    String base = numbered ? withoutNumber(key) : key;
    boolean now =
        performed.isPresent()
            && member.found().ours().string("effectiveDateTime").equals(performed);
    return now ? OWN_TIME.matcher(base).replaceFirst("") : base;
  }

  private static int number(Member member) {
    String key = member.key();
    return NUMBER.matcher(key).find()
        ? Integer.parseInt(key.substring(key.lastIndexOf('.') + 1).replaceAll("^(\\d{9}).*", "$1"))
        : 1;
  }

  /** Says whether the number at the end of a name counts readings: 1 is never written. */
  private static boolean isRepeat(String key) {
    return !key.endsWith(".1") && !key.endsWith(".0");
  }

  /** Report, panel and document keep the identifier of the record alone. */
  private void identifyWholes() {
    for (Member member : List.copyOf(members.values())) {
      Optional<Raw> list = member.found().ours().get("identifier");
      if (member.key().isEmpty() && list.filter(Raw.Arr.class::isInstance).isPresent()) {
        Raw.Obj named =
            member.found().ours().with("identifier", Raw.of(List.of(identifier(name.value()))));
        members.put(
            member.part(),
            new Member(
                member.part(),
                member.key(),
                member.found().with(named, others(member, name.value())),
                member.url()));
      }
    }
  }

  /** Returns the resource that each fact of the record was read from, by the name of the fact. */
  Map<String, Document.Part> byKey() {
    return byKey;
  }

  /** Returns the identifiers of others. */
  private static List<PlacedLeaf> others(Member member, String ours) {
    return new PlacedLeaf("", member.found().ours())
        .children().stream()
            .filter(child -> child.at().equals("/identifier"))
            .flatMap(list -> list.children().stream())
            .filter(item -> !item.value().string("value").equals(Optional.of(ours)))
            .toList();
  }
}
