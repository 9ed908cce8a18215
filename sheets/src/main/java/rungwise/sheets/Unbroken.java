package rungwise.sheets;

import java.util.List;
import java.util.regex.Pattern;
import rungwise.clinic.words.HomeSheet;
import rungwise.clinic.words.PatientWord;
import rungwise.clinic.words.Slot;

/** Keeps on one line what is misread on two: a number with its unit, a telephone number, a code. */
final class Unbroken {

  private static final Pattern BEFORE_UNIT = Pattern.compile("(\\d) (?=(mL|mg|mcg|mm)\\b)");
  private static final List<Slot> NUMBERS = List.of(Slot.CLINIC_NUMBER, Slot.AFTER_HOURS_NUMBER);

  private Unbroken() {}

  static String text(HomeSheet sheet, PatientWord word) {
    String text = BEFORE_UNIT.matcher(sheet.text(word)).replaceAll("$1\u00a0");
    text = text.replace(sheet.code().words(), whole(sheet.code().words()));
    for (Slot slot : NUMBERS) {
      String number = sheet.filled(slot).orElse("");
      text = number.isEmpty() ? text : text.replace(number, whole(number));
    }
    return text;
  }

  private static String whole(String part) {
    return part.replace(' ', '\u00a0');
  }
}
