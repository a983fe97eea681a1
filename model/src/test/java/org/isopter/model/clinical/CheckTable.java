package org.isopter.model.clinical;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.isopter.model.clinical.acuity.AcuityCasesTest;
import org.isopter.model.clinical.acuity.AcuityEquivalentsTest;
import org.isopter.model.clinical.acuity.LowVisionConventionTest;
import org.isopter.model.clinical.acuity.NearAcuityTest;
import org.isopter.model.clinical.colour.ColourPlatesTest;
import org.isopter.model.clinical.field.BlindSpotsTest;
import org.isopter.model.clinical.field.FieldPatternsTest;
import org.isopter.model.clinical.field.PerimetryTest;
import org.isopter.model.clinical.impairment.DrivingVisionTest;
import org.isopter.model.clinical.impairment.VisionImpairmentsTest;
import org.isopter.model.clinical.lens.PowerVectorTest;
import org.isopter.model.clinical.lens.PrismAngleTest;
import org.isopter.model.clinical.lens.VertexTest;
import org.isopter.model.clinical.pupil.AfferentDefectsTest;
import org.isopter.model.clinical.pupil.PupilCausesTest;

/** A table of check values, the test that goes through its rows, and the rows it leaves out. */
public enum CheckTable {
  ACUITY_CASES(AcuityCasesTest.class),
  ACUITY_EQUIVALENTS(AcuityEquivalentsTest.class),
  BLIND_SPOT_GEOMETRY(BlindSpotsTest.class),
  DICOM_RR1_ROWS(AcuityEquivalentsTest.class),
  DRIVING_VISION(DrivingVisionTest.class),
  FIELD_PATTERNS(FieldPatternsTest.class),
  FRISEN_GRADES(ScalesTest.class),
  ICD11_CASES(VisionImpairmentsTest.class),
  ICD11_VISION_IMPAIRMENT(VisionImpairmentsTest.class),
  ICDR_SCALE(ScalesTest.class),
  ISHIHARA_CASES(ColourPlatesTest.class),
  ISHIHARA_THRESHOLDS(ColourPlatesTest.class),
  NEAR_ACUITY_40CM(NearAcuityTest.class),
  NORMAL_RANGES(NormalRangesTest.class),
  OFFCHART_ACUITY(LowVisionConventionTest.class),
  PERIMETRY_RULES(PerimetryTest.class),
  POWER_VECTORS(PowerVectorTest.class),
  PRISM_DEGREES(PrismAngleTest.class),
  PUPIL_TRUTH_TABLE(PupilCausesTest.class),
  RAPD_GRADES(AfferentDefectsTest.class),
  VCDR_PERCENTILES(ScalesTest.class),
  VERTEX(VertexTest.class);

  private final Class<?> test;

  CheckTable(Class<?> test) {
    this.test = test;
  }

  /** Returns the name of the table's file, without its ending. */
  String file() {
    return name().toLowerCase(Locale.ROOT);
  }

  /** Returns the test that goes through the rows. */
  Class<?> test() {
    return test;
  }

  /** Returns the rows that the test goes through: all but those left out. */
  public Stream<CheckRow> rows() {
    return all().stream().filter(row -> !Omissions.of(this).containsKey(row.name()));
  }

  /** Returns every row. */
  public List<CheckRow> all() {
    List<String> lines = text().lines().toList();
    List<String> columns = cells(lines.get(0));
    List<CheckRow> rows = new ArrayList<>();
    for (int line = 1; line < lines.size(); line++) {
      rows.add(row(line + 1, columns, cells(lines.get(line))));
    }
    return rows;
  }

  private CheckRow row(int line, List<String> columns, List<String> cells) {
    Map<String, String> byColumn = new LinkedHashMap<>();
    for (int column = 0; column < columns.size(); column++) {
      byColumn.put(columns.get(column), column < cells.size() ? cells.get(column) : "");
    }
    return new CheckRow(file(), line, cells.get(0), byColumn);
  }

  private static List<String> cells(String line) {
    List<String> cells = new ArrayList<>();
    int from = 0;
    for (int tab = line.indexOf('\t'); tab >= 0; tab = line.indexOf('\t', from)) {
      cells.add(line.substring(from, tab));
      from = tab + 1;
    }
    cells.add(line.substring(from));
    return cells;
  }

  private String text() {
    String path = "/checks/" + file() + ".tsv";
    try (InputStream in =
        Objects.requireNonNull(CheckTable.class.getResourceAsStream(path), path)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }
}
