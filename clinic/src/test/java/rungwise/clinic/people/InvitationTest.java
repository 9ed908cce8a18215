package rungwise.clinic.people;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;

final class InvitationTest {

  private static final Duration MILLISECOND = Duration.ofMillis(1);

  private final PeopleWorld world = new PeopleWorld();
  private final People people = world.people;
  private final Account lea = world.administrator();

  @Test
  void an_invited_person_sets_a_password_and_signs_in() {
    Invitation invitation = world.invited(lea, "ana.ruiz", Role.PRESCRIBER);

    assertThat(people.authenticate("ana.ruiz", PeopleWorld.PASSWORD)).isEmpty();
    people
        .accept(invitation.code().text(), "ana.ruiz", Optional.empty(), PeopleWorld.PASSWORD)
        .orThrow();

    assertThat(people.authenticate("ana.ruiz", PeopleWorld.PASSWORD))
        .contains(invitation.account().withState(AccountState.ACTIVE));
  }

  @Test
  void a_code_may_be_typed_in_small_letters_without_dashes_and_with_look_alikes() {
    Invitation invitation = world.invited(lea, "ana.ruiz", Role.PRESCRIBER);
    String typed =
        " "
            + invitation.code().text().toLowerCase(Locale.ROOT).replace("-", "").replace('0', 'o')
            + " ";

    var accepted = people.accept(typed, "ana.ruiz", Optional.empty(), PeopleWorld.PASSWORD);

    assertThat(accepted.faults()).isEmpty();
  }

  @Test
  void an_invitation_ends_after_exactly_7_days() {
    Invitation inTime = world.invited(lea, "ana.ruiz", Role.PRESCRIBER);
    Invitation tooLate = world.invited(lea, "zoe", Role.AUDITOR);

    world.pass(Duration.ofDays(7).minus(MILLISECOND));
    var early =
        people.accept(inTime.code().text(), "ana.ruiz", Optional.empty(), PeopleWorld.PASSWORD);
    world.pass(MILLISECOND);
    var late = people.accept(tooLate.code().text(), "zoe", Optional.empty(), PeopleWorld.PASSWORD);

    assertThat(early.faults()).isEmpty();
    assertThat(late.faults()).hasSize(1).first().asString().contains("7 days");
  }

  @Test
  void the_code_of_one_person_does_not_open_the_account_of_another() {
    Invitation ana = world.invited(lea, "ana.ruiz", Role.PRESCRIBER);
    world.invited(lea, "zoe", Role.AUDITOR);

    var stolen = people.accept(ana.code().text(), "zoe", Optional.empty(), PeopleWorld.PASSWORD);

    assertThat(stolen.faults()).hasSize(1);
  }

  @Test
  void only_an_active_administrator_invites() {
    Account ana = world.active(lea, "ana.ruiz", Role.PRESCRIBER, Role.PROGRAMME_LEAD);
    Account invited = world.invited(lea, "second", Role.ADMINISTRATOR).account();
    AccountId nobody = AccountId.of(new UUID(9, 9));

    for (AccountId actor : Set.of(ana.id(), invited.id(), nobody, AccountId.PROGRAM)) {
      var refused = people.invite(actor, "eve", "Eve", Set.of(Role.ADMINISTRATOR));

      assertThat(refused.faults()).hasSize(1).first().asString().contains("administrator");
    }
    assertThat(people.list()).hasSize(3);
  }

  @Test
  void every_fault_of_an_invitation_is_told_at_once() {
    var refused = people.invite(lea.id(), "X", "  ", Set.of());

    assertThat(refused.faults()).hasSize(3);
  }

  @Test
  void a_taken_name_is_told_together_with_the_other_faults() {
    var refused = people.invite(lea.id(), "lea.lead", "Two\nlines", Set.of(Role.AUDITOR));

    assertThat(String.join("\n", refused.faults()))
        .contains("\"lea.lead\" is taken")
        .contains("nobody can see");
  }

  @Test
  void a_new_code_sets_a_new_password_and_ends_the_old_one_at_once() {
    Account ana = world.active(lea, "ana.ruiz", Role.PRESCRIBER);
    Invitation renewed = people.newCode(lea.id(), ana.id()).orThrow();
    String changed = "eight loud orange doors";

    var before = people.authenticate("ana.ruiz", PeopleWorld.PASSWORD);
    people.accept(renewed.code().text(), "ana.ruiz", Optional.empty(), changed).orThrow();

    assertThat(before).isEmpty();
    assertThat(people.authenticate("ana.ruiz", PeopleWorld.PASSWORD)).isEmpty();
    assertThat(people.authenticate("ana.ruiz", changed)).contains(ana);
  }

  @Test
  void a_deactivated_account_signs_in_only_after_a_new_code() {
    Account ana = world.active(lea, "ana.ruiz", Role.PRESCRIBER);
    people.deactivate(lea.id(), ana.id()).orThrow();

    var whileDeactivated = people.authenticate("ana.ruiz", PeopleWorld.PASSWORD);
    Invitation again = people.newCode(lea.id(), ana.id()).orThrow();
    var invited = people.authenticate("ana.ruiz", PeopleWorld.PASSWORD);
    people
        .accept(again.code().text(), "ana.ruiz", Optional.empty(), PeopleWorld.PASSWORD)
        .orThrow();

    assertThat(whileDeactivated).isEmpty();
    assertThat(invited).isEmpty();
    assertThat(people.authenticate("ana.ruiz", PeopleWorld.PASSWORD)).contains(ana);
  }

  @Test
  void deactivating_also_ends_an_open_invitation() {
    Invitation open = world.invited(lea, "ana.ruiz", Role.PRESCRIBER);
    people.deactivate(lea.id(), open.account().id()).orThrow();

    var late =
        people.accept(open.code().text(), "ana.ruiz", Optional.empty(), PeopleWorld.PASSWORD);

    assertThat(late.faults()).hasSize(1);
  }
}
