package rungwise.web.page;

/**
 * One thing wrong with a form.
 *
 * @param field name of the field it belongs to; empty if it belongs to the whole form
 * @param text what was given, what is accepted and what to do
 */
public record Fault(String field, String text) {

  public Fault {
    if (text.isBlank()) {
      throw new IllegalArgumentException("bug: a fault without words");
    }
  }

  /** A fault of the form as a whole. */
  public static Fault ofForm(String text) {
    return new Fault("", text);
  }
}
