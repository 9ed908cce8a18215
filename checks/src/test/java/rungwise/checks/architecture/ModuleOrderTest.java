package rungwise.checks.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The order of the modules, and of the steps inside dosing. */
final class ModuleOrderTest {

  /** A module and the modules that it may know. */
  record Module(String name, Set<String> mayKnow) {
    String packages() {
      return "rungwise." + name + "..";
    }
  }

  private static final List<Module> MODULES =
      List.of(
          new Module("quantities", Set.of()),
          new Module("inference", Set.of()),
          new Module("dosing", Set.of("quantities", "inference")),
          new Module("drawing", Set.of("quantities")),
          new Module("clinic", Set.of("quantities", "dosing")),
          new Module("store", Set.of("quantities", "dosing", "clinic")),
          new Module("files", Set.of("quantities", "dosing", "clinic")),
          new Module("sheets", Set.of("quantities", "dosing", "drawing", "clinic")),
          new Module("web", Set.of("quantities", "dosing", "drawing", "clinic", "sheets")),
          new Module(
              "app",
              Set.of(
                  "quantities", "dosing", "drawing", "clinic", "store", "files", "sheets", "web")));

  /** What stands around the product: it may know all of it, and nothing of it may know this. */
  private static final Set<String> AROUND = Set.of("checks", "bench");

  /** The packages of dosing: each may know those before it, and the last is the public door. */
  private static final List<String> STEPS_OF_DOSING =
      List.of(
          "source",
          "syringe",
          "known",
          "strength",
          "protocol",
          "supply",
          "urgent",
          "screening",
          "ladder",
          "history",
          "guard",
          "response",
          "draws",
          "fit",
          "predictive",
          "decision",
          "choice");

  static List<Module> modules() {
    return MODULES;
  }

  @ParameterizedTest
  @MethodSource("modules")
  void a_module_knows_only_the_modules_before_it(Module module) {
    String[] forbidden =
        Stream.concat(MODULES.stream().map(Module::name), AROUND.stream())
            .filter(other -> !other.equals(module.name()) && !module.mayKnow().contains(other))
            .map(other -> "rungwise." + other + "..")
            .toArray(String[]::new);

    noClasses()
        .that()
        .resideInAPackage(module.packages())
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(forbidden)
        .allowEmptyShould(true)
        .check(Classes.all());
  }

  @Test
  void every_class_belongs_to_a_module_that_is_listed() {
    Set<String> listed =
        Stream.concat(MODULES.stream().map(Module::name), AROUND.stream())
            .collect(Collectors.toSet());

    assertThat(Classes.all())
        .extracting(type -> type.getPackageName().split("\\.", -1)[1])
        .isSubsetOf(listed);
  }

  static List<String> stepsOfDosing() {
    return STEPS_OF_DOSING;
  }

  @ParameterizedTest
  @MethodSource("stepsOfDosing")
  void a_step_of_dosing_knows_only_the_steps_before_it(String step) {
    List<String> later =
        STEPS_OF_DOSING.subList(STEPS_OF_DOSING.indexOf(step) + 1, STEPS_OF_DOSING.size());
    String[] forbidden =
        Stream.concat(later.stream().map(other -> other + ".."), Stream.of(""))
            .map(other -> other.isEmpty() ? "rungwise.dosing" : "rungwise.dosing." + other)
            .toArray(String[]::new);

    noClasses()
        .that()
        .resideInAPackage("rungwise.dosing." + step + "..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(forbidden)
        .check(Classes.all());
  }

  @Test
  void every_package_of_dosing_is_a_listed_step() {
    assertThat(Classes.all())
        .filteredOn(type -> type.getPackageName().startsWith("rungwise.dosing."))
        .extracting(type -> type.getPackageName().split("\\.", -1)[2])
        .isSubsetOf(STEPS_OF_DOSING);
  }

  @Test
  void no_packages_know_each_other_in_a_circle() {
    slices().matching("rungwise.(**)").should().beFreeOfCycles().check(Classes.all());
  }

  @Test
  void spring_stays_in_web_and_app() {
    noClasses()
        .that(not(resideInAnyPackage("rungwise.web..", "rungwise.app..", "rungwise.checks..")))
        .should()
        .dependOnClassesThat()
        .resideInAPackage("org.springframework..")
        .check(Classes.all());
  }

  /** A browser test plays the other program that changes a record. */
  @Test
  void the_query_builder_and_the_database_drivers_stay_in_store() {
    noClasses()
        .that(not(resideInAnyPackage("rungwise.store..", "rungwise.checks.browser..")))
        .should()
        .dependOnClassesThat(describe("belong to a database", ModuleOrderTest::belongsToDatabase))
        .check(Classes.all());
  }

  private static boolean belongsToDatabase(JavaClass type) {
    return Stream.of("org.jooq", "org.flywaydb", "org.sqlite", "java.sql", "javax.sql")
        .anyMatch(name -> type.getPackageName().startsWith(name));
  }
}
