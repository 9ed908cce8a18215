package rungwise.clinic.words;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** The texts of one language, in the version that is in use. */
public final class PatientWords {

  /** Raised with any change of a text: a prescriber signs the words of one version. */
  public static final int VERSION = 1;

  private static final Pattern LINE = Pattern.compile("(\\S+) \\| (\\S.*)");
  private static final Pattern GAP = Pattern.compile("\\{\\w+}");
  private static final Map<Language, PatientWords> READ = readAll();

  private final Map<PatientWord, String> texts;

  private PatientWords(Map<PatientWord, String> texts) {
    this.texts = texts;
  }

  public static PatientWords in(Language language) {
    return Objects.requireNonNull(READ.get(language));
  }

  /** A text that has no gap. */
  public String text(PatientWord word) {
    return text(word, Map.of());
  }

  /**
   * A text with its gaps filled.
   *
   * @throws IllegalArgumentException if a gap stays open
   */
  public String text(PatientWord word, Map<Slot, String> filling) {
    return GAP.matcher(pattern(word))
        .replaceAll(gap -> Matcher.quoteReplacement(fill(gap.group(), word, filling)));
  }

  private static String fill(String gap, PatientWord word, Map<Slot, String> filling) {
    return filling.entrySet().stream()
        .filter(one -> one.getKey().written().equals(gap))
        .map(Map.Entry::getValue)
        .findFirst()
        .orElseThrow(
            () -> new IllegalArgumentException("bug: nothing fills " + gap + " of " + word));
  }

  /** A text with its gaps as they are written. */
  public String pattern(PatientWord word) {
    return Objects.requireNonNull(texts.get(word));
  }

  private static Map<Language, PatientWords> readAll() {
    var all = new EnumMap<Language, PatientWords>(Language.class);
    for (Language language : Language.values()) {
      all.put(language, new PatientWords(read(language)));
    }
    return Collections.unmodifiableMap(all);
  }

  private static Map<PatientWord, String> read(Language language) {
    var texts = new EnumMap<PatientWord, String>(PatientWord.class);
    for (String line : lines(language)) {
      Matcher parts = LINE.matcher(line);
      if (!parts.matches()) {
        throw new IllegalStateException("bug: no key and text: " + line);
      }
      PatientWord word =
          PatientWord.of(parts.group(1))
              .orElseThrow(() -> new IllegalStateException("bug: no such key: " + line));
      if (texts.put(word, parts.group(2)) != null) {
        throw new IllegalStateException("bug: a key stands twice: " + line);
      }
    }
    for (PatientWord word : PatientWord.values()) {
      if (!texts.containsKey(word)) {
        throw new IllegalStateException("bug: no " + language.words() + " for " + word.token());
      }
    }
    return texts;
  }

  private static List<String> lines(Language language) {
    String name = "patient-" + VERSION + "-" + language.tag() + ".txt";
    try (InputStream in = PatientWords.class.getResourceAsStream(name)) {
      if (in == null) {
        throw new IllegalStateException("bug: " + name + " is missing");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8).lines().toList();
    } catch (IOException e) {
      throw new UncheckedIOException("bug: " + name + " cannot be read", e);
    }
  }
}
