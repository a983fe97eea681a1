package org.isopter.mapper.foreign.run;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.foreign.reading.Carried;
import org.isopter.mapper.foreign.reading.ReadExam;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.exam.Identifier;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;

/**
 * What goes along with a record, as a line of JSON in a file beside the records: the identifier of
 * the record first, then what is carried.
 *
 * @param record whose it is; empty for what came without an examination
 * @param carried what goes along
 */
public record CarriedLine(Optional<Identifier> record, Carried carried) {

  /** Returns what goes along with an examination. */
  public static CarriedLine of(ReadExam exam) {
    return new CarriedLine(Optional.of(exam.exam().header().id()), exam.carried());
  }

  /** Returns what goes along without an examination. */
  public static CarriedLine of(Carried rest) {
    return new CarriedLine(Optional.empty(), rest);
  }

  /** Returns this on one line, without a line feed. */
  public String toJson() {
    Map<String, Raw> members = new LinkedHashMap<>();
    record.ifPresent(id -> members.put("record", json(id)));
    members.putAll(carried.members());
    return RawJson.write(new Raw.Obj(members));
  }

  /** Reads a line. */
  public static Result<CarriedLine> read(byte[] line) {
    return RawJson.OWN.read(line).flatMap(CarriedLine::read);
  }

  private static Result<CarriedLine> read(Raw json) {
    if (!List.of("leaves", "resources", "frame").stream().allMatch(n -> json.get(n).isPresent())) {
      return Result.refused(
          new Fault(
              "",
              "no list of leaves, resources and frame",
              "what from-fhir wrote beside a record",
              "name the file that from-fhir wrote"));
    }
    Optional<Identifier> record = json.object("record").flatMap(CarriedLine::identifier);
    return Carried.of(json).map(carried -> new CarriedLine(record, carried));
  }

  private static Raw json(Identifier id) {
    Map<String, Raw> members = new LinkedHashMap<>();
    members.put("id", Raw.of(id.value()));
    id.system().ifPresent(system -> members.put("system", Raw.of(system)));
    return new Raw.Obj(members);
  }

  private static Optional<Identifier> identifier(Raw json) {
    return json.string("id").map(id -> new Identifier(json.string("system"), id));
  }
}
