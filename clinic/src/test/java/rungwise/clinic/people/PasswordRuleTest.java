package rungwise.clinic.people;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import org.junit.jupiter.api.Test;

final class PasswordRuleTest {

  private static final String TALL_CHARACTER = "\ud834\udd1e";
  private static final Set<String> NAMES = Set.of("ana.ruiz", "Ana Maria Ruiz");

  private final PasswordRule rule =
      new PasswordRule((password, names) -> names.contains(password), Set.of("Northgate Clinic"));

  @Test
  void from_12_to_128_characters_are_accepted_whatever_they_are() {
    assertThat(rule.faults("kwpfhzmtbvx", NAMES)).hasSize(1);
    assertThat(rule.faults("kwpfhzmtbvxd", NAMES)).isEmpty();
    assertThat(rule.faults("kz".repeat(64), NAMES)).isEmpty();
    assertThat(rule.faults("kz".repeat(64) + "k", NAMES)).hasSize(1);
    assertThat(rule.faults("nine small words here", NAMES)).isEmpty();
  }

  @Test
  void characters_are_counted_as_people_see_them() {
    assertThat(rule.faults(TALL_CHARACTER.repeat(11), NAMES)).hasSize(1);
    assertThat(rule.faults(TALL_CHARACTER.repeat(12), NAMES)).isEmpty();
    assertThat(rule.faults("e\u0301".repeat(12), NAMES)).isEmpty();
    assertThat(rule.faults("e\u0301".repeat(11), NAMES)).hasSize(1);
  }

  @Test
  void
      what_would_be_guessed_is_refused_and_the_names_of_owner_and_clinic_are_said_to_who_guesses() {
    assertThat(rule.faults("Ana Maria Ruiz", NAMES)).singleElement().asString().contains("guessed");
    assertThat(rule.faults("Northgate Clinic", NAMES)).hasSize(1);
    assertThat(rule.faults("Southgate Clinic", NAMES)).isEmpty();
  }

  @Test
  void every_fault_is_told_at_once() {
    assertThat(rule.faults("ana.ruiz", NAMES)).hasSize(2);
  }
}
