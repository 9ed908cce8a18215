package rungwise.checks.architecture;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.lang.ArchRule;
import java.util.Set;
import org.junit.jupiter.api.Test;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/** A fault says where it belongs by its field: no page finds that by how a sentence begins. */
final class FaultsCarryTheirFieldTest {

  /** What gives the words of a fault. */
  private static final Set<String> WORDS = Set.of("text", "faults");

  /** What would look into them; tokens are compared whole, which is no look into words. */
  private static final Set<String> LOOKS =
      Set.of("startsWith", "endsWith", "contains", "indexOf", "matches", "regionMatches");

  private static boolean givesWords(JavaAccess<?> access) {
    JavaClass owner = access.getTargetOwner();
    return WORDS.contains(access.getTarget().getName())
        && (owner.isAssignableTo(Reading.class) || owner.isEquivalentTo(Fault.class));
  }

  private static boolean looksIntoText(JavaAccess<?> access) {
    return access.getTargetOwner().isEquivalentTo(String.class)
        && LOOKS.contains(access.getTarget().getName());
  }

  private static ArchRule noneLooksIntoWords() {
    return noClasses()
        .that(
            describe(
                "read the words of faults",
                (JavaClass type) ->
                    type.getAccessesFromSelf().stream()
                        .anyMatch(FaultsCarryTheirFieldTest::givesWords)))
        .should()
        .accessTargetWhere(describe("looks into a text", FaultsCarryTheirFieldTest::looksIntoText));
  }

  private static JavaClasses web() {
    return Classes.all()
        .that(
            describe(
                "are of the pages",
                (JavaClass type) -> type.getPackageName().startsWith("rungwise.web")));
  }

  @Test
  void no_page_finds_a_field_by_the_words_of_a_fault() {
    noneLooksIntoWords().check(web());
  }

  /** What the rule must see. */
  static final class Offender {
    private Offender() {}

    static String fieldOf(Fault fault) {
      return fault.text().startsWith("The name") ? "name" : "";
    }
  }

  @Test
  void the_rule_sees_a_class_that_does() {
    var offender = new ClassFileImporter().importClasses(Offender.class);

    assertThat(noneLooksIntoWords().evaluate(offender).getFailureReport().getDetails())
        .singleElement()
        .asString()
        .contains("startsWith");
  }
}
