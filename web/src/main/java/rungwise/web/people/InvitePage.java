package rungwise.web.people;

import java.util.Set;
import rungwise.clinic.people.AccountFields;
import rungwise.clinic.people.Role;
import rungwise.web.page.Choice;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/** The form for a new account as shown. */
public record InvitePage(Field fullName, Field signInName, Choice roles, Faults faults) {

  static InvitePage of(String fullName, String signInName, Set<Role> roles, Faults faults) {
    return new InvitePage(
        Field.of(Field.Kind.TEXT, AccountFields.FULL_NAME, "Full name")
            .withHint("As colleagues know this person, such as Ana Ruiz.")
            .withValue(fullName)
            .withFaults(faults),
        Field.of(Field.Kind.TEXT, AccountFields.SIGN_IN_NAME, "Sign-in name")
            .withHint(
                "3 to 40 lower-case letters, digits, dots or dashes, such as ana.ruiz. It cannot be"
                    + " changed later.")
            .withValue(signInName)
            .withFaults(faults),
        RoleChoice.of(roles).withFaults(faults),
        faults);
  }
}
