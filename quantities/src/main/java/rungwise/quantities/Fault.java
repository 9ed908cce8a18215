package rungwise.quantities;

/**
 * One thing wrong with something a person wrote. Where it belongs is its field alone: no reader
 * finds that by the words.
 *
 * @param field the token of the field it is about; empty if it is about the whole
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

  /** The same at a field, unless it is at one already. */
  public Fault at(String otherwise) {
    return field.isEmpty() ? new Fault(otherwise, text) : this;
  }
}
