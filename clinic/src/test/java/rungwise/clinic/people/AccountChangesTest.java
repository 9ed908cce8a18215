package rungwise.clinic.people;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;

final class AccountChangesTest {

  private final PeopleWorld world = new PeopleWorld();
  private final People people = world.people;
  private final Account lea = world.administrator();

  @Test
  void changed_roles_count_at_once() {
    Account ana = world.active(lea, "ana.ruiz", Role.PRESCRIBER);

    people.changeRoles(lea.id(), ana.id(), Set.of(Role.NURSE_EDUCATOR)).orThrow();

    Account after = people.find(ana.id()).orElseThrow();
    assertThat(after.may(Role.NURSE_EDUCATOR)).isTrue();
    assertThat(after.may(Role.PRESCRIBER)).isFalse();
  }

  @Test
  void a_deactivated_account_stays_listed_and_may_nothing() {
    Account ana = world.active(lea, "ana.ruiz", Role.PRESCRIBER);

    people.deactivate(lea.id(), ana.id()).orThrow();

    assertThat(people.list()).extracting(Account::fullName).contains(ana.fullName());
    assertThat(people.find(ana.id()).orElseThrow().may(Role.PRESCRIBER)).isFalse();
  }

  @Test
  void the_last_active_administrator_can_neither_leave_nor_change() {
    world.invited(lea, "second", Role.ADMINISTRATOR);

    var deactivated = people.deactivate(lea.id(), lea.id());
    var changed = people.changeRoles(lea.id(), lea.id(), Set.of(Role.AUDITOR));

    assertThat(deactivated.faults()).hasSize(1).first().asString().contains("last");
    assertThat(changed.faults()).hasSize(1).first().asString().contains("last");
    assertThat(people.authenticate("lea.lead", PeopleWorld.PASSWORD)).contains(lea);
  }

  @Test
  void an_administrator_leaves_once_there_is_another() {
    Account second = world.active(lea, "second", Role.ADMINISTRATOR);

    var deactivated = people.deactivate(lea.id(), lea.id());

    assertThat(deactivated.faults()).isEmpty();
    assertThat(people.deactivate(lea.id(), second.id()).faults()).hasSize(1);
  }

  @Test
  void changes_that_make_no_sense_are_refused() {
    Account ana = world.active(lea, "ana.ruiz", Role.PRESCRIBER);
    AccountId nobody = AccountId.of(new UUID(9, 9));

    assertThat(people.changeRoles(lea.id(), ana.id(), Set.of()).faults()).hasSize(1);
    assertThat(people.changeRoles(lea.id(), nobody, Set.of(Role.AUDITOR)).faults()).hasSize(1);
    assertThat(people.deactivate(lea.id(), nobody).faults()).hasSize(1);
    assertThat(people.newCode(lea.id(), nobody).faults()).hasSize(1);
    assertThat(people.deactivate(ana.id(), lea.id()).faults()).hasSize(1);

    people.deactivate(lea.id(), ana.id()).orThrow();
    assertThat(people.deactivate(lea.id(), ana.id()).faults()).hasSize(1);
  }

  @Test
  void every_change_is_kept_with_its_actor() {
    Account ana = world.active(lea, "ana.ruiz", Role.PRESCRIBER);
    people.changeRoles(lea.id(), ana.id(), Set.of(Role.AUDITOR)).orThrow();

    assertThat(world.stored.events())
        .extracting(AccountEvent::kind)
        .containsExactly(
            AccountEvent.Kind.PASSWORD_SET,
            AccountEvent.Kind.ACCOUNT_INVITED,
            AccountEvent.Kind.PASSWORD_SET,
            AccountEvent.Kind.ROLES_CHANGED);
    assertThat(world.stored.events())
        .extracting(AccountEvent::by)
        .containsExactly(AccountId.PROGRAM, lea.id(), ana.id(), lea.id());
  }
}
