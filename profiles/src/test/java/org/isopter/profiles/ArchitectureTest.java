package org.isopter.profiles;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;

/** The packages are written and never read: no entry of an archive becomes a path. */
@AnalyzeClasses(
    packages = "org.isopter.profiles",
    importOptions = ImportOption.DoNotIncludeTests.class)
class ArchitectureTest {

  @ArchTest
  static final ArchRule unpacksNothing =
      noClasses()
          .should()
          .dependOnClassesThat()
          .haveNameMatching(
              ".*(Archive|Zip|Jar)InputStream|.*\\.(Zip|Jar|Tar)File|.*\\.NpmPackage");
}
