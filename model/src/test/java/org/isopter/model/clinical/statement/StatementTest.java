package org.isopter.model.clinical.statement;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.isopter.model.finding.Citation;
import org.junit.jupiter.api.Test;

class StatementTest {

  private static Statement statement(Certainty certainty) {
    return new Statement("a.b", "Text.", List.of("fact"), certainty, Citation.COMMON_PRACTICE);
  }

  @Test
  void standsOnFactsAndHasAName() {
    List<String> facts = List.of("fact");
    Citation source = Citation.COMMON_PRACTICE;
    Certainty sure = Certainty.COMPUTED;
    assertThrows(
        IllegalArgumentException.class,
        () -> new Statement("a.b", "Text.", List.of(), sure, source));
    assertThrows(
        IllegalArgumentException.class, () -> new Statement("a.b", " ", facts, sure, source));
    assertThrows(
        IllegalArgumentException.class, () -> new Statement("A b", "Text.", facts, sure, source));
  }

  @Test
  void givesNoValueThatItCannotTell() {
    Statement unsure = statement(Certainty.CANNOT_TELL);
    Statement sure = statement(Certainty.COMPUTED);
    assertThrows(IllegalArgumentException.class, () -> new Answer.Given<>(1, unsure));
    assertThrows(IllegalArgumentException.class, () -> new Answer.Withheld<>(sure));
    assertEquals(
        List.of(2), new Answer.Given<>(1, sure).map(one -> one + 1).value().stream().toList());
  }

  @Test
  void fitsOneSeveralOrNone() {
    assertInstanceOf(Fit.NoneFits.class, fit(List.of()));
    assertInstanceOf(Fit.Fits.class, fit(List.of(1)));
    assertInstanceOf(Fit.SeveralFit.class, fit(List.of(1, 2)));
    assertEquals(Certainty.SEVERAL_FIT, fit(List.of(1, 2)).statement().certainty());
  }

  private static Fit<Integer> fit(List<Integer> rows) {
    return Fit.of(rows, (certainty, fitting) -> statement(certainty));
  }
}
