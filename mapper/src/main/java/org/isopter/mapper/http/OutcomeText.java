package org.isopter.mapper.http;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.mapper.json.Limits;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;
import org.isopter.model.value.Result;

/** What an OperationOutcome says, cut short: it comes from outside, and may be anything. */
final class OutcomeText {

  private static final RawJson JSON = new RawJson(new Limits(50, 1 << 20, 1 << 20));
  private static final int LONGEST = 300;
  private static final int ISSUES = 2;

  private OutcomeText() {}

  /** Returns the words of the first issues; empty for what is no OperationOutcome. */
  static String of(String body) {
    Result<Raw> read = JSON.read(body);
    if (!(read instanceof Result.Ok<Raw> ok)) {
      return "";
    }
    List<Raw.Obj> issues = ok.value().objects("issue");
    String all =
        issues.stream()
            .limit(ISSUES)
            .map(OutcomeText::issue)
            .filter(text -> !text.isEmpty())
            .collect(Collectors.joining("; "));
    String line = all.replaceAll("\\s+", " ").strip();
    return line.length() <= LONGEST ? line : line.substring(0, LONGEST) + "…";
  }

  private static String issue(Raw.Obj issue) {
    Optional<String> words =
        issue
            .string("diagnostics")
            .or(() -> issue.object("details").flatMap(details -> details.string("text")));
    return Stream.of(issue.string("code"), words)
        .flatMap(Optional::stream)
        .collect(Collectors.joining(" "));
  }
}
