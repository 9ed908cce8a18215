package rungwise.web.people;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import rungwise.clinic.people.AccountFields;
import rungwise.clinic.people.Role;
import rungwise.web.page.Choice;

/** Roles as check boxes, and what was ticked as roles. */
final class RoleChoice {

  private RoleChoice() {}

  static Choice of(Set<Role> picked) {
    List<Choice.Option> options =
        Arrays.stream(Role.values())
            .map(
                role ->
                    new Choice.Option(
                        role.token(), role.words(), role.task(), picked.contains(role)))
            .toList();
    return Choice.of(AccountFields.ROLES, "Roles", options)
        .withHint("One person may have several. Each opens the pages it needs.");
  }

  /** The roles whose tokens were sent; what is not a role is left out, since no page offers it. */
  static Set<Role> read(List<String> tokens) {
    return Arrays.stream(Role.values())
        .filter(role -> tokens.contains(role.token()))
        .collect(Collectors.toCollection(() -> EnumSet.noneOf(Role.class)));
  }
}
