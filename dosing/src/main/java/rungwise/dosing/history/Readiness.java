package rungwise.dosing.history;

import java.util.EnumSet;
import java.util.Set;
import java.util.stream.Collectors;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Preparation;

/** What must be on record before a man injects at home. */
public enum Readiness {
  TEACH_BACK("he has shown that he can draw up and inject"),
  SUPERVISED_INJECTION("he or his partner has injected once under supervision"),
  EMERGENCY_PLAN("hospital, after-hours number and transport are agreed"),
  OFF_LABEL_CONSENT("he has agreed to a mixture that no label covers");

  private final String words;

  Readiness(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }

  /** Everything that a preparation asks for: no label covers anything but alprostadil alone. */
  public static Set<Readiness> neededFor(Preparation preparation) {
    return preparation.isOnly(Component.ALPROSTADIL)
        ? EnumSet.complementOf(EnumSet.of(OFF_LABEL_CONSENT))
        : EnumSet.allOf(Readiness.class);
  }

  /** What is needed and not in a set, in words. */
  public static String missing(Preparation preparation, Set<Readiness> onRecord) {
    Set<Readiness> missing = neededFor(preparation);
    missing.removeAll(onRecord);
    return missing.isEmpty()
        ? ""
        : missing.stream().map(Readiness::words).collect(Collectors.joining("; "));
  }
}
