package org.isopter.mapper;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** HAPI stays at the rim, and the mapper does not know the profiles. */
@AnalyzeClasses(
    packages = "org.isopter.mapper",
    importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

  @ArchTest
  static final ArchRule jsonPathKnowsNoHapi =
      noClasses()
          .that()
          .resideInAnyPackage("..mapper.fhir..", "..mapper.record..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("ca.uhn..", "org.hl7..", "..mapper.hapi..");

  @ArchTest
  static final ArchRule knowsNoProfiles =
      noClasses().should().dependOnClassesThat().resideInAPackage("org.isopter.profiles..");

  @ArchTest
  static final ArchRule usesTheNewJacksonOnly =
      noClasses()
          .should()
          .dependOnClassesThat()
          .resideInAPackage("com.fasterxml.jackson.databind..");

  @ArchTest
  static final ArchRule hasNoCycles =
      slices().matching("org.isopter.mapper.(*)..").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule saysNothingOnItsOwn =
      noClasses()
          .should()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err");
}
