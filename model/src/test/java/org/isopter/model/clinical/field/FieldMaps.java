package org.isopter.model.clinical.field;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.model.answer.pupil.DefectSide;
import org.isopter.model.answer.sight.FieldResponse;

/** Every field of one eye and every pair of them, for tests that go through all. */
public final class FieldMaps {

  private static final FieldResponse[] RESPONSES = FieldResponse.values();

  private FieldMaps() {}

  /** Returns the 81 fields of one eye with a centre. */
  static List<EyeField> eyes(Optional<FieldResponse> centre) {
    List<EyeField> eyes = new ArrayList<>();
    for (int number = 0; number < 81; number++) {
      eyes.add(
          new EyeField(
              RESPONSES[number % 3],
              RESPONSES[number / 3 % 3],
              RESPONSES[number / 9 % 3],
              RESPONSES[number / 27],
              centre));
    }
    return eyes;
  }

  /** Returns the 6,561 fields of two eyes, the centres not tested. */
  public static List<FieldSigns> all() {
    return all(Optional.empty(), Optional.empty());
  }

  /** Returns the 6,561 fields of two eyes with their centres. */
  public static List<FieldSigns> all(Optional<FieldResponse> right, Optional<FieldResponse> left) {
    List<FieldSigns> all = new ArrayList<>();
    for (EyeField one : eyes(right)) {
      for (EyeField two : eyes(left)) {
        all.add(FieldSigns.of(one, two));
      }
    }
    return all;
  }

  /** Returns the fields of two eyes with every state of both centres: full, absent, not tested. */
  public static List<FieldSigns> allWithCentres() {
    List<Optional<FieldResponse>> centres =
        List.of(
            Optional.empty(), Optional.of(FieldResponse.FULL), Optional.of(FieldResponse.ABSENT));
    return centres.stream()
        .flatMap(right -> centres.stream().flatMap(left -> all(right, left).stream()))
        .toList();
  }

  /** Returns every set of details, each known or not. */
  public static List<FieldDetails> details() {
    List<FieldDetails> all = new ArrayList<>();
    for (Optional<DefectSide> side : known(DefectSide.values())) {
      for (Optional<Boolean> congruous : known(true, false)) {
        for (Optional<Boolean> macula : known(true, false)) {
          for (Optional<Boolean> crescent : known(true, false)) {
            for (Optional<Boolean> vertical : known(true, false)) {
              all.add(new FieldDetails(side, congruous, macula, crescent, vertical));
            }
          }
        }
      }
    }
    return all;
  }

  /** Returns the details with one of the known ones forgotten, in every way. */
  static List<FieldDetails> withOneForgotten(FieldDetails d) {
    return List.of(
        new FieldDetails(
            Optional.empty(), d.congruous(), d.macularSparing(), d.crescentSpared(), d.vertical()),
        new FieldDetails(
            d.afferent(), Optional.empty(), d.macularSparing(), d.crescentSpared(), d.vertical()),
        new FieldDetails(
            d.afferent(), d.congruous(), Optional.empty(), d.crescentSpared(), d.vertical()),
        new FieldDetails(
            d.afferent(), d.congruous(), d.macularSparing(), Optional.empty(), d.vertical()),
        new FieldDetails(
            d.afferent(), d.congruous(), d.macularSparing(), d.crescentSpared(), Optional.empty()));
  }

  @SafeVarargs
  private static <T> List<Optional<T>> known(T... values) {
    List<Optional<T>> all = new ArrayList<>();
    all.add(Optional.empty());
    for (T value : values) {
      all.add(Optional.of(value));
    }
    return all;
  }
}
