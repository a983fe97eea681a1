package org.isopter.mapper.foreign.run;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.mapper.foreign.ledger.Reason;
import org.isopter.mapper.foreign.ledger.Why;
import org.isopter.mapper.foreign.reading.ReadResource;
import org.isopter.mapper.foreign.reading.Reading;
import org.isopter.mapper.foreign.reading.ResourceOutcome;
import org.isopter.mapper.foreign.returned.ReturnedBundle;
import org.isopter.mapper.json.PlacedLeaf;
import org.isopter.model.value.Fault;

/**
 * What became of each resource, as lines for programs and as a table for people. Nothing of a
 * person is said but the ids of resources, codes and units.
 */
public final class Report {

  private Report() {}

  /** Returns an OperationOutcome for each resource of a batch, each on one line. */
  public static List<String> outcomes(Batch batch) {
    Stream<String> strangers =
        batch.reading().strangers().stream().map(stranger -> outcome(stranger, batch.of(stranger)));
    Stream<String> resources =
        batch.reading().resources().stream().map(read -> outcome(batch, read));
    return Stream.concat(strangers, resources).toList();
  }

  /** Returns an OperationOutcome on one line for each fault of a document that is not read. */
  public static List<String> unreadable(Origin origin, List<Fault> faults) {
    String word = Why.UNREADABLE.word();
    return faults.stream()
        .map(
            f ->
                OutcomeIssue.outcome(
                    List.of(issue("error", "structure", word, List.of(), origin.tell(f)))))
        .toList();
  }

  /** Returns an OperationOutcome on one line for a resource that was deleted and is left out. */
  public static List<String> deleted(Origin origin, String name) {
    String text = origin + ": " + name + " was deleted, and is left out";
    return List.of(
        OutcomeIssue.outcome(List.of(issue("information", "deleted", "", List.of(), text))));
  }

  /** Returns an OperationOutcome on one line for a document at which the program failed. */
  static List<String> failed(Origin origin) {
    return List.of(
        OutcomeIssue.outcome(
            List.of(issue("fatal", "exception", "", List.of(), origin + ": internal error"))));
  }

  /** Returns what became of each resource of a batch, a line each for people. */
  public static String table(Batch batch) {
    StringBuilder table = new StringBuilder();
    for (ReadResource read : batch.reading().resources()) {
      table.append(row(batch, read));
    }
    return table.toString();
  }

  private static String row(Batch batch, ReadResource read) {
    Origin origin = batch.of(read);
    StringBuilder row = new StringBuilder();
    String head = "%-10s  %s  %s".formatted(read.outcome().word(), origin, read.name());
    row.append(head).append('\n');
    if (read.outcome() instanceof ResourceOutcome.Translated translated) {
      line(row, "rules", String.join(", ", translated.rules()));
      String paths = String.join(", ", translated.leftover().stream().map(PlacedLeaf::at).toList());
      line(row, "left over", paths);
    }
    reasons(read).forEach(reason -> line(row, "reason", batch.withFiles(reason).message()));
    return row.toString();
  }

  private static void line(StringBuilder row, String word, String text) {
    if (!text.isEmpty()) {
      row.append("            ").append("%-10s".formatted(word)).append(text).append('\n');
    }
  }

  /** Returns why a resource, or a part of it that looked like a finding, was not taken. */
  public static List<Reason> reasons(ReadResource read) {
    if (read.outcome() instanceof ResourceOutcome.Kept kept) {
      return kept.reasons();
    }
    return read.outcome() instanceof ResourceOutcome.Translated translated
        ? translated.reasons()
        : List.of();
  }

  /**
   * Returns what of a resource a strict reading does not allow; empty where nothing is left over.
   */
  public static String leftOver(ReadResource read) {
    if (read.outcome() instanceof ResourceOutcome.Kept kept) {
      return "kept, " + kept.reasons().get(0).why().word();
    }
    return read.outcome() instanceof ResourceOutcome.Translated translated
        ? translated.leftover().stream()
            .filter(leaf -> !ReturnedBundle.isTransport(leaf))
            .map(PlacedLeaf::at)
            .collect(Collectors.joining(", "))
        : "";
  }

  private static String outcome(Reading.Stranger stranger, Origin origin) {
    String words = "it holds our panel and yet is not as to-fhir writes it: ";
    return OutcomeIssue.outcome(
        stranger.faults().stream()
            .map(f -> issue("warning", "invalid", "", List.of(), origin + ": " + words + f))
            .toList());
  }

  private static String outcome(Batch batch, ReadResource read) {
    String at = batch.of(read) + ": " + read.name() + ": ";
    List<OutcomeIssue> issues = new ArrayList<>();
    if (!(read.outcome() instanceof ResourceOutcome.Kept)) {
      String word = read.outcome().word();
      issues.add(issue("information", "informational", word, rules(read), at + said(read)));
    }
    for (Reason reason : reasons(read)) {
      String word = reason.why().word();
      issues.add(
          issue(
              "warning", "not-supported", word, List.of(), at + batch.withFiles(reason).message()));
    }
    return OutcomeIssue.outcome(issues);
  }

  private static List<String> rules(ReadResource read) {
    return read.outcome() instanceof ResourceOutcome.Translated translated
        ? List.copyOf(translated.rules())
        : List.of();
  }

  private static String said(ReadResource read) {
    return read.outcome() instanceof ResourceOutcome.Translated translated
        ? "translated, " + translated.leftover().size() + " values left over"
        : "exact";
  }

  /** The codes of the details are the rules; the text is what became of it, or the reason. */
  private static OutcomeIssue issue(
      String severity, String code, String word, List<String> rules, String text) {
    return new OutcomeIssue(severity, code, word, rules, text, "");
  }
}
