package org.isopter.mapper.describe;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * Classes of a picture hold whole steps of what was measured, and their shares are all there is.
 */
class ClassesTest {

  @Test
  void sharesOfClassesSumToOne() {
    Spread spread =
        new Spread("x", "value", "", "mm", Map.of("right", List.of(1.0, 2.0, 2.0, 9.0)));
    Classes classes = Classes.of(spread);
    // Sturges: one and the binary logarithm of four.
    assertEquals(3, classes.count());
    assertArrayEquals(
        new double[] {0.75, 0, 0.25}, classes.shares(List.of(1.0, 2.0, 2.0, 9.0)), 1e-9);
  }

  /** With classes of other widths, every third bar would be as high again. */
  @Test
  void aClassHoldsWholeSteps() {
    List<Double> halves =
        Stream.iterate(0, i -> i + 1).limit(200).map(i -> (i % 21) / 2.0 - 3).toList();
    Classes classes = Classes.of(new Spread("x", "value", "", "D", Map.of("right", halves)));
    double steps = classes.width() / 0.5;
    assertEquals(Math.rint(steps), steps, 1e-9);
    assertEquals(-3.25, classes.start(0), 1e-9);
    double[] shares = classes.shares(halves);
    for (int i = 0; i < shares.length - 1; i++) {
      assertEquals(steps / 21, shares[i], 0.02, "class " + i);
    }
    // Of computed numbers there are no steps.
    List<Double> computed = List.of(0.0, 0.176, 0.477, 0.301);
    Classes plain = Classes.of(new Spread("x", "value", "", "", Map.of("right", computed)));
    assertEquals(0, plain.start(0));
  }
}
