package rungwise.web.text;

import java.util.List;
import rungwise.web.page.HeldField;

/**
 * A form that was sent with characters that nobody can see, as shown.
 *
 * @param action where the form goes when it is sent again
 * @param held the fields that hold none
 * @param texts the fields that held some, without them
 * @param secrets passwords, which are typed again
 */
public record HiddenTextPage(
    String action, List<HeldField> held, List<Text> texts, List<Secret> secrets) {

  /**
   * A field.
   *
   * @param fault which character, and where
   * @param cleaned its text without all such characters
   */
  public record Text(String id, String name, String fault, String cleaned) {

    public boolean isLong() {
      return cleaned.contains("\n");
    }
  }

  /** A field whose content is never shown. */
  public record Secret(String id, String name) {}

  public HiddenTextPage {
    held = List.copyOf(held);
    texts = List.copyOf(texts);
    secrets = List.copyOf(secrets);
  }
}
