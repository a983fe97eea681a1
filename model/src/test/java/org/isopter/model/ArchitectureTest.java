package org.isopter.model;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** The model stands on the JDK alone and its packages point one way. */
@AnalyzeClasses(
    packages = "org.isopter.model",
    importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

  @ArchTest
  static final ArchRule needsOnlyTheJdk =
      classes()
          .should()
          .onlyDependOnClassesThat()
          .resideInAnyPackage("java..", "org.isopter.model..", "org.jspecify.annotations");

  @ArchTest
  static final ArchRule hasNoCycles =
      slices().matching("org.isopter.model.(*)..").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule valuesKnowNoFindings =
      noClasses()
          .that()
          .resideInAPackage("..value..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("..shape..", "..exam..", "..catalogue..");

  @ArchTest
  static final ArchRule saysNothingOnItsOwn =
      noClasses()
          .should()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err");
}
