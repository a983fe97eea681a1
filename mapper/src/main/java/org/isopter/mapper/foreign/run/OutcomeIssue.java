package org.isopter.mapper.foreign.run;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.json.RawJson;

/**
 * An issue of an OperationOutcome (FHIR R4).
 *
 * @param severity {@code fatal}, {@code error}, {@code warning} or {@code information}
 * @param code the type of the issue, of FHIR's value set IssueType
 * @param text what kind of issue it is, in a word; empty for none
 * @param codes what it stands on, as codes without a system
 * @param diagnostics where it is, and what was seen and wanted
 * @param expression where it is, as a FHIRPath; empty for none
 */
public record OutcomeIssue(
    String severity,
    String code,
    String text,
    List<String> codes,
    String diagnostics,
    String expression) {

  public OutcomeIssue {
    codes = List.copyOf(codes);
  }

  /** Returns the OperationOutcome of some issues as JSON on one line. */
  public static String outcome(List<OutcomeIssue> issues) {
    Map<String, Raw> outcome = new LinkedHashMap<>();
    outcome.put("resourceType", Raw.of("OperationOutcome"));
    outcome.put("issue", Raw.of(issues.stream().map(OutcomeIssue::json).toList()));
    return RawJson.write(new Raw.Obj(outcome));
  }

  private Raw json() {
    Map<String, Raw> issue = new LinkedHashMap<>();
    issue.put("severity", Raw.of(severity));
    issue.put("code", Raw.of(code));
    Map<String, Raw> details = details();
    if (!details.isEmpty()) {
      issue.put("details", new Raw.Obj(details));
    }
    issue.put("diagnostics", Raw.of(diagnostics));
    if (!expression.isEmpty()) {
      issue.put("expression", Raw.of(List.of(Raw.of(expression))));
    }
    return new Raw.Obj(issue);
  }

  private Map<String, Raw> details() {
    Map<String, Raw> details = new LinkedHashMap<>();
    if (!codes.isEmpty()) {
      details.put("coding", Raw.of(codes.stream().map(OutcomeIssue::coding).toList()));
    }
    if (!text.isEmpty()) {
      details.put("text", Raw.of(text));
    }
    return details;
  }

  private static Raw coding(String code) {
    return new Raw.Obj(Map.of("code", Raw.of(code)));
  }
}
