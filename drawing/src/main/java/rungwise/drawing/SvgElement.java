package rungwise.drawing;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * One element of a drawing. Looks are given by presentation attributes and class names, never by a
 * style attribute, so that a page may forbid inline styles; every text and value is escaped.
 *
 * @param attributes already written out, in the order in which they were given
 * @param content the inner elements or the text, already written out
 */
public record SvgElement(String name, List<String> attributes, String content) {

  /** Coordinates carry thousandths: finer than any screen, and the same text on any machine. */
  private static final int DECIMALS = 3;

  private static final Pattern NOT_IN_XML = Pattern.compile("[\\p{Cc}\\p{Cs}\uFFFE\uFFFF]");

  /** What is written as it is, beside letters and digits. */
  private static final String PLAIN = " -.,:;()/%#_";

  /** Up to here a whole number is written without a look at its decimals. */
  private static final double LARGEST_WHOLE = 1e9;

  public SvgElement {
    attributes = List.copyOf(attributes);
  }

  public static SvgElement of(String name) {
    return new SvgElement(name, List.of(), "");
  }

  public SvgElement with(String attribute, String value) {
    return withWritten(attribute, escaped(value));
  }

  public SvgElement with(String attribute, double value) {
    return withWritten(attribute, number(value));
  }

  private SvgElement withWritten(String attribute, String value) {
    var more = new ArrayList<>(attributes);
    more.add(" " + attribute + "=\"" + value + "\"");
    return new SvgElement(name, more, content);
  }

  public SvgElement saying(String text) {
    return new SvgElement(name, attributes, escaped(text));
  }

  public SvgElement holding(List<SvgElement> inner) {
    String lines = inner.stream().map(SvgElement::toString).collect(Collectors.joining("\n"));
    return new SvgElement(name, attributes, "\n" + lines + "\n");
  }

  static String number(double value) {
    if (value == Math.rint(value) && Math.abs(value) <= LARGEST_WHOLE) {
      return Long.toString((long) value);
    }
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(DECIMALS, RoundingMode.HALF_EVEN);
    return rounded.signum() == 0 ? "0" : rounded.stripTrailingZeros().toPlainString();
  }

  /** Text that is safe inside an element and an attribute; XML takes no control characters. */
  private static String escaped(String text) {
    return text.chars().allMatch(SvgElement::isPlain) ? text : withEscapes(text);
  }

  private static boolean isPlain(int character) {
    return Character.isLetterOrDigit(character) || PLAIN.indexOf(character) >= 0;
  }

  private static String withEscapes(String text) {
    return NOT_IN_XML
        .matcher(text)
        .replaceAll(" ")
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;")
        .replace("'", "&#39;");
  }

  /** The element as XML. */
  @Override
  public String toString() {
    String start = "<" + name + String.join("", attributes);
    return content.isEmpty() ? start + "/>" : start + ">" + content + "</" + name + ">";
  }
}
