package rungwise.web.access;

import java.time.ZoneId;
import java.util.regex.Pattern;

/**
 * What the pages say of the clinic itself.
 *
 * @param name as it stands at the top of each page
 * @param zone in which times are shown
 */
public record ClinicSign(String name, ZoneId zone) {

  private static final Pattern ACCEPTED = Pattern.compile("[^\\p{C}\\s][^\\p{C}]{0,79}");

  public ClinicSign {
    if (!isAcceptedName(name)) {
      throw new IllegalArgumentException("bug: a clinic name of " + name.length() + " characters");
    }
  }

  /** Whether a name fits at the top of a page: 1 to 80 characters on one line. */
  public static boolean isAcceptedName(String name) {
    return ACCEPTED.matcher(name).matches();
  }
}
