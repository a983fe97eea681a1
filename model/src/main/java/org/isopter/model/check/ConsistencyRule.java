package org.isopter.model.check;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.isopter.model.exam.Exam;
import org.isopter.model.exam.ExamView;
import org.isopter.model.exam.EyeView;
import org.isopter.model.finding.Citation;
import org.isopter.model.finding.Finding;
import org.isopter.model.text.RecordText;
import org.isopter.model.value.Site;

/** One consistency rule: what a record should say, why, after which source, and the test of it. */
public final class ConsistencyRule {

  private final String id;
  private final BreachKind kind;
  private final Severity severity;
  private final String what;
  private final String why;
  private final Citation source;
  private final List<Finding<?>> findings;
  private final List<String> paths;
  private final String wanted;
  private final String suggestion;
  private final boolean settledByRemark;
  private final Function<ExamView, List<Breach>> test;

  private ConsistencyRule(Draft draft, Function<ExamView, List<Breach>> test) {
    this.id = draft.id;
    this.kind = draft.kind;
    this.severity = draft.severity;
    this.what = draft.what;
    this.why = draft.why;
    this.source = draft.source;
    this.findings = draft.findings;
    this.paths = draft.paths;
    this.wanted = draft.wanted;
    this.suggestion = draft.suggestion;
    this.settledByRemark = draft.settledByRemark;
    this.test = test;
    List<String> said = List.of(what, why, wanted, suggestion);
    if (!id.matches("[a-z0-9]+(-[a-z0-9]+)*") || said.contains("") || paths.isEmpty()) {
      throw new IllegalArgumentException("the rule " + id + " is not complete");
    }
  }

  static Draft impossible(String id) {
    return new Draft(id, BreachKind.IMPOSSIBLE, Severity.ERROR);
  }

  static Draft contradictory(String id, Severity severity) {
    return new Draft(id, BreachKind.CONTRADICTORY, severity);
  }

  static Draft incomplete(String id, Severity severity) {
    return new Draft(id, BreachKind.INCOMPLETE, severity);
  }

  static Draft implausible(String id, Severity severity) {
    return new Draft(id, BreachKind.IMPLAUSIBLE, severity);
  }

  /** Returns the stable name, in lower case with hyphens. */
  public String id() {
    return id;
  }

  /** Returns in which way a record breaks it. */
  public BreachKind kind() {
    return kind;
  }

  /** Returns how bad that is. */
  public Severity severity() {
    return severity;
  }

  /** Returns what breaks it, in one sentence. */
  public String what() {
    return what;
  }

  /** Returns the clinical reason. */
  public String why() {
    return why;
  }

  /** Returns where the reason comes from. */
  public Citation source() {
    return source;
  }

  /** Returns the record paths of the findings that it looks at, without the eye. */
  public List<String> paths() {
    return paths;
  }

  /** Returns what would keep it. */
  public String wanted() {
    return wanted;
  }

  /** Returns what to do where it is broken. */
  public String suggestion() {
    return suggestion;
  }

  /** Says whether a remark at the fact settles it: someone has looked at it already. */
  public boolean isSettledByRemark() {
    return settledByRemark;
  }

  /** Returns every place where the examination breaks it. */
  public List<Violation> check(ExamView view) {
    return isSettledBySilence(view) ? List.of() : violations(view);
  }

  /** A rule is broken at a finding that it looks at: where none is stated, it is kept. */
  private boolean isSettledBySilence(ExamView view) {
    return !findings.isEmpty() && findings.stream().allMatch(view::isSilentOn);
  }

  private List<Violation> violations(ExamView view) {
    List<Breach> breaches = test.apply(view);
    // Most rules are kept: a look at them costs no more than it must.
    return breaches.isEmpty()
        ? List.of()
        : breaches.stream()
            .filter(breach -> !settledByRemark || breach.where().remarks().isEmpty())
            .map(breach -> violation(view.exam(), breach))
            .toList();
  }

  private Violation violation(Exam exam, Breach breach) {
    String entry = RecordText.path(exam, breach.where());
    String path = breach.part().map(part -> entry + "." + part).orElse(entry);
    return new Violation(this, breach.where().site(), path, breach.seen(), wanted, suggestion);
  }

  @Override
  public String toString() {
    return id;
  }

  /** A rule that still lacks its words or its test. */
  static final class Draft {

    private final String id;
    private final BreachKind kind;
    private final Severity severity;
    private String what = "";
    private String why = "";
    private Citation source = Citation.COMMON_PRACTICE;
    private List<Finding<?>> findings = List.of();
    private List<String> paths = List.of();
    private String wanted = "";
    private String suggestion = "";
    private boolean settledByRemark;

    private Draft(String id, BreachKind kind, Severity severity) {
      this.id = id;
      this.kind = kind;
      this.severity = severity;
    }

    Draft what(String sentence) {
      this.what = sentence;
      return this;
    }

    Draft why(String reason) {
      this.why = reason;
      return this;
    }

    Draft source(String published) {
      this.source = new Citation(published);
      return this;
    }

    Draft wanted(String words) {
      this.wanted = words;
      return this;
    }

    Draft suggest(String words) {
      this.suggestion = words;
      return this;
    }

    /** Says that a remark at the fact settles it. */
    Draft settledByRemark() {
      this.settledByRemark = true;
      return this;
    }

    Draft on(Finding<?>... looked) {
      this.findings = List.of(looked);
      this.paths = Arrays.stream(looked).map(finding -> "findings." + finding.id()).toList();
      return this;
    }

    /** Says that it looks at every finding. */
    Draft onAll() {
      this.paths = List.of("findings");
      return this;
    }

    /** Completes the rule with a test that looks at each eye with its fellow. */
    ConsistencyRule eachEye(Function<EyeView, Stream<Breach>> look) {
      return over(Site.EACH_EYE, look);
    }

    /** Completes the rule with a test that looks at each eye, and at both together. */
    ConsistencyRule everywhere(Function<EyeView, Stream<Breach>> look) {
      return over(Site.EACH_OR_BOTH, look);
    }

    /** Completes the rule with a test that starts at what is said of both eyes. */
    ConsistencyRule pair(Function<EyeView, Stream<Breach>> look) {
      return over(Site.PAIR, look);
    }

    private static List<Breach> breaches(
        ExamView exam, List<Site> sites, Function<EyeView, Stream<Breach>> look) {
      List<Breach> breaches = new ArrayList<>();
      sites.forEach(site -> look.apply(exam.eye(site)).forEach(breaches::add));
      return breaches;
    }

    private ConsistencyRule over(List<Site> sites, Function<EyeView, Stream<Breach>> look) {
      return new ConsistencyRule(this, exam -> breaches(exam, sites, look));
    }
  }
}
