package rungwise.clinic.handout;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.stream.Collectors;
import rungwise.clinic.words.HomeSheet;
import rungwise.clinic.words.Language;
import rungwise.clinic.words.PatientWord;
import rungwise.dosing.known.Dose;

/** Prints a sheet as plain lines, in Latin letters only. */
public final class PlainPress implements SheetPress {

  private static final int LAST_LATIN = 0x17F;

  @Override
  public Optional<String> lineWords(Dose dose, Language language) {
    return dose.barrel().hasMarkAt(dose.volume())
        ? Optional.of(dose.barrel().markName(dose.volume()) + ", " + language.tag())
        : Optional.empty();
  }

  @Override
  public String notPrintable(String text) {
    return text.codePoints()
        .filter(point -> point > LAST_LATIN)
        .distinct()
        .mapToObj(Character::toString)
        .collect(Collectors.joining());
  }

  @Override
  public byte[] pdf(HomeSheet sheet, Dose dose) {
    return sheet.words().stream()
        .map((PatientWord word) -> sheet.text(word))
        .collect(Collectors.joining("\n", "", "\n" + dose))
        .getBytes(StandardCharsets.UTF_8);
  }
}
