package rungwise.app.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.OutsideText;
import rungwise.clinic.TableText;
import rungwise.clinic.course.Patient;
import rungwise.clinic.people.SignInName;
import rungwise.quantities.Reading;

/** Names, record numbers and reasons; what begins with a zero byte has two bytes a character. */
final class Names implements Target.Reader {

  static final List<String> SEEDS =
      List.of(
          "Anna Kowalska",
          "O'Brien-Smith",
          "\u0141ukasz \u017B\u00F3\u0142\u0107",
          "\u0645\u062D\u0645\u062F",
          "\u0928\u094D\u200D\u0926",
          "P\u0430vel",
          "a\u202Eb\u200B",
          "=1+1",
          "'=1",
          "HL-1017",
          "anna.kowalska",
          "\uD83D\uDE00",
          "e\u0301\u0301\u0301\u0301\u0301",
          "two\nlines",
          "\u0000\u00D8\u0000");

  private static final int MOST = 100;

  @Override
  public void read(byte[] input) {
    boolean isWide = input.length > 0 && input[0] == 0;
    String text =
        isWide
            ? new String(input, 1, input.length - 1, StandardCharsets.UTF_16BE)
            : new String(input, StandardCharsets.UTF_8);
    Hold.readsBack(text, one -> OutsideText.line("His full name", one, MOST), one -> one);
    Hold.readsBack(text, SignInName::parse, SignInName::text);
    Hold.that(TableText.read(TableText.safe(text)).equals(text), () -> "table text " + text);
    Hold.that(
        TableText.safe(text).isEmpty() || "=+-@\t\r".indexOf(TableText.safe(text).charAt(0)) < 0,
        () -> "a formula: " + text);
    String visible = OutsideText.visible(text);
    Hold.that(OutsideText.visible(visible).equals(visible), () -> "visible " + text);
    Reading<String> line = OutsideText.line("It", text, MOST);
    Optional<String> hidden = OutsideText.hiddenIn("It", text.strip());
    Hold.that(
        line.found().isEmpty() || hidden.isEmpty(),
        () -> "a line and several lines are read differently: " + text);
    Hold.that(
        line.faults().stream().flatMapToInt(String::codePoints).noneMatch(Character::isISOControl),
        () -> "a fault that echoes what cannot be seen");
    String key = Patient.recordKeyOf(text);
    Hold.that(Patient.recordKeyOf(key).equals(key), () -> "the key of a key: " + text);
    OutsideText.mixesScripts(text);
  }
}
