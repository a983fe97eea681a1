package org.isopter.mapper.pool;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.Release;
import org.isopter.mapper.privacy.Deidentifier;
import org.isopter.mapper.privacy.SecretKey;
import org.isopter.mapper.store.TableFormat;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.simulate.Cohort;
import org.isopter.model.value.FaultException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A pool that is added to is the pool of everything, byte for byte. */
class PoolAddTest {

  private static final String BARE = "{\"resourceType\":\"Observation\"}";

  @TempDir Path folder;

  @Test
  void isWhatItWouldBeFromScratchAlsoInAnotherOrderAndWithDocumentsTwice() throws IOException {
    List<PoolDocument> all = documents();
    Pools.run(plan("whole"), all);
    List<PoolDocument> mixed = new ArrayList<>(all);
    Collections.shuffle(mixed, new Random(3));
    Pools.run(plan("grown"), mixed.subList(0, 12));
    PoolResult.Aside aside = Pools.run(plan("grown"), mixed.subList(6, 24)).aside();
    assertEquals(6, aside.skipped());
    PoolResult last = Pools.run(plan("grown"), mixed);
    assertEquals(24, last.aside().skipped());
    assertEquals(all.size(), last.counts().documents());
    assertEquals(files("whole"), files("grown"));
    assertTrue(files("whole").keySet().contains("bundles.ndjson"));
  }

  @Test
  void aRunThatIsKilledLeavesThePoolAsItWasAndIsDoneAgain() throws IOException {
    List<PoolDocument> all = documents();
    Pools.run(plan("whole"), all);
    Pools.run(plan("grown"), all.subList(0, 15));
    Map<String, Integer> before = files("grown");
    try (PoolRun begun = PoolRun.begin(Catalogue.standard(), Pools.reader(), plan("grown"))) {
      for (PoolDocument document : all) {
        begun.add(document);
      }
      assertEquals(before, files("grown"));
    }
    // What a kill leaves: it never comes to take its files away.
    Path left = Files.createDirectories(folder.resolve(".grown.part"));
    Files.writeString(left.resolve("tables.duckdb"), "half a table");
    Pools.run(plan("grown"), all);
    assertEquals(files("whole"), files("grown"));
  }

  @Test
  void aPoolThatWasMadeOtherwiseIsNotAddedTo() throws IOException {
    List<PoolDocument> all = documents();
    Pools.run(plan("grown"), all.subList(0, 5));
    SecretKey other = SecretKey.of("another 7b1e05c2d94f8a63 of enough bytes 1907355284").orThrow();
    for (Deidentifier odd :
        List.of(new Deidentifier(other, false), new Deidentifier(Pools.KEY, true))) {
      FaultException refused =
          assertThrows(FaultException.class, () -> Pools.run(plan("grown", odd), all));
      assertTrue(refused.getMessage().contains("all pooled again"), refused.getMessage());
    }
    PoolReader there = new PoolReader(Catalogue.standard(), Options.usual(), Release.R4);
    Options elsewhere = Options.usual().zone(ZoneOffset.ofHours(9));
    for (PoolReader odd :
        List.of(
            new PoolReader(Catalogue.standard(), elsewhere, Release.R4),
            new PoolReader(Catalogue.standard(), Options.usual(), Release.R5),
            there.on(OnErrors.LEFT_OVER))) {
      assertRefused("way to read the inputs", plan("grown"), odd);
    }
    PoolPlan plain = PoolPlan.of(folder.resolve("grown"), new Deidentifier(Pools.KEY, false));
    assertRefused("choice of bundles", plain.adding(), there);
    // To name errors changes no row.
    try (PoolRun run =
        PoolRun.begin(Catalogue.standard(), there.on(OnErrors.POOLED), plan("grown"))) {
      run.add(all.get(6));
      assertEquals(6, run.finish().counts().documents());
    }
  }

  private static void assertRefused(String why, PoolPlan plan, PoolReader reader)
      throws IOException {
    try (PoolRun run = PoolRun.begin(Catalogue.standard(), reader, plan)) {
      FaultException refused =
          assertThrows(FaultException.class, () -> run.add(Pools.json(BARE, 1)));
      assertTrue(refused.getMessage().contains(why), refused.getMessage());
    }
  }

  @Test
  void aPoolThatWasMadeWithoutAddIsNotAddedTo() throws IOException {
    List<PoolDocument> all = documents();
    Pools.run(PoolPlan.of(folder.resolve("plain"), new Deidentifier(Pools.KEY, false)), all);
    FaultException plain = assertThrows(FaultException.class, () -> Pools.run(plan("plain"), all));
    assertTrue(plain.getMessage().contains("without --add"), plain.getMessage());
  }

  /** Its neighbours may have come before, or come later. */
  @Test
  void aBareResourceIsRefused() throws IOException {
    PoolResult result = Pools.run(plan("grown"), List.of(Pools.json(BARE, 1)));
    assertEquals(1, result.counts().refused());
    assertTrue(
        Files.readString(folder.resolve("grown/leftover.ndjson")).contains("not-in-a-bundle"));
  }

  private PoolPlan plan(String name) {
    return plan(name, new Deidentifier(Pools.KEY, false));
  }

  private PoolPlan plan(String name, Deidentifier deidentifier) {
    return PoolPlan.of(folder.resolve(name), deidentifier)
        .in(List.of(TableFormat.PARQUET, TableFormat.CSV))
        .withBundles()
        .adding();
  }

  private static List<PoolDocument> documents() {
    List<PoolDocument> documents = new ArrayList<>();
    new Cohort(20, 9).exams().forEach(exam -> documents.add(Pools.record(exam, documents.size())));
    documents.add(Pools.json("{}", documents.size()));
    documents.add(Pools.json(BARE, documents.size()));
    return documents;
  }

  /** Returns the hashes of the files of a pool; the provenance says when it was made. */
  private Map<String, Integer> files(String pool) throws IOException {
    Map<String, Integer> files = new TreeMap<>();
    try (Stream<Path> inside = Files.walk(folder.resolve(pool))) {
      for (Path file : inside.filter(Files::isRegularFile).toList()) {
        String name = file.getFileName().toString();
        if (!name.equals("provenance.json")) {
          files.put(name, java.util.Arrays.hashCode(Files.readAllBytes(file)));
        }
      }
    }
    return files;
  }
}
