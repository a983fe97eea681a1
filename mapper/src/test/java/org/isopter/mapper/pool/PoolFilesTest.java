package org.isopter.mapper.pool;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.isopter.mapper.io.UnwritableException;
import org.isopter.mapper.privacy.Deidentifier;
import org.isopter.mapper.store.PoolTables;
import org.isopter.mapper.store.TableFormat;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.value.FaultException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A pool takes nothing away but an older pool, and leaves nothing that is not whole. */
class PoolFilesTest {

  private static final String RECORD =
      """
      {"isopter":1,"record":{"id":"r-1"},"subject":{"id":"p-1"},\
      "performed":"2026-03-03T09:10:00.250Z","status":"final","findings":{\
      "intraocular-pressure":{"right":{"value":"17 mmHg"}}}}""";

  private static final String AMENDED =
      RECORD.replace("r-1", "r-2").replace("\"final\"", "\"amended\",\"amends\":{\"id\":\"r-1\"}");

  @TempDir Path folder;

  @Test
  void anOlderPoolIsReplacedButNothingThatLiesBesideIt() throws IOException {
    Path pool = folder.resolve("pool");
    Pools.run(plan(false, Optional.empty()), List.of(Pools.json(RECORD, 1)));
    Pools.run(plan(true, Optional.empty()), List.of(Pools.json(RECORD, 1)));
    assertEquals(List.of("pool"), names(folder));
    Path own = Files.writeString(pool.resolve("notes.txt"), "mine");
    FaultException refused =
        assertThrows(
            FaultException.class, () -> Pools.run(plan(true, Optional.empty()), List.of()));
    assertTrue(refused.getMessage().contains("notes.txt"), refused.getMessage());
    assertEquals("mine", Files.readString(own));
  }

  @Test
  void aLinkToAnOlderPoolStaysALink() throws IOException {
    Pools.run(plan(false, Optional.empty()), List.of(Pools.json(RECORD, 1)));
    Path real = Files.move(folder.resolve("pool"), folder.resolve("real"));
    Path link = Files.createSymbolicLink(folder.resolve("pool"), real);
    Pools.run(plan(true, Optional.empty()), List.of(Pools.json(AMENDED, 1)));
    assertTrue(Files.isSymbolicLink(link));
    assertTrue(Files.readString(real.resolve("findings.csv")).contains("amended"));
    assertEquals(List.of("pool", "real"), names(folder));
  }

  @Test
  void anOlderPoolThatAKilledRunMovedComesBack() throws IOException {
    Pools.run(plan(false, Optional.empty()), List.of(Pools.json(RECORD, 1)));
    Files.move(folder.resolve("pool"), folder.resolve(".pool.older"));
    FaultException taken =
        assertThrows(
            FaultException.class,
            () -> {
              PoolFolder.begin(folder.resolve("pool"), false).close();
              Pools.run(plan(false, Optional.empty()), List.of());
            });
    assertTrue(taken.getMessage().contains("there already"), taken.getMessage());
    assertEquals(List.of("pool"), names(folder));
  }

  @Test
  void theLeftOverElsewhereAppearsWhenThePoolDoes() throws IOException {
    Path elsewhere = folder.resolve("new").resolve("left.ndjson");
    PoolPlan plan = plan(false, Optional.of(elsewhere));
    try (PoolRun run = PoolRun.begin(Catalogue.standard(), Pools.reader(), plan)) {
      run.add(Pools.json("{", 1));
      assertFalse(Files.exists(elsewhere));
    }
    assertEquals(List.of(), names(folder.resolve("new")));
    Pools.run(plan, List.of(Pools.json("{", 1)));
    assertEquals(List.of("left.ndjson"), names(folder.resolve("new")));
    assertEquals(1, Files.readAllLines(elsewhere).size());
  }

  @Test
  void aRunThatCannotBeginLeavesNothing() throws IOException {
    Path file = Files.writeString(folder.resolve("file"), "");
    PoolPlan plan = plan(false, Optional.of(file.resolve("left.ndjson")));
    assertThrows(UnwritableException.class, () -> Pools.run(plan, List.of()));
    assertEquals(List.of("file"), names(folder));
  }

  @Test
  void whatIsThereMoreThanOnceIsCountedAndWhatIsReplacedIsNamed() throws Exception {
    PoolDocument twice = Pools.json(RECORD, 1);
    PoolDocument amended = Pools.json(AMENDED, 2);
    PoolResult result = Pools.run(plan(false, Optional.empty()), List.of(twice, twice, amended));
    assertEquals(1, result.aside().repeated());
    try (PoolTables tables = PoolTables.open(folder.resolve("pool"))) {
      String sql =
          "SELECT count(DISTINCT examination) FROM findings WHERE status = 'final'"
              + " AND examination IN (SELECT amends FROM examinations)";
      assertEquals(Optional.of(1L), tables.ask(sql).cells().get(0).get(0));
    }
  }

  /** Pseudonymised is not anonymous: who may see a pool is let in by its owner. */
  @Test
  void thePoolIsItsOwnersAlone() throws IOException {
    Pools.run(plan(false, Optional.empty()), List.of(Pools.json(RECORD, 1)));
    Path pool = folder.resolve("pool");
    assertEquals("rwx------", PosixFilePermissions.toString(Files.getPosixFilePermissions(pool)));
    Pools.run(plan(true, Optional.empty()), List.of(Pools.json(RECORD, 1)));
    assertEquals("rwx------", PosixFilePermissions.toString(Files.getPosixFilePermissions(pool)));
  }

  /** Table Schema, type datetime: a pattern of seconds would refuse their decimals. */
  @Test
  void theDataPackageNamesEachFileOnceAndItsTimesAsTheyAre() throws IOException {
    Pools.run(plan(false, Optional.empty()), List.of(Pools.json(RECORD, 1)));
    String reported = Files.readString(folder.resolve("pool/datapackage.json"));
    assertEquals(1, Pattern.compile("\"findings-csv\"").matcher(reported).results().count());
    assertTrue(reported.contains("\"type\":\"datetime\",\"format\":\"any\""), "times");
  }

  private PoolPlan plan(boolean replace, Optional<Path> elsewhere) {
    PoolPlan plan =
        PoolPlan.of(folder.resolve("pool"), new Deidentifier(Pools.KEY, false))
            .in(List.of(TableFormat.CSV, TableFormat.CSV))
            .leaving(elsewhere);
    return replace ? plan.replacing() : plan;
  }

  private static List<String> names(Path folder) throws IOException {
    try (Stream<Path> inside = Files.list(folder)) {
      return inside.map(path -> String.valueOf(path.getFileName())).sorted().toList();
    }
  }
}
