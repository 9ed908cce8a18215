package rungwise.checks.architecture;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;

/** The compiled product. */
final class Classes {

  static final String[] PURE = {"rungwise.quantities..", "rungwise.dosing..", "rungwise.drawing.."};

  private static final JavaClasses ALL =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("rungwise");

  private Classes() {}

  static JavaClasses all() {
    return ALL;
  }
}
