package org.isopter.mapper.foreign;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.isopter.model.value.Result;

/**
 * How far a run has come; kept in a file beside the output, so that the run can go on after a kill.
 *
 * @param input the name and the size of the input
 * @param lines how many lines are done
 * @param bytes how many bytes of the output hold what came of them
 * @param reportBytes how many bytes of the report do
 */
record Checkpoint(String input, long lines, long bytes, long reportBytes) {

  static Path beside(Path output) {
    return output.resolveSibling(output.getFileName() + ".checkpoint");
  }

  /** Writes this in one step: a kill leaves the file as it was or as it is to be. */
  void save(Path file) throws IOException {
    Map<String, Raw> members = new LinkedHashMap<>();
    members.put("input", Raw.of(input));
    members.put("lines", number(lines));
    members.put("bytes", number(bytes));
    members.put("reportBytes", number(reportBytes));
    Path next = file.resolveSibling(file.getFileName() + ".next");
    Files.writeString(next, RawJson.write(new Raw.Obj(members)), UTF_8);
    Files.move(next, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  /** Reads the checkpoint of an output; empty where there is none that can be read. */
  static Optional<Checkpoint> load(Path file) throws IOException {
    if (!Files.exists(file)) {
      return Optional.empty();
    }
    Result<Raw> json = new RawJson(Limits.USUAL).read(Files.readString(file, UTF_8));
    return json instanceof Result.Ok<Raw> ok ? of(ok.value()) : Optional.empty();
  }

  private static Optional<Checkpoint> of(Raw json) {
    long lines = number(json, "lines");
    long bytes = number(json, "bytes");
    long report = number(json, "reportBytes");
    return lines < 0 || bytes < 0 || report < 0
        ? Optional.empty()
        : Optional.of(new Checkpoint(json.string("input").orElse(""), lines, bytes, report));
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
