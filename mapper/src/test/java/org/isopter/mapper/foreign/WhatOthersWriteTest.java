package org.isopter.mapper.foreign;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.mapper.foreign.reading.ReadExam;
import org.isopter.mapper.foreign.vocabulary.ForeignRules;
import org.isopter.mapper.json.Raw;
import org.isopter.model.catalogue.Catalogue;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/**
 * What a careful human takes from the ways in which others write: a table of cases, each of which
 * states how it differs from the plain observation of the rules. Every case is also read, written
 * and read again.
 */
class WhatOthersWriteTest {

  private static final ForeignReader READER =
      new ForeignReader(Catalogue.standard(), Options.usual());

  @TestFactory
  Stream<DynamicTest> takesWhatAHumanTakes() {
    return cases()
        .map(
            row ->
                DynamicTest.dynamicTest(
                    name(row),
                    () -> assertEquals(String.join("\n", wanted(row)), said(json(row)))));
  }

  @TestFactory
  Stream<DynamicTest> losesNothing() {
    return cases().map(row -> DynamicTest.dynamicTest(name(row), () -> losesNothing(json(row))));
  }

  private static void losesNothing(String json) {
    Conservation.check(READER, json, json);
    for (ReadExam exam : READER.read(json).orThrow().exams()) {
      String written = ForeignWriter.of(BundleKind.COLLECTION).write(exam);
      ReadExam again = READER.read(written).orThrow().exams().get(0);
      assertEquals(exam.exam(), again.exam());
      assertEquals(exam.carried(), again.carried());
    }
  }

  /** Returns every case as a whole document. */
  static Stream<String> documents() {
    return cases().map(WhatOthersWriteTest::json);
  }

  private static String said(String json) {
    List<String> said = new ArrayList<>();
    READER.read(json).orThrow().resources().forEach(r -> said.add(CarefulHumanTest.said(r)));
    return String.join("\n", said);
  }

  private static List<String> wanted(Raw row) {
    List<Raw> all = row.list("taken");
    return all.isEmpty()
        ? List.of(row.string("taken").orElseThrow())
        : all.stream().map(text -> text.string().orElseThrow()).toList();
  }

  private static String json(Raw row) {
    return ForeignRules.whole(row.get("given").orElseThrow());
  }

  private static String name(Raw row) {
    return row.string("of").orElseThrow() + ": " + row.string("case").orElseThrow();
  }

  private static Stream<Raw.Obj> cases() {
    return Foreign.cases("careful-human");
  }
}
