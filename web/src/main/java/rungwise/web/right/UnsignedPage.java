package rungwise.web.right;

import java.util.List;
import rungwise.web.page.HeldField;

/**
 * Says that nothing is signed while it is not known what time it is, and holds what was entered.
 *
 * @param why what is wrong with the clock
 * @param isAsked whether a person's word for date and time may mend it
 * @param action where the form goes when it is sent again
 * @param held all its fields
 */
public record UnsignedPage(String why, boolean isAsked, String action, List<HeldField> held) {

  public UnsignedPage {
    held = List.copyOf(held);
  }
}
