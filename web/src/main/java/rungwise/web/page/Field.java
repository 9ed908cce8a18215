package rungwise.web.page;

/**
 * One line a person types into.
 *
 * @param name its name in the form, also its id on the page
 * @param label words above it
 * @param hint what is accepted, with an example; may be empty
 * @param kind what it holds
 * @param autocomplete what the browser may offer, as HTML names it
 * @param value what is in it now; never shown again for a secret
 * @param fault what is wrong with it; empty if nothing is
 * @param filling whether it must be filled
 */
public record Field(
    String name,
    String label,
    String hint,
    Kind kind,
    String autocomplete,
    String value,
    String fault,
    Filling filling) {

  /** Whether a field must be filled. */
  public enum Filling {
    ALWAYS,
    /** Where the hint says so: its answer is needed then. */
    WHERE_SAID,
    AT_WILL
  }

  /** What a field holds: decides the keyboard a telephone offers. */
  public enum Kind {
    TEXT("text", "text"),
    /** An amount: digits and a point. */
    AMOUNT("text", "decimal"),
    /** A whole count. */
    COUNT("text", "numeric"),
    DATE("date", "text"),
    DATE_AND_TIME("datetime-local", "text"),
    /** A password: hidden, and never sent back. */
    SECRET("password", "text");

    private final String type;
    private final String keyboard;

    Kind(String type, String keyboard) {
      this.type = type;
      this.keyboard = keyboard;
    }

    /** The HTML input type. */
    public String type() {
      return type;
    }

    /** The HTML input mode. */
    public String keyboard() {
      return keyboard;
    }
  }

  public Field {
    if (name.isBlank() || label.isBlank()) {
      throw new IllegalArgumentException("bug: a field without a name or a label");
    }
  }

  /** An empty required field without a hint. */
  public static Field of(Kind kind, String name, String label) {
    return new Field(name, label, "", kind, "off", "", "", Filling.ALWAYS);
  }

  public Field withHint(String text) {
    return new Field(name, label, text, kind, autocomplete, value, fault, filling);
  }

  public Field withAutocomplete(String token) {
    return new Field(name, label, hint, kind, token, value, fault, filling);
  }

  public Field withValue(String text) {
    return new Field(name, label, hint, kind, autocomplete, text, fault, filling);
  }

  /** The same with what was typed into it; as it is where it was not part of the form that came. */
  public Field asTyped(Typed typed) {
    return typed.holds(name) ? withValue(typed.text(name)) : this;
  }

  public Field withFaults(Faults faults) {
    return new Field(name, label, hint, kind, autocomplete, value, faults.of(name), filling);
  }

  /** The same that must be filled where its hint says so, and is never called optional. */
  public Field whereSaid() {
    return new Field(name, label, hint, kind, autocomplete, value, fault, Filling.WHERE_SAID);
  }

  /** Whether nothing can be sent without it. */
  public boolean required() {
    return filling == Filling.ALWAYS;
  }

  /** Whether it may stay empty whatever else was answered. */
  public boolean isOptional() {
    return filling == Filling.AT_WILL;
  }

  public Field optional() {
    return new Field(name, label, hint, kind, autocomplete, value, fault, Filling.AT_WILL);
  }

  /** What may be shown in it: nothing for a secret. */
  public String shownValue() {
    return kind == Kind.SECRET ? "" : value;
  }

  /** Ids of the texts that describe it, for aria-describedby; empty if there are none. */
  public String describedBy() {
    return Describing.ids(name, hint, fault);
  }
}
