package org.isopter.mapper.exchange;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * A bundle of the type transaction whose entries may all be sent more than once.
 *
 * @param bundle the bundle
 * @param entries its entries, at least one
 */
record Transaction(Raw.Obj bundle, List<OutgoingEntry> entries) {

  /** What belongs to one examination alone. */
  private static final List<String> OWN = List.of("DiagnosticReport", "Composition", "Observation");

  Transaction {
    entries = List.copyOf(entries);
  }

  /** Reads a transaction, or returns why it cannot be sent. */
  static Result<Transaction> of(byte[] json, boolean byId) {
    return RawJson.OWN.read(json).flatMap(raw -> of(raw, byId));
  }

  private static Result<Transaction> of(Raw raw, boolean byId) {
    boolean isBundle = raw.string("resourceType").equals(Optional.of("Bundle"));
    if (!(raw instanceof Raw.Obj bundle) || !isBundle || !isTransaction(raw)) {
      String type = raw.string("type").orElse("");
      return Result.refused(
          new Fault(
              "type",
              isBundle ? "a bundle of the type \"" + type + "\"" : "something that is no bundle",
              "a transaction",
              "to-fhir --as transaction makes them of records"));
    }
    List<OutgoingEntry> entries = new ArrayList<>();
    List<Fault> faults = new ArrayList<>();
    List<Raw.Obj> given = bundle.objects("entry");
    for (int i = 0; i < given.size(); i++) {
      String place = "entry[" + i + "]";
      Result<OutgoingEntry> entry = OutgoingEntry.of(given.get(i), byId);
      entry.faults().forEach(fault -> faults.add(fault.within(place)));
      entry.map(entries::add);
    }
    if (given.isEmpty() || given.size() != bundle.list("entry").size()) {
      faults.add(Fault.of("entry", "no entries", "at least one"));
    }
    return faults.isEmpty() ? Result.ok(new Transaction(bundle, entries)) : Result.refused(faults);
  }

  private static boolean isTransaction(Raw raw) {
    return raw.string("type").equals(Optional.of("transaction"));
  }

  /** Returns the digest of all that it holds. */
  String digest() {
    return digest(entries);
  }

  /** Returns the digest of some entries. */
  static String digest(List<OutgoingEntry> entries) {
    StringBuilder all = new StringBuilder();
    entries.forEach(entry -> all.append(Digest.of(RawJson.write(entry.entry()))));
    return Digest.of(all.toString());
  }

  /**
   * Returns what a later version of it has too: what its report is stored under, or else its first
   * observation, for a patient is in many.
   */
  String name() {
    return OWN.stream()
        .flatMap(type -> entries.stream().filter(entry -> entry.type().equals(type)))
        .findFirst()
        .orElse(entries.get(0))
        .name();
  }

  /** Returns this transaction for what was stored of an earlier version of it. */
  Transaction after(Map<String, StoredEntry> before) {
    return new Transaction(
        bundle,
        entries.stream()
            .map(
                entry ->
                    Optional.ofNullable(before.get(entry.name())).map(entry::after).orElse(entry))
            .toList());
  }

  /** Returns the JSON of a bundle of some of the entries. */
  String json(List<OutgoingEntry> some) {
    List<Raw.Obj> raw = some.stream().map(OutgoingEntry::entry).toList();
    return RawJson.write(bundle.with("entry", Raw.of(raw)));
  }
}
