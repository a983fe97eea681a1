package org.isopter.model;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.List;

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
          .resideInAnyPackage(
              "java..", "org.isopter.model..", "org.jspecify.annotations", "org.apiguardian.api");

  @ArchTest
  static final ArchRule hasNoCycles =
      slices().matching("org.isopter.model.(*)..").should().beFreeOfCycles();

  /** From the values up to what is concluded and said of a whole examination. */
  private static final List<String> ROOMS =
      List.of(
          "value",
          "answer",
          "finding",
          "exam",
          "catalogue",
          "text",
          "clinical",
          "note",
          "check",
          "derive",
          "compare",
          "drawing",
          "letter",
          "simulate");

  @ArchTest
  static void roomsKnowOnlyThoseBeforeThem(JavaClasses model) {
    for (int i = 0; i < ROOMS.size() - 1; i++) {
      noClasses()
          .that()
          .resideInAPackage("org.isopter.model." + ROOMS.get(i) + "..")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage(packages(ROOMS.subList(i + 1, ROOMS.size())))
          .check(model);
    }
  }

  private static String[] packages(List<String> rooms) {
    return rooms.stream().map(room -> "org.isopter.model." + room + "..").toArray(String[]::new);
  }

  @ArchTest
  static final ArchRule saysNothingOnItsOwn =
      noClasses()
          .should()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err");
}
