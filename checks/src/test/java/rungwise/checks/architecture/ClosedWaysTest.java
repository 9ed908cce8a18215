package rungwise.checks.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.lang.conditions.ArchConditions.beAnnotatedWith;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.ArchRule;
import java.util.Random;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.springframework.web.bind.annotation.ModelAttribute;

/** What the compiled program never does, or does in one named place alone. */
final class ClosedWaysTest {

  /** All of it but what only tests and measures. */
  private static final JavaClasses PROGRAM =
      Classes.all().that(not(resideInAnyPackage("rungwise.checks..")));

  private static final String SERVER = "rungwise.app.server..";

  /** Code that comes from a text, objects of any kind from bytes, bindings by name. */
  private static final Pattern CODE_FROM_TEXT =
      Pattern.compile(
          "javax\\.script\\..*|jdk\\.jshell\\..*|javax\\.tools\\..*"
              + "|org\\.springframework\\.expression\\..*"
              + "|java\\.lang\\.Class\\.forName|java\\.lang\\.ClassLoader\\..*"
              + "|java\\.lang\\.reflect\\.(Method\\.invoke|Constructor\\.newInstance)"
              + "|java\\.lang\\.(ProcessBuilder|Runtime)\\.(start|exec)"
              + "|javax\\.naming\\..*");

  private static final Pattern ANY_OBJECT =
      Pattern.compile(
          "java\\.io\\.ObjectInputStream\\..*|java\\.beans\\.XMLDecoder\\..*"
              + "|.*\\.(activateDefaultTyping|enableDefaultTyping\\w*)"
              + "|org\\.yaml\\.snakeyaml\\.constructor\\.Constructor\\..*"
              + "|javax\\.xml\\.(parsers|stream|transform)\\..*");

  private static final Pattern BINDING =
      Pattern.compile("org\\.springframework\\..*DataBinder\\..*");

  private static final Pattern OUTSIDE_MEMORY =
      Pattern.compile("(sun\\.misc|jdk\\.internal\\.misc)\\..*|java\\.lang\\.foreign\\..*");

  private static final Pattern CONNECTION =
      Pattern.compile(
          "java\\.net\\.http\\..*|java\\.net\\.(Server|Datagram)?Socket\\..*"
              + "|java\\.net\\.(Http)?URLConnection\\..*"
              + "|java\\.nio\\.channels\\.\\w*SocketChannel\\..*|javax\\.net\\.ssl\\..*"
              + "|org\\.springframework\\.(web\\.client|security\\.oauth2\\.client\\.endpoint)\\..*"
              + "|org\\.springframework\\.security\\.oauth2\\.client\\.registration"
              + "\\.ClientRegistrations\\..*");

  private static final Pattern TRUST =
      Pattern.compile("javax\\.net\\.ssl\\..*|java\\.security\\.cert\\..*");

  private static final Pattern GUESSABLE =
      Pattern.compile(
          "java\\.util\\.(Random|SplittableRandom)\\..*|java\\.lang\\.Math\\.random"
              + "|java\\.util\\.concurrent\\.ThreadLocalRandom\\..*");

  private static final Pattern FILES =
      Pattern.compile("java\\.nio\\.file\\.(Files|Path|Paths)\\..*|java\\.io\\.(File|RandomA).*");

  private static final Pattern TEMPLATES =
      Pattern.compile("gg\\.jte\\.TemplateEngine\\.create|gg\\.jte\\.resolve\\..*");

  private static final Pattern STATEMENTS =
      Pattern.compile(
          "java\\.sql\\.(Statement|Connection)\\.(execute\\w*|prepare\\w*|createStatement|addBatch)"
              + "|org\\.jooq\\.DSLContext\\.(execute|fetch\\w*|query|resultQuery|batch|parse\\w*)"
              + ".*java\\.lang\\.String.*");

  private static final Pattern PRINTED = Pattern.compile("java\\.lang\\.System\\.(out|err)");

  private static DescribedPredicate<JavaAccess<?>> is(Pattern way) {
    return describe("is " + way, access -> way.matcher(name(access)).matches());
  }

  private static String name(JavaAccess<?> access) {
    return access.getTargetOwner().getName() + "." + access.getTarget().getName();
  }

  private static DescribedPredicate<JavaAccess<?>> withTypes(Pattern way) {
    return describe("is " + way, access -> way.matcher(access.getTarget().getFullName()).find());
  }

  private static ArchRule never(Pattern way) {
    return noClasses().should().accessTargetWhere(is(way));
  }

  @Test
  void no_text_becomes_code_a_command_or_a_name_to_look_up() {
    never(CODE_FROM_TEXT).check(PROGRAM);
  }

  @Test
  void no_text_decides_which_kind_of_object_is_made() {
    never(ANY_OBJECT).check(PROGRAM);
  }

  @Test
  void no_form_is_bound_to_an_object_by_the_names_of_its_fields() {
    never(BINDING).check(PROGRAM);
    noClasses().should(beAnnotatedWith(ModelAttribute.class)).check(PROGRAM);
    assertThat(
            PROGRAM.stream()
                .flatMap(type -> type.getMethods().stream())
                .flatMap(method -> method.getParameters().stream())
                .filter(parameter -> parameter.isAnnotatedWith(ModelAttribute.class)))
        .isEmpty();
  }

  @Test
  void no_memory_is_reached_past_the_language() {
    never(OUTSIDE_MEMORY).check(PROGRAM);
    assertThat(
            PROGRAM.stream()
                .flatMap(type -> type.getMethods().stream())
                .filter(method -> method.getModifiers().contains(JavaModifier.NATIVE)))
        .isEmpty();
  }

  /** The third asks the server that it has started itself, on this machine. */
  @Test
  void only_the_time_source_and_the_provider_are_talked_to() {
    assertThat(callers(CONNECTION).map(ClosedWaysTest::outermost).distinct())
        .containsExactlyInAnyOrder("TimeSource", "Provider", "WarmUpVerb");
  }

  @Test
  void nobody_decides_which_certificates_are_right() {
    never(TRUST).check(PROGRAM);
  }

  @Test
  void what_nobody_may_guess_comes_from_the_secure_source() {
    noClasses()
        .that()
        .resideInAnyPackage(
            "rungwise.web..",
            "rungwise.app..",
            "rungwise.store..",
            "rungwise.clinic.people..",
            "rungwise.clinic.factor..",
            "rungwise.clinic.words..")
        .should()
        .accessTargetWhere(is(GUESSABLE))
        .check(PROGRAM);
  }

  @Test
  void no_page_opens_a_file() {
    noClasses()
        .that()
        .resideInAnyPackage("rungwise.web..", "rungwise.clinic..")
        .should()
        .accessTargetWhere(is(FILES))
        .check(PROGRAM);
  }

  @Test
  void templates_are_those_that_were_compiled_into_the_program() {
    never(TEMPLATES).check(PROGRAM);
  }

  @Test
  void statements_are_written_as_texts_by_the_keeper_of_the_database_alone() {
    noClasses()
        .that()
        .resideOutsideOfPackages("rungwise.store.database..")
        .should()
        .accessTargetWhere(withTypes(STATEMENTS))
        .check(PROGRAM);
  }

  @Test
  void only_verbs_and_what_runs_without_pages_write_to_the_terminal() {
    noClasses()
        .that()
        .resideInAnyPackage(
            "rungwise.web..", "rungwise.clinic..", "rungwise.store..", "rungwise.files..", SERVER)
        .should()
        .accessTargetWhere(is(PRINTED))
        .check(PROGRAM);
  }

  private static Stream<JavaClass> callers(Pattern way) {
    Predicate<JavaAccess<?>> isThat = is(way);
    return PROGRAM.stream().filter(type -> type.getAccessesFromSelf().stream().anyMatch(isThat));
  }

  private static String outermost(JavaClass type) {
    return type.getEnclosingClass().map(ClosedWaysTest::outermost).orElseGet(type::getSimpleName);
  }

  /** What the rules must see. */
  static final class Offender {
    private Offender() {}

    static Object offend(String text, java.io.ObjectInputStream in) throws Exception {
      new java.net.Socket(text, new Random().nextInt()).close();
      java.nio.file.Files.delete(java.nio.file.Path.of(text));
      return in.readObject() == null ? Class.forName(text) : text;
    }
  }

  @Test
  void the_rules_see_a_class_that_goes_these_ways() {
    var offender = new ClassFileImporter().importClasses(Offender.class);

    assertThat(
            Stream.of(CODE_FROM_TEXT, ANY_OBJECT, CONNECTION, GUESSABLE, FILES)
                .map(way -> never(way).evaluate(offender).hasViolation()))
        .containsOnly(true);
    assertThat(STATEMENTS.matcher("java.sql.Statement.execute(java.lang.String)").find()).isTrue();
  }
}
