package org.isopter.model.clinical.field;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.isopter.model.catalogue.Fields.BlindSpot;
import org.isopter.model.catalogue.Fields.Edge;
import org.isopter.model.clinical.CheckRow;
import org.isopter.model.clinical.CheckTable;
import org.isopter.model.clinical.statement.Answer;
import org.isopter.model.value.Quantity;
import org.isopter.model.value.Unit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

public class BlindSpotsTest {

  static Stream<CheckRow> rows() {
    return CheckTable.BLIND_SPOT_GEOMETRY.rows();
  }

  private static BlindSpots.OnScreen onScreen(CheckRow row) {
    return BlindSpots.onScreen(
        FlatScreen.at(row.number("distance_mm")).orThrow(),
        new FlatScreen.Direction(
            row.number("centre_temporal_deg"), row.number("centre_vertical_deg")),
        row.number("width_deg"),
        row.number("height_deg"));
  }

  @ParameterizedTest
  @MethodSource("rows")
  void laysTheBlindSpotOnAFlatScreen(CheckRow row) {
    BlindSpots.OnScreen spot = onScreen(row);
    assertEquals(new BigDecimal(row.cell("inner_edge_mm")), spot.inner());
    assertEquals(new BigDecimal(row.cell("outer_edge_mm")), spot.outer());
    assertEquals(new BigDecimal(row.cell("centre_x_mm")), spot.centreX());
    assertEquals(new BigDecimal(row.cell("centre_y_mm")), spot.centreY());
    assertEquals(new BigDecimal(row.cell("true_width_mm")), spot.width());
    assertEquals(new BigDecimal(row.cell("true_height_mm")), spot.height());
    assertNotEquals(new BigDecimal(row.cell("WRONG_width_if_centred_mm")), spot.width());
  }

  @ParameterizedTest
  @MethodSource("rows")
  void readsTheAnglesBackFromTheScreen(CheckRow row) {
    BlindSpots.OnScreen spot = onScreen(row);
    double middle = spot.centreY().doubleValue();
    BlindSpot measured =
        spot(
            Unit.MILLIMETRE,
            Optional.of(Quantity.of(row.cell("distance_mm"), Unit.MILLIMETRE)),
            spot.inner().toString(),
            spot.outer().toString(),
            String.format(Locale.ROOT, "%.1f", middle + row.number("true_height_mm") / 2),
            String.format(Locale.ROOT, "%.1f", middle - row.number("true_height_mm") / 2));
    BlindSpots.Extent width = BlindSpots.width(measured).value().orElseThrow();
    BlindSpots.Extent height = BlindSpots.height(measured).value().orElseThrow();
    assertEquals(row.number("width_deg"), width.extent().doubleValue(), 0.051);
    assertEquals(row.number("centre_temporal_deg"), width.centre().doubleValue(), 0.051);
    assertEquals(row.number("height_deg"), height.extent().doubleValue(), 0.051);
    assertEquals(row.number("centre_vertical_deg"), height.centre().doubleValue(), 0.051);
  }

  private static BlindSpot spot(
      Unit unit,
      Optional<Quantity> screen,
      String nasal,
      String temporal,
      String upper,
      String lower) {
    Map<Edge, Quantity> edges = new EnumMap<>(Edge.class);
    edges.put(Edge.NASAL, Quantity.of(nasal, unit));
    edges.put(Edge.TEMPORAL, Quantity.of(temporal, unit));
    edges.put(Edge.UPPER, Quantity.of(upper, unit));
    edges.put(Edge.LOWER, Quantity.of(lower, unit));
    return new BlindSpot(edges, screen, Optional.empty());
  }

  @Test
  void goesFromTheScreenToAnglesAndBack() {
    long seed = System.nanoTime();
    Random random = new Random(seed);
    FlatScreen screen = new FlatScreen(1000);
    for (int i = 0; i < 1000; i++) {
      FlatScreen.Direction direction =
          new FlatScreen.Direction(random.nextDouble(-60, 60), random.nextDouble(-60, 60));
      FlatScreen.Direction back = screen.direction(screen.meet(direction));
      assertEquals(direction.azimuth(), back.azimuth(), 1e-9, "seed " + seed);
      assertEquals(direction.elevation(), back.elevation(), 1e-9, "seed " + seed);
    }
  }

  @Test
  void needsTheDistanceOfTheScreen() {
    BlindSpot far = spot(Unit.MILLIMETRE, Optional.empty(), "226", "330", "40", "-90");
    assertFalse(BlindSpots.width(far).isGiven());
    assertFalse(BlindSpots.height(far).isGiven());
    assertFalse(FlatScreen.at(0).isOk());
  }

  @Test
  void comparesTheEyesAndCallsNothingEnlarged() {
    BlindSpot right = spot(Unit.DEGREE, Optional.empty(), "12", "19", "2.2", "-5.3");
    BlindSpot left = spot(Unit.DEGREE, Optional.empty(), "12.5", "18", "2.2", "-5.3");
    Answer<BigDecimal> more = BlindSpots.widerRight(right, left);
    assertEquals(new BigDecimal("1.5"), more.value().orElseThrow());
    assertTrue(more.statement().text().contains("No cut-off is published"));
    BlindSpot none = new BlindSpot(new EnumMap<>(Edge.class), Optional.empty(), Optional.empty());
    assertFalse(BlindSpots.widerRight(right, none).isGiven());
  }
}
