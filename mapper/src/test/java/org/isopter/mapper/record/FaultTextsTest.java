package org.isopter.mapper.record;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.isopter.mapper.Goldens;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.exam.Exam;
import org.isopter.model.value.Fault;
import org.isopter.model.value.Result;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Every refused record has a reviewed answer beside it, of the same name and ending in txt. */
class FaultTextsTest {

  private static final Path FOLDER = Path.of("src/test/resources/golden/faults");

  private final RecordReader reader = new RecordReader(Catalogue.standard());

  @TestFactory
  Stream<DynamicTest> saysWhereWhatAndWhatToDo() throws IOException {
    try (Stream<Path> files = Files.list(FOLDER)) {
      return files
          .filter(file -> RecordFormat.ofFileName(file.toString()).isPresent())
          .sorted()
          .toList()
          .stream()
          .map(file -> dynamicTest(file.getFileName().toString(), () -> check(file)));
    }
  }

  private void check(Path file) throws IOException {
    String name = file.getFileName().toString();
    RecordFormat format = RecordFormat.ofFileName(name).orElseThrow();
    Result<Exam> result = reader.read(Files.readAllBytes(file), format);
    assertFalse(result.isOk(), name + " was accepted");
    Goldens.check(
        FOLDER.resolve(name.substring(0, name.lastIndexOf('.')) + ".txt"),
        result.faults().stream().map(Fault::toString).collect(Collectors.joining("\n", "", "\n")));
  }
}
