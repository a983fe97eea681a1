package org.isopter.model.check;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** The consistency rules that Isopter ships. */
public final class Rules {

  private static final List<ConsistencyRule> ALL =
      Stream.of(
              LightRules.all(),
              BlindEyeRules.all(),
              SightRules.all(),
              PupilRules.all(),
              DefectRules.all(),
              PupilSizeRules.all(),
              AcuityRules.all(),
              ChartRules.all(),
              ColourRules.all(),
              FieldRules.all(),
              DiscRules.all(),
              PressureRules.all(),
              RefractionRules.all(),
              LidRules.all(),
              MovementRules.all(),
              TissueRules.all(),
              RecordRules.all())
          .<ConsistencyRule>flatMap(List::stream)
          .toList();

  private Rules() {}

  /** Returns every rule, grouped by subject. */
  public static List<ConsistencyRule> all() {
    return ALL;
  }

  /** Returns the rule of this id. */
  public static Optional<ConsistencyRule> byId(String id) {
    return ALL.stream().filter(rule -> rule.id().equals(id)).findFirst();
  }
}
