package rungwise.web.text;

import java.util.List;
import rungwise.web.fault.FaultPages;
import rungwise.web.page.HeldField;

/**
 * A form that no handler was shown, as it may be sent on.
 *
 * @param action where the form goes when it is sent again
 * @param isTooLarge whether it held more than a form may
 * @param held the fields that are sent on as they are
 * @param texts those that are shown to be read or shortened
 * @param secrets passwords, which are typed again
 */
public record SendAgainPage(
    String action,
    boolean isTooLarge,
    List<HeldField> held,
    List<Text> texts,
    List<Secret> secrets) {

  private static final int LONG = 200;

  /**
   * A field.
   *
   * @param faults why it is shown
   * @param cleaned its text without what nobody can see
   */
  public record Text(String id, String name, List<String> faults, String cleaned) {

    public Text {
      faults = List.copyOf(faults);
    }

    public boolean isLong() {
      return cleaned.length() > LONG || cleaned.contains("\n");
    }
  }

  /** A field whose content is never shown. */
  public record Secret(String id, String name) {}

  public SendAgainPage {
    held = List.copyOf(held);
    texts = List.copyOf(texts);
    secrets = List.copyOf(secrets);
  }

  /** How much a form may hold. */
  public int most() {
    return FaultPages.MOST_KIB_OF_A_FORM;
  }
}
