package rungwise.checks.reading;

import java.util.Locale;
import java.util.Map;
import java.util.function.ToIntFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Syllables of a word: in English by vowel groups, after a list of words counted by hand; in
 * Spanish by the rules of its spelling.
 */
public final class Syllables {

  private static final Map<String, Integer> BY_HAND = table("syllables-en");
  private static final Pattern GROUP = Pattern.compile("[aeiouy]+");
  private static final Pattern SOFTENED = Pattern.compile("tia|cia|tio|sio|cio|gio|qua|gua");
  private static final Pattern HIATUS = Pattern.compile("i(?:a(?!l$)|o(?!n)|um)|eo(?!u)|ua(?!r)");
  private static final Pattern SILENT_ES = Pattern.compile("[^aeiouy]es$");
  private static final Pattern SPOKEN_ES = Pattern.compile("(s|x|z|ch|sh|ce|ge|c|g)es$|les$");
  private static final Pattern SILENT_ED = Pattern.compile("[^aeiouytd]ed$");
  private static final Pattern SILENT_E = Pattern.compile("[^aeiouyl]e$|[aeiouy]le$");

  private Syllables() {}

  static Map<String, Integer> table(String name) {
    return Prose.lines(name)
        .map(line -> line.split("=", -1))
        .collect(Collectors.toMap(parts -> parts[0], parts -> Integer.valueOf(parts[1])));
  }

  /** Of an English word; of one with hyphens the sum of its parts. */
  public static int english(String written) {
    String word = written.toLowerCase(Locale.ROOT).replaceAll("^['’-]+|['’-]+$", "");
    Integer known = BY_HAND.get(word);
    if (known != null) {
      return known;
    }
    if (word.contains("-")) {
      return sum(word, Syllables::english);
    }
    String plain = withoutSilent(word.replaceAll("[^a-z]", ""));
    if (plain.isEmpty()) {
      return 1;
    }
    long count = count(GROUP, plain) + count(HIATUS, SOFTENED.matcher(plain).replaceAll("x"));
    return (int) Math.max(1, count);
  }

  private static String withoutSilent(String word) {
    if (SILENT_ES.matcher(word).find() && !SPOKEN_ES.matcher(word).find()) {
      return word.substring(0, word.length() - 2);
    }
    if (SILENT_ED.matcher(word).find()) {
      return word.substring(0, word.length() - 2);
    }
    return SILENT_E.matcher(word).find() ? word.substring(0, word.length() - 1) : word;
  }

  private static long count(Pattern pattern, String word) {
    Matcher matcher = pattern.matcher(word);
    return matcher.results().count();
  }

  private static int sum(String word, ToIntFunction<String> each) {
    return Stream.of(word.split("-", -1)).filter(part -> !part.isEmpty()).mapToInt(each).sum();
  }

  /**
   * Of a Spanish word: two strong vowels part, and so does an accented weak one; "qu", "gue" and
   * "gui" have a silent u; a final y is a vowel; h between vowels parts nothing weak.
   */
  public static int spanish(String written) {
    String word = written.toLowerCase(Locale.ROOT);
    if (word.contains("-")) {
      return sum(word, Syllables::spanish);
    }
    String plain =
        word.replaceAll("[^a-záéíóúüñ]", "")
            .replaceAll("qu(?=[eéií])", "q")
            .replaceAll("gu(?=[eéií])", "g")
            .replaceAll("y$", "i")
            .replaceAll("(?<=[aeouáéóúií])h(?=[aeiouáéíóú])", "");
    int count = 0;
    char previous = ' ';
    for (int at = 0; at < plain.length(); at++) {
      char kind = kindOf(plain.charAt(at));
      boolean isParted = previous == ' ' || (previous != 'w' && kind != 'w');
      if (kind != ' ' && isParted) {
        count++;
      }
      previous = kind;
    }
    return Math.max(1, count);
  }

  /** 's' a strong vowel, 'a' an accented weak one, 'w' a weak one, ' ' none. */
  private static char kindOf(char letter) {
    if ("aeoáéó".indexOf(letter) >= 0) {
      return 's';
    }
    if ("íú".indexOf(letter) >= 0) {
      return 'a';
    }
    return "iuü".indexOf(letter) >= 0 ? 'w' : ' ';
  }
}
