package rungwise.web.access;

import java.time.ZoneId;

/**
 * What the pages say of the clinic itself.
 *
 * @param name as it stands at the top of each page
 * @param zone in which times are shown
 */
public record ClinicSign(String name, ZoneId zone) {

  private static final int LONGEST_NAME = 80;

  public ClinicSign {
    if (name.isBlank() || name.length() > LONGEST_NAME) {
      throw new IllegalArgumentException("bug: a clinic name of " + name.length() + " characters");
    }
  }
}
