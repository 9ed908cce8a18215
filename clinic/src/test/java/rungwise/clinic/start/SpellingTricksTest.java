package rungwise.clinic.start;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.IntUnaryOperator;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import rungwise.clinic.InventedNames;
import rungwise.clinic.OutsideText;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.InMemoryRecord;
import rungwise.clinic.people.Account;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.quantities.Reading;

/**
 * One man under every spelling that looks like his, and many men under their own. The characters
 * are named as in the Unicode Standard; which look alike is from memory of its confusables, not
 * from the table of the program.
 */
final class SpellingTricksTest {

  private static final String NAME = "Corvin Adeyemi";
  private static final String NUMBER = "HL-1017";

  private static final List<String> UNSEEN =
      List.of(
          "NULL",
          "ESCAPE",
          "DELETE",
          "SOFT HYPHEN",
          "COMBINING GRAPHEME JOINER",
          "ARABIC LETTER MARK",
          "HANGUL CHOSEONG FILLER",
          "KHMER VOWEL INHERENT AQ",
          "MONGOLIAN VOWEL SEPARATOR",
          "ZERO WIDTH SPACE",
          "ZERO WIDTH NON-JOINER",
          "ZERO WIDTH JOINER",
          "LEFT-TO-RIGHT MARK",
          "RIGHT-TO-LEFT MARK",
          "LEFT-TO-RIGHT OVERRIDE",
          "RIGHT-TO-LEFT OVERRIDE",
          "POP DIRECTIONAL FORMATTING",
          "WORD JOINER",
          "INVISIBLE SEPARATOR",
          "RIGHT-TO-LEFT ISOLATE",
          "BRAILLE PATTERN BLANK",
          "HANGUL FILLER",
          "VARIATION SELECTOR-1",
          "ZERO WIDTH NO-BREAK SPACE",
          "TAG SPACE",
          "LEFT-TO-RIGHT ISOLATE",
          "INVISIBLE TIMES",
          "HALFWIDTH HANGUL FILLER");

  private static final List<String> SPACES =
      List.of(
          "NO-BREAK SPACE",
          "EN QUAD",
          "EM QUAD",
          "EN SPACE",
          "EM SPACE",
          "THREE-PER-EM SPACE",
          "FOUR-PER-EM SPACE",
          "SIX-PER-EM SPACE",
          "FIGURE SPACE",
          "PUNCTUATION SPACE",
          "THIN SPACE",
          "HAIR SPACE",
          "NARROW NO-BREAK SPACE",
          "MEDIUM MATHEMATICAL SPACE",
          "IDEOGRAPHIC SPACE",
          "OGHAM SPACE MARK");

  /** Letters of other scripts that look like one of the name's. */
  private static final Map<Character, List<String>> ALIKE =
      Map.of(
          'C', List.of("CYRILLIC CAPITAL LETTER ES", "GREEK CAPITAL LUNATE SIGMA SYMBOL"),
          'o', List.of("CYRILLIC SMALL LETTER O", "GREEK SMALL LETTER OMICRON"),
          'v', List.of("GREEK SMALL LETTER NU", "CYRILLIC SMALL LETTER IZHITSA"),
          'i', List.of("CYRILLIC SMALL LETTER BYELORUSSIAN-UKRAINIAN I", "GREEK SMALL LETTER IOTA"),
          'n', List.of("ARMENIAN SMALL LETTER VO"),
          'A', List.of("CYRILLIC CAPITAL LETTER A", "GREEK CAPITAL LETTER ALPHA"),
          'd', List.of("CYRILLIC SMALL LETTER KOMI DE"),
          'e', List.of("CYRILLIC SMALL LETTER IE"),
          'y', List.of("CYRILLIC SMALL LETTER U", "GREEK SMALL LETTER GAMMA"));

  private static final List<String> DASHES =
      List.of(
          "HYPHEN",
          "NON-BREAKING HYPHEN",
          "FIGURE DASH",
          "EN DASH",
          "EM DASH",
          "HORIZONTAL BAR",
          "MINUS SIGN",
          "SMALL EM DASH",
          "SMALL HYPHEN-MINUS",
          "FULLWIDTH HYPHEN-MINUS");

  /** The zero of digits that stand in a row. */
  private static final List<String> ZEROS =
      List.of(
          "ARABIC-INDIC DIGIT ZERO",
          "EXTENDED ARABIC-INDIC DIGIT ZERO",
          "NKO DIGIT ZERO",
          "DEVANAGARI DIGIT ZERO",
          "BENGALI DIGIT ZERO",
          "GURMUKHI DIGIT ZERO",
          "GUJARATI DIGIT ZERO",
          "ORIYA DIGIT ZERO",
          "TAMIL DIGIT ZERO",
          "TELUGU DIGIT ZERO",
          "KANNADA DIGIT ZERO",
          "MALAYALAM DIGIT ZERO",
          "THAI DIGIT ZERO",
          "LAO DIGIT ZERO",
          "TIBETAN DIGIT ZERO",
          "MYANMAR DIGIT ZERO",
          "KHMER DIGIT ZERO",
          "MONGOLIAN DIGIT ZERO",
          "FULLWIDTH DIGIT ZERO",
          "MATHEMATICAL BOLD DIGIT ZERO",
          "MATHEMATICAL DOUBLE-STRUCK DIGIT ZERO",
          "MATHEMATICAL SANS-SERIF DIGIT ZERO",
          "MATHEMATICAL MONOSPACE DIGIT ZERO");

  private final TitrationWorld world =
      new TitrationWorld(InMemoryRecord.ports(), new LabelReader());

  private static String named(String name) {
    return Character.toString(Character.codePointOf(name));
  }

  private static String mapped(String text, IntUnaryOperator change) {
    return text.codePoints()
        .map(change)
        .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
        .toString();
  }

  private static boolean isLetter(int point) {
    return (point >= 'A' && point <= 'Z') || (point >= 'a' && point <= 'z');
  }

  /** His letters in a row of its own that has A to Z and then a to z. */
  private static String styled(String text, int capitalA) {
    return mapped(
        text,
        point ->
            !isLetter(point) ? point : capitalA + (point <= 'Z' ? point - 'A' : point - 'a' + 26));
  }

  private static Set<String> ofTheName() {
    var tricks = new LinkedHashSet<String>();
    for (String unseen : UNSEEN) {
      tricks.add("Cor" + named(unseen) + "vin Adeyemi");
      tricks.add("Corvin " + named(unseen) + "Adeyemi");
      tricks.add("Corvin Adeyem" + named(unseen) + "i");
    }
    for (String space : SPACES) {
      tricks.add("Corvin" + named(space) + "Adeyemi");
      tricks.add("Corvin " + named(space) + "Adeyemi");
    }
    ALIKE.forEach(
        (letter, others) ->
            others.forEach(
                other -> tricks.add(NAME.replaceFirst(letter.toString(), named(other)))));
    // Full width; bold, sans-serif, sans-serif bold and monospace of the mathematical alphabets.
    tricks.add(mapped(NAME, point -> isLetter(point) ? point + 0xFEE0 : point));
    for (int capitalA : List.of(0x1D400, 0x1D468, 0x1D4D0, 0x1D5A0, 0x1D5D4, 0x1D608, 0x1D670)) {
      tricks.add(styled(NAME, capitalA));
    }
    tricks.add(NAME.toUpperCase(Locale.ROOT));
    tricks.add(NAME.toLowerCase(Locale.ROOT));
    tricks.add("  " + NAME + "  ");
    tricks.add("Corvin    Adeyemi");
    tricks.addAll(
        List.of(
            "C\u00F3rvin Adey\u00E9mi",
            "Adeyemi Corvin",
            "Adeyemi, Corvin",
            "Corvin-Adeyemi",
            "CorvinAdeyemi",
            "Corvin Ola Adeyemi",
            "C0rvin Adeyemi",
            "Corvin Adeyem1",
            "Corvln Adeyemi",
            "Corvin Adeye" + "rn" + "i"));
    return tricks;
  }

  private static Set<String> ofTheNumber() {
    var tricks = new LinkedHashSet<String>();
    UNSEEN.forEach(unseen -> tricks.add("HL-1" + named(unseen) + "017"));
    DASHES.forEach(dash -> tricks.add("HL" + named(dash) + "1017"));
    for (String zero : ZEROS) {
      int first = Character.codePointOf(zero);
      tricks.add(mapped(NUMBER, point -> Character.isDigit(point) ? first + point - '0' : point));
    }
    tricks.add(mapped(NUMBER, point -> isLetter(point) ? point + 0xFEE0 : point));
    tricks.add(NUMBER.replace("H", named("CYRILLIC CAPITAL LETTER EN")));
    tricks.add(NUMBER.replace("0", named("CYRILLIC CAPITAL LETTER O")));
    tricks.add("hl-1017");
    tricks.add(" HL-1017 ");
    return tricks;
  }

  private Reading<CourseId> open(String name, String birthDate, String number) {
    return open(Staff.EDUCATOR, name, birthDate, number);
  }

  private Reading<CourseId> open(Account who, String name, String birthDate, String number) {
    CourseDraft form = world.form(name, number, "vasculogenic", "u100-1");
    return world
        .starting()
        .open(
            who,
            new CourseDraft(
                form.fullName(),
                birthDate,
                form.recordNumber(),
                form.group(),
                form.preparation(),
                form.barrel(),
                form.protocol(),
                /* namesakeConfirmed= */ false));
  }

  /** Nothing is opened: he is named, at once or when the text is sent on as it is shown then. */
  private boolean isWarned(Reading<CourseId> opened, Supplier<Reading<CourseId>> sentOn) {
    return isOfHim(opened)
        || (opened.faults().toString().contains("that nobody can see") && isOfHim(sentOn.get()));
  }

  private static boolean isOfHim(Reading<CourseId> opened) {
    return opened.faults().stream().anyMatch(fault -> fault.startsWith("Another course"));
  }

  @Test
  void the_same_man_under_two_hundred_spellings_is_warned_of_each_time() {
    open(Staff.PRESCRIBER, NAME, "1957-11-02", NUMBER).orThrow();
    var missed = new ArrayList<String>();

    int other = 0;
    for (String name : ofTheName()) {
      String his = "Other " + ++other;
      if (!isWarned(
          open(name, "1957-11-02", his),
          () -> open(OutsideText.cleaned(name), "1957-11-02", his))) {
        missed.add(name);
      }
    }
    for (String number : ofTheNumber()) {
      String his = "Somebody " + "x".repeat(++other % 50);
      if (!isWarned(
          open(his, "1960-01-01", number),
          () -> open(his, "1960-01-01", OutsideText.cleaned(number)))) {
        missed.add(number);
      }
    }

    assertThat(missed).isEmpty();
    assertThat(ofTheName().size() + ofTheNumber().size()).isGreaterThanOrEqualTo(200);
  }

  private static List<String> ofMany() {
    return InventedNames.OF_MANY_SCRIPTS.stream()
        .map(name -> name.split(" ", 2))
        .flatMap(
            parts ->
                List.of(
                    parts[0] + " " + parts[1],
                    parts[1] + " " + parts[0],
                    parts[0] + "-" + parts[1],
                    parts[1] + ", " + parts[0],
                    parts[0] + " " + parts[1] + " " + parts[0],
                    parts[0] + " " + parts[0] + "-" + parts[1],
                    parts[1] + " " + parts[1])
                    .stream())
        .toList();
  }

  @Test
  void whoever_is_only_a_little_like_him_is_somebody_else() {
    open(NAME, "1957-11-02", NUMBER).orThrow();

    assertThat(open("Corvan Adeyemi", "1957-11-02", "MR-1").faults()).isEmpty();
    assertThat(open(NAME, "1957-11-03", "MR-2").faults()).isEmpty();
    assertThat(open("Ola Sample", "1957-11-02", "HL-10171").faults()).isEmpty();
  }

  @Test
  void two_hundred_names_of_many_scripts_are_kept_as_they_are_written_and_nobody_is_warned() {
    List<String> names = ofMany();
    assertThat(names).hasSizeGreaterThanOrEqualTo(200).doesNotHaveDuplicates();

    int number = 0;
    for (String name : names) {
      // Born on days of their own: some of them hold the words of another.
      String born = LocalDate.of(1961, 4, 30).plusDays(number).toString();
      Reading<CourseId> opened = open(name, born, "MR-" + ++number);

      assertThat(opened.faults()).as(name).isEmpty();
      assertThat(opened.notices()).as(name).isEmpty();
      assertThat(world.file(opened.orThrow()).patient().fullName()).isEqualTo(name);
    }
  }
}
