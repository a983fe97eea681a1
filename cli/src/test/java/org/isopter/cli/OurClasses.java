package org.isopter.cli;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.util.regex.Pattern;

/** The classes of all modules that the command carries, without their tests; read once for all. */
final class OurClasses {

  private static final Pattern TESTS = Pattern.compile(".*/test(-classes)?/org/isopter/.*");

  static final JavaClasses ALL =
      new ClassFileImporter()
          .withImportOption(location -> !location.matches(TESTS))
          .importPackages("org.isopter");

  private OurClasses() {}
}
