package rungwise.clinic.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import rungwise.clinic.people.SignInAttempt.Outcome;

final class SigningInTest {

  private final PeopleWorld world = new PeopleWorld();
  private final People people = world.people;
  private final Account lea = world.administrator();

  private int comparisonsOf(Runnable work) {
    int before = world.hashing.compared();
    work.run();
    return world.hashing.compared() - before;
  }

  @Test
  void a_wrong_password_signs_nobody_in() {
    assertThat(people.authenticate("lea.lead", "seven quiet green lamp")).isEmpty();
    assertThat(people.authenticate("lea.lead", "")).isEmpty();
  }

  @Test
  void every_sign_in_costs_one_comparison_whoever_is_named() {
    world.invited(lea, "invited", Role.AUDITOR);
    Account gone = world.active(lea, "gone", Role.AUDITOR);
    people.deactivate(lea.id(), gone.id()).orThrow();
    String tooLong = "x".repeat(100_000);

    for (String name : new String[] {"lea.lead", "invited", "gone", "nobody", "Not A Name", ""}) {
      assertThat(comparisonsOf(() -> people.authenticate(name, PeopleWorld.PASSWORD))).isOne();
      assertThat(comparisonsOf(() -> people.authenticate(name, tooLong))).isOne();
    }
  }

  @Test
  void a_code_costs_one_comparison_and_one_fault_whoever_is_named() {
    world.invited(lea, "invited", Role.AUDITOR);
    String wrong = "0000-0000-0000-0000";

    for (String name : new String[] {"lea.lead", "invited", "nobody"}) {
      assertThat(
              comparisonsOf(
                  () ->
                      assertThat(
                              people
                                  .accept(wrong, name, Optional.empty(), PeopleWorld.PASSWORD)
                                  .faults())
                          .hasSize(1)))
          .isOne();
    }
  }

  @Test
  void every_try_is_kept_but_never_a_name_that_nobody_has() {
    people.authenticate("lea.lead", PeopleWorld.PASSWORD);
    people.authenticate("lea.lead", "wrong");
    people.authenticate("seven.quiet.lamps", "wrong");

    assertThat(world.stored.attempts())
        .extracting(SignInAttempt::account, SignInAttempt::outcome)
        .containsExactly(
            tuple(Optional.of(lea.id()), Outcome.SIGNED_IN),
            tuple(Optional.of(lea.id()), Outcome.REFUSED),
            tuple(Optional.empty(), Outcome.REFUSED));
  }

  @Test
  void a_password_typed_with_combining_accents_is_the_same_password() {
    String composed = "caf\u00e9 lampe verte sept";
    String combining = "cafe\u0301 lampe verte sept";
    String code = world.invited(lea, "ana.ruiz", Role.PRESCRIBER).code().text();
    people.accept(code, "ana.ruiz", Optional.empty(), composed).orThrow();

    assertThat(people.authenticate("ana.ruiz", combining)).isPresent();
  }
}
