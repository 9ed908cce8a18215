package rungwise.web.people;

import java.util.List;
import rungwise.quantities.Fault;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/** Changing one's own password as shown; no password is ever sent back. */
public record PasswordPage(Field present, Field wanted, Faults faults) {

  static final String PRESENT = "presentPassword";
  static final String WANTED = "newPassword";
  private static final String ABOUT_PRESENT = "The present password";

  static PasswordPage of(List<String> texts) {
    Faults faults =
        new Faults(
            texts.stream()
                .map(text -> new Fault(text.startsWith(ABOUT_PRESENT) ? PRESENT : WANTED, text))
                .toList());
    return new PasswordPage(
        Field.of(Field.Kind.SECRET, PRESENT, "Present password")
            .withAutocomplete("current-password")
            .withFaults(faults),
        Field.of(Field.Kind.SECRET, WANTED, "New password")
            .withHint("At least 12 characters, such as four words in a row.")
            .withAutocomplete("new-password")
            .withFaults(faults),
        faults);
  }
}
