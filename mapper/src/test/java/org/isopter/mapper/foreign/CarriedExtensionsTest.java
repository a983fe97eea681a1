package org.isopter.mapper.foreign;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import org.isopter.mapper.fhir.BundleKind;
import org.isopter.mapper.foreign.reading.Options;
import org.isopter.model.catalogue.Catalogue;
import org.isopter.model.value.Canonical;
import org.isopter.profiles.ProfileValidator;
import org.isopter.profiles.ValidationMessage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What goes along stands in extensions that the package defines, and as it defines them. */
class CarriedExtensionsTest {

  private static final int EVERY = 7;
  private static final ProfileValidator VALIDATOR = ProfileValidator.standard();
  private static final ForeignReader READER =
      new ForeignReader(Catalogue.standard(), Options.usual());

  @Test
  void areKnownToTheReferenceValidator() {
    List<String> bundles = bundles();
    String all = String.join("\n", bundles);
    assertFalse(bundles.isEmpty());
    assertNotEquals(-1, all.indexOf(Canonical.LEFT_OVER));
    assertNotEquals(-1, all.indexOf(Canonical.KEPT));
    for (String bundle : bundles) {
      assertEquals(List.of(), ofExtensions(bundle));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "'\"valueCode\"', '\"valueString\"'",
    "'\"url\":\"at\"', '\"url\":\"place\"'",
    "'\"url\":\"leaf\"', '\"url\":\"twig\"'"
  })
  void areRefusedInAnotherShape(String part, String other) {
    String bundle =
        bundles().stream()
            .filter(text -> text.contains(Canonical.LEFT_OVER) && text.contains(Canonical.KEPT))
            .findFirst()
            .orElseThrow();
    String changed = bundle.replace(part, other);
    assertNotEquals(bundle, changed);
    assertFalse(ofExtensions(changed).stream().noneMatch(ValidationMessage::isError));
  }

  private static List<ValidationMessage> ofExtensions(String bundle) {
    return VALIDATOR.validate(bundle).stream()
        .filter(
            message ->
                message.path().matches("Bundle\\.(meta|entry\\[\\d+](\\.resource)?)\\.extension.*"))
        .toList();
  }

  private static List<String> bundles() {
    AtomicInteger number = new AtomicInteger();
    List<String> bundles = new ArrayList<>();
    WhatOthersWriteTest.documents()
        .filter(document -> number.getAndIncrement() % EVERY == 0)
        .flatMap(document -> READER.read(document).orThrow().exams().stream())
        .forEach(exam -> bundles.add(ForeignWriter.of(BundleKind.COLLECTION).write(exam)));
    return bundles;
  }
}
