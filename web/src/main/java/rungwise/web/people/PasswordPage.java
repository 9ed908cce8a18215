package rungwise.web.people;

import rungwise.clinic.people.AccountFields;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/** Changing one's own password as shown; no password is ever sent back. */
public record PasswordPage(Field present, Field wanted, Faults faults) {

  static PasswordPage of(Faults faults) {
    return new PasswordPage(
        Field.of(Field.Kind.SECRET, AccountFields.PRESENT_PASSWORD, "Present password")
            .withAutocomplete("current-password")
            .withFaults(faults),
        Field.of(Field.Kind.SECRET, AccountFields.NEW_PASSWORD, "New password")
            .withHint("At least 12 characters, such as four words in a row.")
            .withAutocomplete("new-password")
            .withFaults(faults),
        faults);
  }
}
