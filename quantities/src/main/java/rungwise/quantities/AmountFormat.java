package rungwise.quantities;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * How one kind of amount is typed and printed.
 *
 * <p>Typed numbers are read with a strict pattern of our own, because library parsers also take
 * "1e3", "5f" and digits of other scripts. The published reasons for each refusal are the Joint
 * Commission "Do Not Use" list (trailing zero, naked decimal point, U) and the ISMP list of
 * error-prone abbreviations (cc, the micro sign).
 *
 * @param kind the words for a message, such as "a volume in mL"
 * @param example a number that is right, such as "0.2"
 * @param units accepted unit words, each with the power of ten from it to the smallest unit
 * @param refusals unit words that people write and that are refused, each with what to write
 */
record AmountFormat(
    String kind, String example, Map<String, Integer> units, Map<String, String> refusals) {

  /** More digits than any real amount has; keeps the count of smallest units inside a long. */
  private static final int LONGEST_WHOLE_PART = 6;

  private static final int TEN = 10;
  private static final int GROUP = 3;

  private static final Pattern TYPED = Pattern.compile("([^\\p{L}\\s%]*)[ \\u00A0]?(.*)");
  private static final Pattern NUMBER = Pattern.compile("(0|[1-9][0-9]*)(?:\\.([0-9]+))?");
  private static final Pattern NAKED_POINT = Pattern.compile("\\.[0-9]+");
  private static final Pattern EXPONENT = Pattern.compile("[0-9.]+[eE][-+]?[0-9]+.*");
  private static final Pattern DECIMAL_COMMA = Pattern.compile("[0-9]+,[0-9]+");

  AmountFormat {
    units = new LinkedHashMap<>(units);
    refusals = Map.copyOf(refusals);
  }

  /**
   * Reads an amount that may, but need not, carry its unit.
   *
   * @param unit the unit that is meant where none is written
   */
  Reading<Long> readIn(String unit, String text) {
    return read(text, Optional.of(unit));
  }

  /** Reads an amount that must carry its unit. */
  Reading<Long> read(String text) {
    return read(text, Optional.empty());
  }

  private Reading<Long> read(String given, Optional<String> silentUnit) {
    String text = given.strip();
    if (text.isEmpty()) {
      return refuse(given, "nothing was entered");
    }
    if (EXPONENT.matcher(text).matches()) {
      return refuse(given, "powers of ten are not read");
    }
    var typed = TYPED.matcher(text);
    if (!typed.matches()) {
      return refuse(given, "it is not a number with a unit");
    }
    String number = typed.group(1);
    String word = typed.group(2).strip();
    if (word.isEmpty()) {
      return silentUnit
          .map(unit -> readNumber(given, number, unit))
          .orElseGet(() -> refuse(given, "the unit is missing"));
    }
    String refusal = refusals.get(word.toLowerCase(Locale.ROOT));
    if (refusal != null) {
      return Reading.refused("\"" + given + "\" is not " + kind + ": " + refusal);
    }
    String unit = units.keySet().stream().filter(word::equalsIgnoreCase).findFirst().orElse("");
    if (unit.isEmpty()) {
      return refuse(given, "\"" + word + "\" is not a unit that is read here");
    }
    return readNumber(given, number, unit);
  }

  private Reading<Long> readNumber(String given, String number, String unit) {
    if (NAKED_POINT.matcher(number).matches()) {
      return refuse(given, "write a zero before the point, 0" + number + " " + unit);
    }
    if (DECIMAL_COMMA.matcher(number).matches()) {
      return refuse(given, "write a point, not a comma, and no comma between thousands");
    }
    var matcher = NUMBER.matcher(number);
    if (!matcher.matches()) {
      return refuse(given, "it is not written in plain digits");
    }
    String whole = matcher.group(1);
    String typedFraction = Optional.ofNullable(matcher.group(2)).orElse("");
    String fraction = typedFraction.replaceFirst("0+$", "");
    int places = placesOf(unit);
    if (whole.length() > LONGEST_WHOLE_PART) {
      return refuse(given, "it is too large");
    }
    if (fraction.length() > places) {
      return refuse(given, "it has more decimal places than can be kept");
    }
    long smallest = Long.parseLong(whole + fraction + "0".repeat(places - fraction.length()));
    if (!(smallest > 0)) {
      return refuse(given, "it must be more than 0");
    }
    if (fraction.equals(typedFraction)) {
      return Reading.of(smallest);
    }
    String plain = fraction.isEmpty() ? whole : whole + "." + fraction;
    return new Reading.Read<>(
        smallest,
        List.of(
            "\""
                + given
                + "\" was read as "
                + plain
                + " "
                + unit
                + ": leave out zeros at the end, because a missed point makes ten times as much"));
  }

  private Reading<Long> refuse(String given, String why) {
    String unit = units.keySet().iterator().next();
    return Reading.refused(
        "\""
            + given
            + "\" is not "
            + kind
            + ": "
            + why
            + "; enter digits with at most "
            + placesOf(unit)
            + " decimal places, such as "
            + example
            + " "
            + unit);
  }

  private int placesOf(String unit) {
    return Optional.ofNullable(units.get(unit)).orElseThrow();
  }

  /** Prints a count of smallest units with that unit: no trailing zero, no naked point. */
  String print(long smallest, String unit) {
    return plain(smallest, placesOf(unit)) + " " + unit;
  }

  /**
   * Prints a count of smallest units with its point moved; thousands with a comma. Built by hand,
   * because every verdict prints amounts and patterns would take most of the time of advice.
   */
  static String plain(long smallest, int places) {
    long unit = 1;
    for (int place = 0; place < places; place++) {
      unit *= TEN;
    }
    var text = new StringBuilder(Long.toString(smallest / unit));
    for (int comma = text.length() - GROUP; comma > 0; comma -= GROUP) {
      text.insert(comma, ',');
    }
    long rest = smallest % unit;
    if (rest == 0) {
      return text.toString();
    }
    text.append('.');
    while (rest != 0) {
      unit /= TEN;
      text.append(rest / unit);
      rest %= unit;
    }
    return text.toString();
  }
}
