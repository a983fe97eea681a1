package org.isopter.mapper.pool;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.mapper.table.FactOrigin;
import org.isopter.mapper.table.PooledExam;
import org.isopter.model.exam.Header;
import org.isopter.model.exam.Identifier;

/** Writes where examinations were read as JSON, a line for each line of an input. */
final class OriginLine {

  private OriginLine() {}

  static List<String> of(ExamRows rows) {
    PooledExam exam = rows.exam();
    return exam.origins().stream()
        .map(origin -> FactOrigin.of(origin.source(), origin.line()))
        .distinct()
        .map(origin -> line(exam.exam().header(), origin, rows.older()))
        .toList();
  }

  private static String line(Header header, FactOrigin origin, Optional<ExamRows.Older> older) {
    Map<String, Raw> line = new LinkedHashMap<>();
    line.put("examination", Raw.of(header.id().toString()));
    header
        .subject()
        .identifier()
        .map(Identifier::toString)
        .ifPresent(id -> line.put("subject", Raw.of(id)));
    older.ifPresent(
        former -> {
          line.put("older_examination", Raw.of(former.examination().toString()));
          line.put("older_subject", Raw.of(former.subject().toString()));
        });
    line.put("source", Raw.of(origin.source()));
    line.put("line", new Raw.Leaf(Raw.Kind.NUMBER, Long.toString(origin.line())));
    return RawJson.write(new Raw.Obj(line));
  }
}
