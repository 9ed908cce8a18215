package rungwise.clinic;

import java.lang.Character.UnicodeScript;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import rungwise.quantities.Reading;

/**
 * A line of text that somebody typed or pasted. What a reader cannot see is refused, because two
 * texts that look alike must be alike: control and format characters, blank letters, characters
 * that are not assigned. A joiner stays where the script before it joins by it, as in Persian or
 * Sinhala names (Unicode Standard, 23.2).
 */
public final class OutsideText {

  /** As many marks on one letter as any living script needs, and one more (from memory). */
  private static final int MOST_MARKS = 4;

  private static final int JOINER = 0x200D;
  private static final int NON_JOINER = 0x200C;

  /** Letters and marks that show nothing (Unicode, Default_Ignorable_Code_Point; from memory). */
  private static final Set<Integer> BLANK =
      Set.of(
          0x034F, 0x115F, 0x1160, 0x17B4, 0x17B5, 0x180B, 0x180C, 0x180D, 0x180F, 0x2800, 0x3164,
          0xFFA0);

  private static final int FIRST_VARIATION = 0xFE00;
  private static final int LAST_VARIATION = 0xFE0F;
  private static final int FIRST_TAG = 0xE0000;
  private static final int LAST_TAG = 0xE0FFF;

  /** Scripts in which a joiner changes how letters are written. */
  private static final Set<UnicodeScript> JOINING =
      EnumSet.of(
          UnicodeScript.ARABIC,
          UnicodeScript.BENGALI,
          UnicodeScript.DEVANAGARI,
          UnicodeScript.GUJARATI,
          UnicodeScript.GURMUKHI,
          UnicodeScript.KANNADA,
          UnicodeScript.KHMER,
          UnicodeScript.MALAYALAM,
          UnicodeScript.MONGOLIAN,
          UnicodeScript.MYANMAR,
          UnicodeScript.NKO,
          UnicodeScript.ORIYA,
          UnicodeScript.SINHALA,
          UnicodeScript.SYRIAC,
          UnicodeScript.TAMIL,
          UnicodeScript.TELUGU);

  /** Scripts that are written together (Unicode Technical Standard 39, 5.2; from memory). */
  private static final List<Set<UnicodeScript>> TOGETHER =
      List.of(
          EnumSet.of(
              UnicodeScript.LATIN,
              UnicodeScript.HAN,
              UnicodeScript.HIRAGANA,
              UnicodeScript.KATAKANA),
          EnumSet.of(UnicodeScript.LATIN, UnicodeScript.HAN, UnicodeScript.HANGUL),
          EnumSet.of(UnicodeScript.LATIN, UnicodeScript.HAN, UnicodeScript.BOPOMOFO));

  private OutsideText() {}

  /**
   * One line, without the spaces around it.
   *
   * @param what it is, for the reader of a fault: "His full name"
   * @param most characters, at least 1
   */
  public static Reading<String> line(String what, String typed, int most) {
    String text = typed.strip();
    var faults = new ArrayList<String>();
    int length = text.codePointCount(0, text.length());
    if (text.isEmpty()) {
      faults.add(what + " is missing: enter 1 to " + most + " characters.");
    } else if (length > most) {
      faults.add(what + " has " + length + " characters: enter at most " + most + ".");
    }
    hiddenFault(what, text).ifPresent(faults::add);
    return faults.isEmpty() ? Reading.of(text) : new Reading.Refused<>(faults);
  }

  /** Why a text of several lines cannot be taken; empty if it can. */
  public static Optional<String> hiddenIn(String what, String text) {
    return text.lines().flatMap(line -> hiddenFault(what, line).stream()).findFirst();
  }

  /** With a space for each tab, which a document may hold and everybody sees. */
  public static String withoutTabs(String text) {
    return text.replace('\t', ' ');
  }

  /** A text of several lines without the characters for which it would be refused. */
  public static String cleaned(String text) {
    return withoutTabs(text)
        .lines()
        .map(OutsideText::cleanedLine)
        .collect(Collectors.joining("\n"));
  }

  /** What is left may stand beside another character now, so that it is asked again. */
  private static String cleanedLine(String line) {
    String before = line;
    String after = withoutHidden(before);
    while (!after.equals(before)) {
      before = after;
      after = withoutHidden(before);
    }
    return after;
  }

  private static String withoutHidden(String line) {
    int[] points = line.codePoints().toArray();
    return IntStream.range(0, points.length)
        .filter(at -> !isHidden(points, at))
        .map(at -> points[at])
        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
        .toString();
  }

  private static Optional<String> hiddenFault(String what, String text) {
    int[] points = text.codePoints().toArray();
    for (int at = 0; at < points.length; at++) {
      if (isHidden(points, at)) {
        return Optional.of(
            what
                + " holds a character that nobody can see (U+%04X, number %d)"
                    .formatted(points[at], at + 1)
                + ", as a copy from another program may: type it again by hand.");
      }
    }
    return Optional.empty();
  }

  private static boolean isHidden(int[] points, int at) {
    int point = points[at];
    if (point == JOINER || point == NON_JOINER) {
      return at == 0 || !JOINING.contains(UnicodeScript.of(points[at - 1]));
    }
    return switch (Character.getType(point)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.SURROGATE,
          Character.PRIVATE_USE,
          Character.UNASSIGNED,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR ->
          true;
      default -> isBlank(point) || endsTooManyMarks(points, at);
    };
  }

  private static boolean isBlank(int point) {
    return BLANK.contains(point)
        || (point >= FIRST_VARIATION && point <= LAST_VARIATION)
        || (point >= FIRST_TAG && point <= LAST_TAG);
  }

  /** Marks that are stacked so high that they cover the lines around them. */
  private static boolean endsTooManyMarks(int[] points, int at) {
    int marks = 0;
    for (int one = at; one >= 0 && isMark(points[one]); one--) {
      marks++;
    }
    return marks > MOST_MARKS;
  }

  private static boolean isMark(int point) {
    int type = Character.getType(point);
    return type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK;
  }

  /** Without what shows nothing, so that a text kept from before has the key of its look. */
  public static String visible(String text) {
    return text.codePoints()
        .filter(point -> Character.getType(point) != Character.FORMAT && !isBlank(point))
        .filter(point -> Character.isWhitespace(point) || !Character.isISOControl(point))
        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
        .toString();
  }

  /** Whether its letters come from scripts that are not written together, as a look-alike's do. */
  public static boolean mixesScripts(String text) {
    Set<UnicodeScript> scripts = EnumSet.noneOf(UnicodeScript.class);
    text.codePoints().filter(Character::isLetter).mapToObj(UnicodeScript::of).forEach(scripts::add);
    scripts.remove(UnicodeScript.COMMON);
    scripts.remove(UnicodeScript.INHERITED);
    return scripts.size() > 1 && TOGETHER.stream().noneMatch(set -> set.containsAll(scripts));
  }
}
