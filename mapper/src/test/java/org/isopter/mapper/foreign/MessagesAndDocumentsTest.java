package org.isopter.mapper.foreign;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import org.isopter.mapper.cda.CdaReader;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.json.Raw;
import org.isopter.mapper.v2.V2Reader;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.value.Result;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * What a careful human takes from messages with results (HL7 v2.5.1 and v2.8, chapters 2 and 7) and
 * from clinical documents (HL7 CDA R2, in the shapes of the sections of C-CDA for examinations and
 * results), judged before they were read: the facts of each, or that it is refused.
 */
class MessagesAndDocumentsTest {

  private static final ForeignReader READER =
      new ForeignReader(Catalogue.standard(), Options.usual());

  @TestFactory
  Stream<DynamicTest> takesFromAMessageWhatAHumanTakes() {
    return Foreign.cases("messages")
        .map(row -> test(row, bytes -> V2Reader.read(bytes), "message"));
  }

  @TestFactory
  Stream<DynamicTest> takesFromADocumentWhatAHumanTakes() {
    return Foreign.cases("documents").map(row -> test(row, CdaReader::read, "document"));
  }

  private static DynamicTest test(Raw row, Function<byte[], Result<Raw>> reading, String name) {
    return DynamicTest.dynamicTest(
        row.string("case").orElseThrow(), () -> check(row, reading, name));
  }

  private static void check(Raw row, Function<byte[], Result<Raw>> reading, String name) {
    String text = row.string(name).orElseThrow();
    boolean latin = row.string("set").filter("latin"::equals).isPresent();
    Result<Raw> bundle = reading.apply(text.getBytes(latin ? ISO_8859_1 : UTF_8));
    if (row.string("taken").filter("refused"::equals).isPresent()) {
      assertFalse(bundle.isOk(), text);
      return;
    }
    List<String> wanted =
        row.list("taken").stream().map(fact -> fact.string().orElseThrow()).sorted().toList();
    List<String> taken =
        READER.readTogether(List.of(bundle.orThrow())).exams().stream()
            .flatMap(exam -> exam.exam().facts().stream())
            .map(CarefulHumanTest::said)
            .sorted()
            .toList();
    assertEquals(wanted, taken);
  }
}
