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
 * @param range what may be typed, in smallest units
 */
record AmountFormat(
    String kind,
    String example,
    Map<String, Integer> units,
    Map<String, String> refusals,
    Range range) {

  /**
   * What may be typed. The upper end is far above any real amount; it is there so that a slip of
   * the hand is told at once and no later product can leave the range of a long.
   *
   * @param least the smallest count of smallest units, inclusive
   * @param most the largest count of smallest units, inclusive
   */
  record Range(long least, long most) {}

  /** A spelling of a number that is refused, and why. */
  private record Misspelling(Pattern spelling, String why) {}

  private static final int TEN = 10;
  private static final int GROUP = 3;
  private static final int LONGEST_TEXT = 40;
  private static final int DIGITS_INSIDE_A_LONG = 18;

  private static final Pattern ANY_SPACE = Pattern.compile("[\\p{Z}\\s]");
  private static final Pattern UNSEEN = Pattern.compile("\\p{C}");
  private static final Pattern TYPED = Pattern.compile("([^\\p{L}%]*)(.*)", Pattern.DOTALL);
  private static final Pattern NUMBER = Pattern.compile("(0|[1-9][0-9]*)(?:\\.([0-9]+))?");
  private static final Pattern NAKED_POINT = Pattern.compile("\\.[0-9]+");
  private static final Pattern EXPONENT = Pattern.compile("[0-9.]+[eE][-+]?[0-9]+.*");
  private static final Pattern ZEROS_AT_THE_END = Pattern.compile("0+$");

  private static final List<Misspelling> MISSPELLINGS =
      List.of(
          new Misspelling(Pattern.compile(".* .*"), "there is a space inside the number"),
          new Misspelling(Pattern.compile("[-+\u2212\u2013].*"), "leave out the sign"),
          new Misspelling(
              Pattern.compile("[0-9.]*,[0-9.,]*"),
              "write a point, not a comma, and no comma between thousands"),
          new Misspelling(
              Pattern.compile("0[0-9]+(\\.[0-9]*)?"), "leave out the zeros at the front"),
          new Misspelling(
              Pattern.compile("[0-9]+\\."),
              "write a digit after the point, or leave the point out"),
          new Misspelling(
              Pattern.compile("[0-9]+/[0-9]+"), "write a number with a point, not a fraction"));

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
    String usualUnit = silentUnit.orElseGet(() -> units.keySet().iterator().next());
    if (given.length() > LONGEST_TEXT) {
      return refuse(given, usualUnit, "it is longer than any amount");
    }
    String text = ANY_SPACE.matcher(given).replaceAll(" ").strip();
    if (text.isEmpty()) {
      return refuse(given, usualUnit, "nothing was entered");
    }
    if (EXPONENT.matcher(text).matches()) {
      return refuse(given, usualUnit, "powers of ten are not read");
    }
    var typed = TYPED.matcher(text);
    if (!typed.matches()) {
      throw new IllegalStateException("bug: the pattern takes any text");
    }
    String number = typed.group(1).strip();
    String word = typed.group(2).strip();
    if (number.isEmpty()) {
      return refuse(given, usualUnit, "the number is missing");
    }
    if (word.isEmpty()) {
      return silentUnit
          .map(unit -> readNumber(given, number, unit))
          .orElseGet(() -> refuse(given, usualUnit, "the unit is missing"));
    }
    return units.keySet().stream()
        .filter(word::equalsIgnoreCase)
        .findFirst()
        .map(unit -> readNumber(given, number, unit))
        .orElseGet(() -> refuse(given, usualUnit, whyNotTheUnit(word)));
  }

  private String whyNotTheUnit(String word) {
    return Optional.ofNullable(refusals.get(word.toLowerCase(Locale.ROOT)))
        .orElse("\"" + shown(word) + "\" is not a unit that is read here");
  }

  private Reading<Long> readNumber(String given, String number, String unit) {
    if (NAKED_POINT.matcher(number).matches()) {
      return refuse(given, unit, "write a zero before the point, " + withUnit("0" + number, unit));
    }
    var matcher = NUMBER.matcher(number);
    if (!matcher.matches()) {
      return refuse(given, unit, whyNotTheNumber(number));
    }
    String whole = matcher.group(1);
    String typedFraction = Optional.ofNullable(matcher.group(2)).orElse("");
    String fraction = ZEROS_AT_THE_END.matcher(typedFraction).replaceFirst("");
    int places = placesOf(unit);
    if (fraction.length() > places) {
      return refuse(given, unit, "it has more decimal places than can be kept");
    }
    String digits = whole + fraction + "0".repeat(places - fraction.length());
    if (whole.length() + places > DIGITS_INSIDE_A_LONG || Long.parseLong(digits) > range.most) {
      String most = print(range.most, unit);
      return refuse(given, unit, "it is too large, the most that is read is " + most);
    }
    long smallest = Long.parseLong(digits);
    if (smallest < range.least) {
      return refuse(given, unit, "it must be more than 0");
    }
    if (fraction.equals(typedFraction)) {
      return Reading.of(smallest);
    }
    String plain = fraction.isEmpty() ? whole : whole + "." + fraction;
    return new Reading.Read<>(smallest, List.of(noticeOfZeros(given, withUnit(plain, unit))));
  }

  private static String whyNotTheNumber(String number) {
    return MISSPELLINGS.stream()
        .filter(misspelling -> misspelling.spelling.matcher(number).matches())
        .map(Misspelling::why)
        .findFirst()
        .orElse("write it with the digits 0 to 9 and at most one point");
  }

  private static String noticeOfZeros(String given, String understood) {
    return "\""
        + shown(given)
        + "\" was read as "
        + understood
        + ": leave out zeros at the end, because a missed point makes ten times as much";
  }

  private Reading<Long> refuse(String given, String unit, String why) {
    return Reading.refused(
        "\""
            + shown(given)
            + "\" is not "
            + kind
            + ": "
            + why
            + "; enter digits with at most "
            + placesOf(unit)
            + (placesOf(unit) == 1 ? " decimal place" : " decimal places")
            + ", such as "
            + withUnit(example, unit));
  }

  private static String withUnit(String number, String unit) {
    return unit.isEmpty() ? number : number + " " + unit;
  }

  /** What was typed, short enough for a message and with nothing in it that acts on a screen. */
  private static String shown(String given) {
    String start = given.length() > LONGEST_TEXT ? given.substring(0, LONGEST_TEXT) : given;
    return UNSEEN.matcher(start).replaceAll("?") + (start.equals(given) ? "" : "...");
  }

  private int placesOf(String unit) {
    return Optional.ofNullable(units.get(unit)).orElseThrow();
  }

  /** Prints a count of smallest units: no trailing zero, no naked point, thousands by comma. */
  String print(long smallest, String unit) {
    return withUnit(grouped(plain(smallest, placesOf(unit))), unit);
  }

  /** Puts a comma between the thousands of a plain number. */
  static String grouped(String plain) {
    int point = plain.indexOf('.');
    int end = point < 0 ? plain.length() : point;
    var text = new StringBuilder(plain);
    for (int comma = end - GROUP; comma > 0; comma -= GROUP) {
      text.insert(comma, ',');
    }
    return text.toString();
  }

  /**
   * A count of smallest units with its point moved, as it may be typed: no trailing zero. Built by
   * hand, because every verdict prints amounts and patterns would take most of the time of advice.
   */
  static String plain(long smallest, int places) {
    long unit = 1;
    for (int place = 0; place < places; place++) {
      unit *= TEN;
    }
    var text = new StringBuilder(Long.toString(smallest / unit));
    long rest = smallest % unit;
    if (rest != 0) {
      text.append('.');
    }
    while (rest != 0) {
      unit /= TEN;
      text.append(rest / unit);
      rest %= unit;
    }
    return text.toString();
  }
}
