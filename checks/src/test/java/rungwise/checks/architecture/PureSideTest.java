package rungwise.checks.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import java.time.LocalDate;
import java.util.Set;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The pure side knows no clock, file, network, framework, locale or randomness. */
final class PureSideTest {

  private static final Set<String> PACKAGES =
      Set.of(
          "java.lang",
          "java.lang.annotation",
          "java.lang.invoke",
          "java.lang.runtime",
          "java.math",
          "java.time",
          "java.time.format",
          "java.time.temporal",
          "java.time.zone",
          "java.util",
          "java.util.function",
          "java.util.random",
          "java.util.regex",
          "java.util.stream",
          "org.jspecify.annotations");

  private static final Set<String> FORBIDDEN_TYPES =
      Set.of(
          "java.lang.System",
          "java.lang.Thread",
          "java.lang.ThreadLocal",
          "java.lang.Runtime",
          "java.lang.Process",
          "java.lang.ProcessBuilder",
          "java.lang.ClassLoader",
          "java.util.Random",
          "java.util.random.RandomGeneratorFactory",
          "java.util.SplittableRandom",
          "java.util.UUID",
          "java.util.Timer",
          "java.util.Date",
          "java.util.Calendar",
          "java.util.TimeZone",
          "java.util.Scanner",
          "java.util.Properties",
          "java.util.ServiceLoader",
          "java.util.ResourceBundle",
          "java.time.Clock",
          "java.time.InstantSource");

  /** "owner.method" of what reads the machine's clock, zone, locale or chance. */
  private static final Pattern FORBIDDEN_CALL =
      Pattern.compile(
          "java\\.time\\.[A-Za-z.]+\\.(now|systemDefault)"
              + "|java\\.lang\\.Math\\.random"
              + "|java\\.util\\.Collections\\.shuffle"
              + "|java\\.util\\.random\\.RandomGenerator\\.(of|getDefault)"
              + "|java\\.util\\.Locale\\.(getDefault|setDefault)"
              + "|java\\.lang\\.Class\\.(getResource|getResourceAsStream|forName)"
              + "|java\\.lang\\.Object\\.(wait|notify|notifyAll)");

  /** Printing by the machine's locale: the methods that take a locale are allowed. */
  private static final Pattern WITHOUT_A_LOCALE =
      Pattern.compile(
          "java\\.lang\\.String\\."
              + "(?:formatted\\(.*|format\\(java\\.lang\\.String, .*|to(?:Lower|Upper)Case\\(\\))");

  @Test
  void pure_modules_use_only_the_language_numbers_time_and_collections() {
    classes()
        .that()
        .resideInAnyPackage(Classes.PURE)
        .should()
        .onlyDependOnClassesThat(describe("are pure", PureSideTest::isAllowed))
        .check(Classes.all());
  }

  private static boolean isAllowed(JavaClass type) {
    JavaClass base = type.getBaseComponentType();
    if (base.isPrimitive() || isPure(base.getPackageName())) {
      return true;
    }
    return PACKAGES.contains(base.getPackageName()) && !FORBIDDEN_TYPES.contains(base.getName());
  }

  private static boolean isPure(String packageName) {
    return Set.of("quantities", "inference", "dosing", "drawing").stream()
        .map(name -> "rungwise." + name)
        .anyMatch(name -> packageName.equals(name) || packageName.startsWith(name + "."));
  }

  @Test
  void pure_modules_ask_no_clock_zone_locale_or_chance() {
    noClasses()
        .that()
        .resideInAnyPackage(Classes.PURE)
        .should()
        .accessTargetWhere(describe("reads the machine", PureSideTest::readsTheMachine))
        .check(Classes.all());
  }

  /** What the rules must see. */
  static final class Offender {
    private Offender() {}

    @SuppressWarnings("JavaTimeDefaultTimeZone")
    static void offend() {
      System.out.println("%.1f on %s".formatted(Math.random(), LocalDate.now()));
    }
  }

  @Test
  void the_rules_see_a_class_that_reads_the_machine() {
    var offender = new ClassFileImporter().importClasses(Offender.class);

    var calls =
        noClasses()
            .should()
            .accessTargetWhere(describe("reads the machine", PureSideTest::readsTheMachine))
            .evaluate(offender);
    var types =
        classes()
            .should()
            .onlyDependOnClassesThat(describe("are pure", PureSideTest::isAllowed))
            .evaluate(offender);

    assertThat(calls.getFailureReport().getDetails())
        .anySatisfy(call -> assertThat(call).contains("LocalDate.now"))
        .anySatisfy(call -> assertThat(call).contains("Math.random"))
        .anySatisfy(call -> assertThat(call).contains("String.formatted"));
    assertThat(types.getFailureReport().getDetails())
        .anySatisfy(type -> assertThat(type).contains("java.lang.System"))
        .anySatisfy(type -> assertThat(type).contains("java.io.PrintStream"));
  }

  private static boolean readsTheMachine(JavaAccess<?> access) {
    String owner = access.getTargetOwner().getName();
    return FORBIDDEN_CALL.matcher(owner + "." + access.getTarget().getName()).matches()
        || WITHOUT_A_LOCALE.matcher(access.getTarget().getFullName()).matches();
  }
}
