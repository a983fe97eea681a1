package org.isopter.model.clinical.lens;

import static org.isopter.model.clinical.lens.PowerVectorTest.lens;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.math.BigDecimal;
import java.util.Scanner;
import java.util.stream.Stream;
import org.isopter.model.clinical.CheckRow;
import org.isopter.model.clinical.CheckTable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

public class VertexTest {

  private static final BigDecimal TWELVE = BigDecimal.valueOf(12);

  static Stream<CheckRow> rows() {
    return CheckTable.VERTEX.rows();
  }

  /** Reads {@code -8.00}, or {@code -8.00 -2.00 x180}. */
  private static Lens read(String text) {
    Scanner words = new Scanner(text);
    String sphere = words.next();
    return words.hasNext()
        ? lens(sphere, words.next(), Integer.parseInt(words.next().substring(1)))
        : Lens.sphere(new BigDecimal(sphere));
  }

  @ParameterizedTest
  @MethodSource("rows")
  void movesEachMeridianToTheCornea(CheckRow row) {
    Lens spectacle = read(row.cell("spectacle"));
    BigDecimal distance = new BigDecimal(row.cell("vertex_mm"));
    Lens cornea = Vertex.atCornea(spectacle, distance).orThrow();
    assertEquals(read(row.cell("corneal_plane_exact")), cornea);
    Lens quarter = Vertex.nearestQuarter(cornea);
    assertEquals(0, quarter.sphere().compareTo(read(row.cell("nearest_quarter")).sphere()));
    assertEquals(0, quarter.cylinder().compareTo(read(row.cell("nearest_quarter")).cylinder()));
    assertEquals(spectacle.cylinder().signum() == 0, cornea.cylinderAxis().isEmpty());
    if (row.cell("kind").equals("sphero-cylinder")) {
      assertNotEquals(0, cornea.cylinder().compareTo(spectacle.cylinder()), row.cell("note"));
    }
  }

  @Test
  void comesBackToTheSpectacles() {
    for (int power = -20; power <= 15; power++) {
      Lens lens = Lens.sphere(BigDecimal.valueOf(power));
      Lens back = Vertex.atSpectacles(Vertex.atCornea(lens, TWELVE).orThrow(), TWELVE).orThrow();
      assertEquals(power, back.sphere().doubleValue(), 0.002);
    }
  }

  @Test
  void refusesAPowerThatFocusesBeforeTheCornea() {
    assertFalse(Vertex.atCornea(Lens.sphere(BigDecimal.valueOf(100)), TWELVE).isOk());
    assertFalse(Vertex.atCornea(lens("10", "80", 90), TWELVE).isOk());
  }
}
