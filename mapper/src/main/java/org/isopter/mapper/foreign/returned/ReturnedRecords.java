package org.isopter.mapper.foreign.returned;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.isopter.mapper.fhir.FhirReader;
import org.isopter.mapper.foreign.document.Document;
import org.isopter.mapper.foreign.document.Neighbours;
import org.isopter.mapper.foreign.document.Versions;
import org.isopter.mapper.foreign.ledger.Reason;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.reading.Carried;
import org.isopter.mapper.foreign.reading.ReadExam;
import org.isopter.mapper.foreign.reading.ResourceOutcome;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawTokens;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.FactKey;
import org.isopter.model.value.Result;

/**
 * Finds the records that were written here among the resources of a document, whatever stands
 * around them: pages of a search, histories, joined bundles, single observations.
 *
 * <p>Each record is put together again as it was written and read by the reader of our own form.
 * What a server added is carried along. A record that does not read as ours is left to the rules.
 */
public final class ReturnedRecords {

  private final FhirReader exact;
  private final WrittenCodes codes;
  private final Document document;
  private final Neighbours neighbours;
  private final Versions versions;
  private final IdentityHashMap<Raw, Document.Part> byResource = new IdentityHashMap<>();
  private final Map<Document.Part, Reason> apart = new LinkedHashMap<>();

  /**
   * A record that was read.
   *
   * @param exam the examination
   * @param parts the resources that it was made of, each with what was set apart, in their order
   * @param byKey the resource of each fact, by the name of the fact
   */
  public record Read(
      Exam exam, Map<Document.Part, List<PlacedLeaf>> parts, Map<String, Document.Part> byKey) {

    /** Returns the examination with what was set apart. */
    public ReadExam exam(List<PlacedLeaf> around, List<Carried.Whole> others) {
      List<Carried.OfFact> leaves = new ArrayList<>();
      List<PlacedLeaf> frame = new ArrayList<>(around);
      Map<Document.Part, String> keys = new HashMap<>();
      byKey.forEach((key, part) -> keys.put(part, key));
      parts.forEach(
          (part, additions) -> {
            if (keys.containsKey(part) && !additions.isEmpty()) {
              leaves.add(new Carried.OfFact(keys.get(part), additions));
            } else {
              additions.forEach(
                  leaf -> frame.add(new PlacedLeaf(part.at() + leaf.at(), leaf.value())));
            }
          });
      List<ReadExam.ReadFact> read =
          exam.keys().stream().map(key -> new ReadExam.ReadFact(part(key).at(), Set.of())).toList();
      List<String> from = parts.keySet().stream().map(Document.Part::at).toList();
      return new ReadExam(exam, new Carried(leaves, others, frame), "", read, from);
    }

    private Document.Part part(FactKey key) {
      return Objects.requireNonNull(byKey.get(key.text()), key.text());
    }

    /** Returns what became of each resource. */
    public Map<Document.Part, ResourceOutcome> outcome() {
      Map<Document.Part, ResourceOutcome> outcome = new HashMap<>();
      parts.keySet().forEach(part -> outcome.put(part, new ResourceOutcome.Exact(List.of())));
      List<FactKey> keys = exam.keys();
      for (int i = 0; i < keys.size(); i++) {
        outcome.put(part(keys.get(i)), new ResourceOutcome.Exact(List.of(exam.facts().get(i))));
      }
      return outcome;
    }
  }

  public ReturnedRecords(FhirReader exact, WrittenCodes codes, Document document) {
    this.exact = exact;
    this.codes = codes;
    this.document = document;
    this.neighbours = document.neighbours();
    this.versions = Versions.of(document.parts(), ReturnedRecords::names);
    List<Document.Part> parts = document.parts();
    for (int i = 0; i < parts.size(); i++) {
      byResource.put(parts.get(i).resource(), parts.get(versions.holding(i)));
    }
  }

  private static List<String> names(Document.Part part) {
    String type = Neighbours.type(part.resource());
    if (part.keptBefore().isPresent()) {
      return List.of();
    }
    return type.equals("Provenance")
        ? part.resource().string("id").map(id -> type + "/" + id).stream().toList()
        : WrittenName.of(part.resource()).map(name -> type + " " + name).stream().toList();
  }

  /**
   * Returns the resources of our records that are no longer part of them, each with the reason:
   * said again, replaced, or no longer named by the examination.
   */
  public Map<Document.Part, Reason> apart() {
    return apart;
  }

  /** Returns what became of a resource that is no longer part of its record. */
  public static ResourceOutcome outcome(Reason why) {
    return why.why() == Why.DUPLICATE
        ? new ResourceOutcome.Exact(List.of())
        : new ResourceOutcome.Kept(List.of(why));
  }

  /** Returns what is carried of the resources that are no longer part of their records. */
  public List<Carried.Whole> keptApart() {
    return apart.entrySet().stream()
        .filter(one -> one.getValue().why() != Why.DUPLICATE)
        .map(
            one ->
                new Carried.Whole(
                    one.getKey().address(), one.getValue().word(), one.getKey().resource()))
        .toList();
  }

  /** Returns the records that read as ours, in the order of their first resources. */
  public List<Read> read() {
    Map<WrittenName, ReturnedGroup> groups = new LinkedHashMap<>();
    Map<WrittenName, Map<Document.Part, Reason>> older = new HashMap<>();
    List<Document.Part> parts = document.parts();
    for (int i = 0; i < parts.size(); i++) {
      Document.Part part = parts.get(i);
      boolean gone = part.keptBefore().isPresent() || part.deletion().isPresent();
      Optional<WrittenName> name = gone ? Optional.empty() : WrittenName.of(part.resource());
      Optional<Reason> old = superseded(i);
      if (name.isPresent() && old.isPresent()) {
        older
            .computeIfAbsent(name.get().record(), any -> new LinkedHashMap<>())
            .put(part, old.get());
      } else if (name.isPresent()) {
        groups
            .computeIfAbsent(name.get().record(), record -> group(record, Map.of()))
            .add(part, name.get().key());
      }
    }
    provenance(groups);
    List<Read> records = new ArrayList<>();
    groups.forEach(
        (name, group) -> {
          apart.putAll(group.unlisted());
          Optional<Read> read = read(group).or(() -> readable(name, group.keys()));
          read.ifPresent(records::add);
          read.ifPresent(any -> apart.putAll(older.getOrDefault(name, Map.of())));
        });
    return records;
  }

  private Optional<Reason> superseded(int number) {
    return Optional.ofNullable(versions.superseded().get(number))
        .filter(reason -> reason.why() != Why.VERSIONS_UNDECIDED);
  }

  /** A provenance has no identifier of the record: it belongs where its targets do. */
  private void provenance(Map<WrittenName, ReturnedGroup> groups) {
    List<Document.Part> parts = document.parts();
    for (int i = 0; i < parts.size(); i++) {
      Document.Part part = parts.get(i);
      if (Neighbours.type(part.resource()).equals("Provenance")) {
        Optional<Reason> old = superseded(i);
        if (old.isPresent()) {
          apart.put(part, old.get());
          continue;
        }
        part.resource().objects("target").stream()
            .flatMap(target -> resolve(part, target).stream())
            .flatMap(target -> groups.values().stream().filter(group -> group.has(target)))
            .findFirst()
            .ifPresent(group -> group.add(part, ""));
      }
    }
  }

  private Optional<Document.Part> resolve(Document.Part holder, Raw.Obj reference) {
    return reference
        .string("reference")
        .flatMap(text -> neighbours.find(holder.resource(), text))
        .map(byResource::get);
  }

  /**
   * Reads what is left of a record without the observations that do not read as ours, each alone:
   * one that was changed leaves the others as they are.
   */
  private Optional<Read> readable(WrittenName name, Map<Document.Part, String> all) {
    Map<Document.Part, String> rest = new LinkedHashMap<>(all);
    rest.entrySet()
        .removeIf(
            one ->
                WrittenName.isFact(one.getValue())
                    && read(group(name, Map.of(one.getKey(), one.getValue()))).isEmpty());
    // What was derived from an observation that is left out is left out with it.
    rest.keySet().removeIf(part -> !isSupported(part, rest));
    Map<Document.Part, String> facts = new LinkedHashMap<>(rest);
    facts.values().removeIf(key -> !WrittenName.isFact(key));
    return facts.isEmpty()
        ? Optional.empty()
        : read(group(name, rest)).or(() -> read(group(name, facts)));
  }

  private boolean isSupported(Document.Part part, Map<Document.Part, String> record) {
    return part.resource().objects("derivedFrom").stream()
        .allMatch(from -> resolve(part, from).filter(record::containsKey).isPresent());
  }

  private ReturnedGroup group(WrittenName name, Map<Document.Part, String> keys) {
    ReturnedGroup group = new ReturnedGroup(name, codes, this::resolve);
    keys.forEach(group::add);
    return group;
  }

  private Optional<Read> read(ReturnedGroup group) {
    return group
        .bundle()
        .map(RawTokens::of)
        .map(exact::take)
        .filter(Result::isOk)
        .map(exam -> new Read(exam.orThrow(), group.additions(), group.byKey()));
  }
}
