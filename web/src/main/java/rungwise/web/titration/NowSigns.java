package rungwise.web.titration;

import rungwise.clinic.sheet.NowView;
import rungwise.web.page.Sign;

/** The shape before the answer to "may he inject now?". */
public final class NowSigns {

  private NowSigns() {}

  public static Sign of(NowView now) {
    return switch (now.sign()) {
      case YES -> Sign.YES;
      case CLINIC_ONLY -> Sign.CLINIC;
      case WAITS -> Sign.WAIT;
      case STOPPED -> Sign.STOP;
    };
  }
}
