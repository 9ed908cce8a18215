package rungwise.clinic.people;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

final class FirstStartTest {

  private final PeopleWorld world = new PeopleWorld();
  private final People people = world.people;

  @Test
  void the_first_code_makes_an_active_administrator() {
    OneTimeCode code = people.firstStart().orElseThrow();

    var made =
        people.accept(code.text(), "lea.lead", Optional.of("Lea Lead"), PeopleWorld.PASSWORD);

    Account lea = made.orThrow();
    assertThat(lea.roles()).isEqualTo(Set.of(Role.ADMINISTRATOR));
    assertThat(lea.isActive()).isTrue();
    assertThat(people.authenticate("lea.lead", PeopleWorld.PASSWORD)).contains(lea);
  }

  @Test
  void the_first_code_does_not_age() {
    OneTimeCode code = people.firstStart().orElseThrow();

    world.pass(Duration.ofDays(400));

    assertThat(
            people
                .accept(code.text(), "lea.lead", Optional.of("Lea Lead"), PeopleWorld.PASSWORD)
                .faults())
        .isEmpty();
  }

  @Test
  void a_second_start_replaces_the_first_code() {
    OneTimeCode first = people.firstStart().orElseThrow();
    OneTimeCode second = people.firstStart().orElseThrow();

    var withFirst =
        people.accept(first.text(), "lea.lead", Optional.of("Lea Lead"), PeopleWorld.PASSWORD);
    var withSecond =
        people.accept(second.text(), "lea.lead", Optional.of("Lea Lead"), PeopleWorld.PASSWORD);

    assertThat(withFirst.faults()).hasSize(1).first().asString().contains("code");
    assertThat(withSecond.faults()).isEmpty();
  }

  @Test
  void there_is_no_first_code_once_there_is_an_account() {
    world.administrator();

    assertThat(people.firstStart()).isEmpty();
  }

  @Test
  void the_first_code_is_used_once() {
    String code = people.firstStart().orElseThrow().text();
    people.accept(code, "lea.lead", Optional.of("Lea Lead"), PeopleWorld.PASSWORD).orThrow();

    var again = people.accept(code, "eve", Optional.of("Eve"), PeopleWorld.PASSWORD);

    assertThat(again.faults()).hasSize(1);
    assertThat(people.list()).hasSize(1);
  }

  @Test
  void only_the_hash_of_the_code_is_kept() {
    OneTimeCode code = people.firstStart().orElseThrow();

    Credential kept = world.stored.find(AccountId.PROGRAM, Credential.Kind.CODE).orElseThrow();

    assertThat(kept.hash()).isNotEqualTo(code.text());
    assertThat(world.hashing.matches(code.text(), kept.hash())).isTrue();
    assertThat(kept.toString()).doesNotContain(kept.hash());
    assertThat(code.toString()).doesNotContain(code.text());
  }

  @Test
  void every_fault_of_the_form_is_told_at_once() {
    people.firstStart();

    var refused = people.accept("0000", "Lea Lead", Optional.empty(), "short");

    assertThat(refused.faults()).hasSize(4);
    assertThat(String.join("\n", refused.faults()))
        .contains("\"Lea Lead\" is not a sign-in name")
        .contains("full name is missing")
        .contains("has 5 characters")
        .contains("code");
  }
}
