package org.isopter.mapper.foreign.run;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.io.AtomicFile;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.value.Result;

/**
 * How far a run has come; kept in a file beside the output, so that the run can go on after a kill.
 *
 * @param run the input and what was asked for: another run cannot go on from here
 * @param lines how many lines are done
 * @param records how many bytes of the records hold what came of them
 * @param carried how many bytes of what goes along
 * @param report how many bytes of the report
 * @param carries 1 when something goes along, else 0
 */
public record Checkpoint(
    String run, long lines, long records, long carried, long report, long carries) {

  /** The beginning of a run. */
  static Checkpoint start(String run) {
    return new Checkpoint(run, 0, 0, 0, 0, 0);
  }

  /** Returns the file of the checkpoint, beside the output of that path. */
  public static Path beside(Path output) {
    return output.resolveSibling(output.getFileName() + ".checkpoint");
  }

  /** Writes this in one step: a kill leaves the file as it was or as it is to be. */
  void save(Path file) {
    Map<String, Raw> members = new LinkedHashMap<>();
    members.put("run", Raw.of(run));
    members.put("lines", number(lines));
    members.put("records", number(records));
    members.put("carried", number(carried));
    members.put("report", number(report));
    members.put("carries", number(carries));
    AtomicFile.write(file, RawJson.write(new Raw.Obj(members)));
  }

  /**
   * Reads the checkpoint of an output; empty where there is none that can be read.
   *
   * @throws IOException when the file cannot be read
   */
  public static Optional<Checkpoint> load(Path file) throws IOException {
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    Result<Raw> json = RawJson.OWN.read(Files.readString(file, UTF_8));
    return json instanceof Result.Ok<Raw> ok ? of(ok.value()) : Optional.empty();
  }

  private static Optional<Checkpoint> of(Raw json) {
    Checkpoint read =
        new Checkpoint(
            json.string("run").orElse(""),
            number(json, "lines"),
            number(json, "records"),
            number(json, "carried"),
            number(json, "report"),
            number(json, "carries"));
    return read.isWhole() ? Optional.of(read) : Optional.empty();
  }

  private boolean isWhole() {
    return Math.min(Math.min(lines, records), Math.min(carried, Math.min(report, carries))) >= 0;
  }

  private static Raw number(long value) {
    return new Raw.Leaf(Raw.Kind.NUMBER, Long.toString(value));
  }

  private static long number(Raw json, String name) {
    return json.get(name)
        .filter(leaf -> leaf instanceof Raw.Leaf l && l.text().matches("\\d{1,18}"))
        .map(leaf -> Long.parseLong(((Raw.Leaf) leaf).text()))
        .orElse(-1L);
  }
}
