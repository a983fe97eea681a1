package org.isopter.mapper.foreign.ledger;

import org.apiguardian.api.API;
import org.apiguardian.api.API.Status;

/**
 * The ids of the rules by which what others write is taken, each once; {@code rules.json} says what
 * each takes, refuses, and why.
 */
@API(status = Status.INTERNAL)
public final class RuleId {

  public static final String SIDE_BODY_SITE = "side-body-site";
  public static final String SIDE_QUALIFIER = "side-qualifier";
  public static final String SIDE_EXPRESSION = "side-expression";
  public static final String SIDE_EXTENSION = "side-extension";
  public static final String SIDE_COMPONENT = "side-component";
  public static final String SIDE_LOCAL_CODE = "side-local-code";
  public static final String SIDE_STRUCTURE = "side-structure";
  public static final String SIDE_IN_CODE = "side-in-code";
  public static final String SIDE_TEXT = "side-text";
  public static final String SIDE_OF_PAIR = "side-of-pair";
  public static final String CODE_ALIAS = "code-alias";
  public static final String CODE_SYSTEM_ALIAS = "code-system-alias";
  public static final String CODE_WRONG_SYSTEM = "code-wrong-system";
  public static final String CODE_MISSING_SYSTEM = "code-missing-system";
  public static final String CODE_TEXT = "code-text";
  public static final String CODE_WORDS = "code-words";
  public static final String CODE_GROUP = "code-group";
  public static final String CODE_COMPONENT = "code-component";
  public static final String COMPONENT_OF_EYE = "component-of-eye";
  public static final String ACUITY_UNQUALIFIED = "acuity-unqualified";
  public static final String FINDING_IN_CODE = "finding-in-code";
  public static final String ACUITY_RATIO = "acuity-ratio";
  public static final String ACUITY_RATIO_BARE = "acuity-ratio-bare";
  public static final String ACUITY_LOGMAR = "acuity-logmar";
  public static final String ACUITY_DECIMAL = "acuity-decimal";
  public static final String ACUITY_LETTERS = "acuity-letters";
  public static final String ACUITY_PRINT_SIZE = "acuity-print-size";
  public static final String ACUITY_NOTATION_IMPLIED = "acuity-notation-implied";
  public static final String ACUITY_FINDING_CODE = "acuity-finding-code";
  public static final String ACUITY_TEXT = "acuity-text";
  public static final String CONDITION_CODED = "condition-coded";
  public static final String CONDITION_TEXT = "condition-text";
  public static final String CONDITION_DEVICE = "condition-device";
  public static final String UNIT_SPELLING = "unit-spelling";
  public static final String UNIT_UNCODED = "unit-uncoded";
  public static final String UNIT_IN_CODE = "unit-in-code";
  public static final String UNIT_KILOPASCAL = "unit-kilopascal";
  public static final String UNIT_OF_RATIO = "unit-of-ratio";
  public static final String DIGITS_BEYOND = "digits-beyond";
  public static final String TEXT_QUANTITY = "text-quantity";
  public static final String PERCENT_AS_RATIO = "percent-as-ratio";
  public static final String ANSWER_ALIAS = "answer-alias";
  public static final String ANSWER_TEXT = "answer-text";
  public static final String ANSWER_TRUTH = "answer-truth";
  public static final String FINDING_AS_VALUE = "finding-as-value";
  public static final String SHORTHAND_TEXT = "shorthand-text";
  public static final String ABSENCE_ALIAS = "absence-alias";
  public static final String AXIS_ZERO = "axis-zero";
  public static final String CYLINDER_ZERO = "cylinder-zero";
  public static final String PART_TEXT = "part-text";
  public static final String PRISM_ANGLE = "prism-angle";
  public static final String PRISM_WORD = "prism-word";
  public static final String PARTS_BY_EYE = "parts-by-eye";
  public static final String PARTS_JOINED = "parts-joined";
  public static final String TIME_DAY = "time-day";
  public static final String TIME_REPORT = "time-report";
  public static final String TIME_ENCOUNTER = "time-encounter";
  public static final String TIME_ISSUED = "time-issued";
  public static final String TIME_PERFORMED = "time-performed";
  public static final String TIME_INSTANT = "time-instant";
  public static final String TIME_PERIOD_START = "time-period-start";
  public static final String STATUS_AMENDED = "status-amended";
  public static final String SUBJECT_PATIENT = "subject-patient";
  public static final String SUBJECT_REFERENCE = "subject-reference";
  public static final String SUBJECT_UNSTATED = "subject-unstated";
  public static final String VISIT_ENCOUNTER = "visit-encounter";
  public static final String VISIT_PANEL = "visit-panel";
  public static final String VISIT_TIME = "visit-time";

  private RuleId() {}
}
