package rungwise.clinic.today;

import java.text.Normalizer;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rungwise.clinic.OutsideText;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.Patient;

/**
 * The words by which a man is found: the parts of his name and of his record number, and the day he
 * was born, without accents and in small letters.
 */
public final class ManWords {

  /** The most characters that are looked at. */
  public static final int LONGEST = 200;

  private static final Pattern MARKS = Pattern.compile("\\p{M}+");
  private static final Pattern BETWEEN = Pattern.compile("[^\\p{L}\\p{N}]+");
  private static final Pattern YEAR_FIRST = Pattern.compile("\\b(\\d{4})-(\\d{1,2})-(\\d{1,2})\\b");
  private static final Pattern YEAR_LAST =
      Pattern.compile("\\b(\\d{1,2})[./](\\d{1,2})[./](\\d{4})\\b");

  /** Letters that are no letter with a mark, as they are typed where the keyboard lacks them. */
  private static final Map<String, String> PLAIN =
      Map.of(
          "ß", "ss", "ø", "o", "ł", "l", "đ", "d", "æ", "ae", "œ", "oe", "ı", "i", "þ", "th", "ð",
          "d");

  private ManWords() {}

  /** Those of the man of a course: as he is on record now, and as he was before a correction. */
  public static Set<String> of(CourseFile file) {
    var words = new TreeSet<String>();
    file.identities().forEach(one -> words.addAll(of(one.fact().patient())));
    return words;
  }

  /** Those of a man. */
  public static Set<String> of(Patient patient) {
    var words = new TreeSet<String>();
    words.addAll(parts(patient.fullName()));
    words.addAll(parts(patient.recordNumber()));
    words.add(String.join("", parts(patient.recordNumber())));
    words.add(born(patient.birthDate()));
    return words;
  }

  /**
   * What somebody typed, in any order: a man is found if of each set one is a beginning of one of
   * his words. A date may be meant in two ways.
   */
  public static List<Set<String>> typed(String text) {
    String visible = OutsideText.visible(text.substring(0, Math.min(LONGEST, text.length())));
    var sets = new ArrayList<Set<String>>();
    String rest = taken(YEAR_FIRST, visible, sets, ManWords::yearFirst);
    rest = taken(YEAR_LAST, rest, sets, ManWords::yearLast);
    parts(rest).forEach(part -> sets.add(Set.of(part)));
    return List.copyOf(sets);
  }

  private static String taken(
      Pattern pattern,
      String text,
      List<Set<String>> sets,
      Function<MatchResult, Stream<LocalDate>> read) {
    Matcher found = pattern.matcher(text);
    var rest = new StringBuilder();
    while (found.find()) {
      Set<String> days =
          read.apply(found).map(ManWords::born).collect(Collectors.toUnmodifiableSet());
      if (!days.isEmpty()) {
        sets.add(days);
        found.appendReplacement(rest, " ");
      }
    }
    return found.appendTail(rest).toString();
  }

  /** No part of a name or of a number begins like it. */
  private static String born(LocalDate day) {
    return "*" + day;
  }

  private static Stream<LocalDate> yearFirst(MatchResult date) {
    return day(date.group(1), date.group(2), date.group(3));
  }

  private static Stream<LocalDate> yearLast(MatchResult date) {
    return Stream.concat(
        day(date.group(3), date.group(2), date.group(1)),
        day(date.group(3), date.group(1), date.group(2)));
  }

  private static Stream<LocalDate> day(String year, String month, String day) {
    try {
      return Stream.of(
          LocalDate.of(Integer.parseInt(year), Integer.parseInt(month), Integer.parseInt(day)));
    } catch (DateTimeException noSuchDay) {
      return Stream.empty();
    }
  }

  private static List<String> parts(String text) {
    String small =
        MARKS
            .matcher(Normalizer.normalize(text, Normalizer.Form.NFKD))
            .replaceAll("")
            .toUpperCase(Locale.ROOT)
            .toLowerCase(Locale.ROOT);
    String plain = small;
    for (Map.Entry<String, String> letter : PLAIN.entrySet()) {
      plain = plain.replace(letter.getKey(), letter.getValue());
    }
    return Arrays.stream(BETWEEN.split(plain)).filter(part -> !part.isEmpty()).toList();
  }
}
