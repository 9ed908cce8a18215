package rungwise.checks.reading;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.ToIntFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Sentences of one language, counted. A sentence ends at a full stop, a question mark or an
 * exclamation mark before a space or the end. A number counts as the words in which it is spoken,
 * digit by digit where it is no whole number up to 99; a unit counts as its word. A term of the
 * committed list still counts as a word, as one of two syllables.
 */
public enum Prose {
  ENGLISH(
      "en",
      Syllables::english,
      Map.of(
          "mL",
          "milliliters",
          "mm",
          "millimeters",
          "mg",
          "milligrams",
          "mcg",
          "micrograms",
          "U",
          "you",
          "ED",
          "E D"),
      List.of(
          "zero",
          "one",
          "two",
          "three",
          "four",
          "five",
          "six",
          "seven",
          "eight",
          "nine",
          "ten",
          "eleven",
          "twelve",
          "thirteen",
          "fourteen",
          "fifteen",
          "sixteen",
          "seventeen",
          "eighteen",
          "nineteen"),
      List.of("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"),
      " ",
      "point"),
  SPANISH(
      "es",
      Syllables::spanish,
      Map.of("mL", "mililitros", "mm", "milímetros", "mg", "miligramos", "mcg", "microgramos"),
      List.of(
          "cero",
          "uno",
          "dos",
          "tres",
          "cuatro",
          "cinco",
          "seis",
          "siete",
          "ocho",
          "nueve",
          "diez",
          "once",
          "doce",
          "trece",
          "catorce",
          "quince",
          "dieciséis",
          "diecisiete",
          "dieciocho",
          "diecinueve"),
      List.of(
          "veinte", "treinta", "cuarenta", "cincuenta", "sesenta", "setenta", "ochenta", "noventa"),
      " y ",
      "punto");

  private static final Pattern END = Pattern.compile("(?<=[.?!])\\s+");
  private static final Pattern NUMBER = Pattern.compile("\\d+(?:\\.\\d+)?");
  private static final Pattern WORD = Pattern.compile("\\p{L}+(?:['’-]\\p{L}+)*");
  private static final int TERM_SYLLABLES = 2;
  private static final int LONG = 3;
  private static final int TEN = 10;

  private final String tag;
  private final ToIntFunction<String> syllables;
  private final Map<String, String> units;
  private final List<String> small;
  private final List<String> tens;
  private final String between;
  private final String point;

  Prose(
      String tag,
      ToIntFunction<String> syllables,
      Map<String, String> units,
      List<String> small,
      List<String> tens,
      String between,
      String point) {
    this.tag = tag;
    this.syllables = syllables;
    this.units = units;
    this.small = small;
    this.tens = tens;
    this.between = between;
    this.point = point;
  }

  /** What is counted in lines, each of one or more sentences, after the list of terms or raw. */
  public Tally count(List<String> lines, boolean isAfterList) {
    Set<String> terms = isAfterList ? unavoidable() : Set.of();
    return lines.stream()
        .flatMap(line -> sentences(line).stream())
        .map(sentence -> count(sentence, terms))
        .reduce(new Tally(0, 0, 0, 0), Tally::and);
  }

  private Tally count(String sentence, Set<String> terms) {
    int all = 0;
    int longOnes = 0;
    List<String> words = words(sentence);
    for (String word : words) {
      int count =
          terms.contains(word.toLowerCase(Locale.ROOT))
              ? TERM_SYLLABLES
              : syllables.applyAsInt(word);
      all += count;
      longOnes += count >= LONG ? 1 : 0;
    }
    return new Tally(1, words.size(), all, longOnes);
  }

  private static List<String> sentences(String line) {
    return Stream.of(END.split(line.strip(), -1))
        .filter(part -> WORD.matcher(part).find() || NUMBER.matcher(part).find())
        .toList();
  }

  private List<String> words(String sentence) {
    String spoken = NUMBER.matcher(sentence).replaceAll(found -> " " + spoken(found.group()) + " ");
    var words = new ArrayList<String>();
    Matcher found = WORD.matcher(spoken);
    while (found.find()) {
      String word = units.getOrDefault(found.group(), found.group());
      words.addAll(List.of(word.split(" ", -1)));
    }
    return words;
  }

  private String spoken(String number) {
    boolean isPlain = number.length() <= 2 && (number.length() == 1 || number.charAt(0) != '0');
    if (!isPlain) {
      return number
          .chars()
          .mapToObj(sign -> sign == '.' ? point : small.get(Character.digit(sign, TEN)))
          .collect(Collectors.joining(" "));
    }
    int value = Integer.parseInt(number);
    if (value < small.size()) {
      return small.get(value);
    }
    String whole = tens.get(value / TEN - 2);
    return value % TEN == 0 ? whole : whole + between + small.get(value % TEN);
  }

  /** The terms for which there is no plain word. */
  public Set<String> unavoidable() {
    return lines("unavoidable-" + tag).collect(Collectors.toSet());
  }

  static Stream<String> lines(String name) {
    try (InputStream in = Prose.class.getResourceAsStream("/reading/" + name + ".txt")) {
      String text = new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
      return text.lines().filter(line -> !line.startsWith("#")).toList().stream();
    } catch (IOException e) {
      throw new UncheckedIOException("bug: " + name + " cannot be read", e);
    }
  }
}
