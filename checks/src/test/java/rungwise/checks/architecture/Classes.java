package rungwise.checks.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;

/** The compiled product, without the generated names of the database. */
final class Classes {

  static final String[] PURE = {
    "rungwise.quantities..", "rungwise.inference..", "rungwise.dosing..", "rungwise.drawing.."
  };

  private static final JavaClasses ALL =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("rungwise")
          .that(not(resideInAnyPackage("rungwise.store.schema..")));

  private Classes() {}

  static JavaClasses all() {
    return ALL;
  }
}
