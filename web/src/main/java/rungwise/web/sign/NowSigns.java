package rungwise.web.sign;

import rungwise.clinic.sheet.NowView;

/** The shape before the answer to "may he inject now?". */
public final class NowSigns {

  private NowSigns() {}

  public static Sign of(NowView.Sign now) {
    return switch (now) {
      case YES -> Sign.YES;
      case CLINIC_ONLY -> Sign.CLINIC;
      case WAITS -> Sign.WAIT;
      case STOPPED -> Sign.STOP;
    };
  }
}
