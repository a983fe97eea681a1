package org.isopter.mapper.privacy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.isopter.mapper.pool.PoolDocument;
import org.isopter.mapper.pool.PoolPlan;
import org.isopter.mapper.pool.PoolResult;
import org.isopter.mapper.pool.Pools;
import org.isopter.mapper.store.PoolTables;
import org.isopter.mapper.store.TableFormat;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.value.FaultException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Rounded numbers: the exact ones are in no file, and fewer persons have to be taken out. */
class RoundingTest {

  private static final String RECORD =
      """
      {"isopter":1,"record":{"id":"r-%1$s"},"subject":{"id":"p-%1$s"},\
      "performed":"2026-03-03T09:10:00Z","status":"final","findings":{\
      "intraocular-pressure":{"right":{"value":"%2$s mmHg"}},\
      "refraction":{"left":{"sphere":"-3.12 D"}},\
      "pupil-size":{"right":[{"value":"4.5 mm","lighting":"dim"}],\
      "left":[{"value":"3 mm","lighting":"dim"}]}}}""";

  @TempDir Path folder;

  @Test
  void noFileHoldsTheExactNumber() throws IOException, SQLException {
    run(List.of("intraocular-pressure=2", "refraction.sphere=0.5"), false, record("1", "17.375"));
    assertEquals(List.of("18.0", "18 mmHg"), found("intraocular-pressure", "value"));
    assertEquals(List.of("-3.0", "-3 D"), found("refraction", "sphere"));
    assertEquals(List.of("-3.0", "-3.000 D"), found("power-vector", "m"));
    for (String file : List.of("findings.csv", "examinations.csv", "codebook.csv")) {
      String text = Files.readString(folder.resolve("pool").resolve(file));
      assertFalse(text.contains("17.375") || text.contains("3.12"), file);
    }
    String provenance = Files.readString(folder.resolve("pool/provenance.json"));
    assertTrue(provenance.contains("intraocular-pressure=2, refraction.sphere=0.5"), provenance);
  }

  /** Anisocoria of 1.5 mm follows from the diameters as they were; not from 4 and 4. */
  @Test
  void whatIsConcludedFromExactNumbersIsLeftOut() throws IOException, SQLException {
    run(List.of(), false, record("1", "17"));
    assertTrue(derived() > 0);
    run(List.of("pupil-size=4"), false, record("1", "17"));
    assertEquals(0, derived());
  }

  @Test
  void aNumberThatCannotBeRoundedIsMasked() throws IOException, SQLException {
    run(List.of("intraocular-pressure=45"), false, record("1", "79"));
    assertEquals(
        Optional.of("intraocular-pressure masked"),
        ask(
            "SELECT finding || ' ' || absent FROM findings"
                + " WHERE finding = 'intraocular-pressure' AND number IS NULL"));
  }

  /** Four pressures are 15 in steps of 5, and four groups by themselves. */
  @Test
  void fewerPersonsAreTakenOut() throws IOException {
    PoolDocument[] four = {
      record("1", "16"), record("2", "17"), record("3", "13.5"), record("4", "14")
    };
    assertEquals(4, run(List.of(), true, four).risk().taken().persons());
    PoolResult rounded = run(List.of("intraocular-pressure=5"), true, four);
    assertEquals(0, rounded.risk().taken().persons());
    assertEquals(4, rounded.risk().least());
  }

  @Test
  void whatIsNoNumberOfTheCatalogueIsRefused() {
    for (String step :
        List.of("distance-acuity=1", "intraocular-pressure", "intraocular-pressure=0", "axis=5")) {
      FaultException refused =
          assertThrows(
              FaultException.class, () -> Rounding.parse(Catalogue.standard(), List.of(step)));
      assertTrue(refused.getMessage().contains(step), refused.getMessage());
    }
  }

  /** The same site is the same key in every pool of a project, and in no other project. */
  @Test
  void aSiteHasAPseudonym() throws IOException, SQLException {
    Deidentifier here = new Deidentifier(Pools.KEY, false).at(Optional.of("Quillhaven"));
    pool(PoolPlan.of(folder.resolve("pool"), here), record("1", "17"));
    Optional<Object> site = ask("SELECT DISTINCT site FROM examinations");
    assertEquals(Optional.of("s" + Pools.KEY.pseudonym("site", "Quillhaven")), site);
  }

  private PoolResult run(List<String> steps, boolean suppress, PoolDocument... documents)
      throws IOException {
    Rounding rounding = Rounding.parse(Catalogue.standard(), steps);
    Deidentifier deidentifier = new Deidentifier(Pools.KEY, false).rounding(rounding);
    PoolPlan plan =
        PoolPlan.of(folder.resolve("pool"), deidentifier)
            .in(List.of(TableFormat.CSV, TableFormat.PARQUET))
            .replacing();
    return pool(plan.risk(3, List.of("intraocular_pressure"), suppress), documents);
  }

  private static PoolResult pool(PoolPlan plan, PoolDocument... documents) throws IOException {
    return Pools.run(plan, List.of(documents));
  }

  private static PoolDocument record(String person, String pressure) {
    return Pools.json(RECORD.formatted(person, pressure), 1);
  }

  private List<String> found(String finding, String part) throws SQLException {
    String where = " FROM findings WHERE finding = '" + finding + "' AND part = '" + part + "'";
    List<String> found = new ArrayList<>();
    found.add(ask("SELECT number" + where).map(Object::toString).orElse(""));
    found.add(ask("SELECT value" + where).map(Object::toString).orElse(""));
    return found;
  }

  private long derived() throws SQLException {
    return (Long)
        ask("SELECT count(*) FROM findings WHERE derived AND finding LIKE '%anisocoria%'")
            .orElse(0L);
  }

  private Optional<Object> ask(String sql) throws SQLException {
    try (PoolTables tables = PoolTables.open(folder.resolve("pool"))) {
      List<List<Optional<Object>>> cells = tables.ask(sql).cells();
      return cells.isEmpty() ? Optional.empty() : cells.get(0).get(0);
    }
  }
}
