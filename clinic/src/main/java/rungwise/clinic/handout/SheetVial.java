package rungwise.clinic.handout;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.standing.VialUse;
import rungwise.clinic.words.Language;
import rungwise.clinic.words.PatientWord;
import rungwise.clinic.words.Slot;
import rungwise.dosing.known.Form;
import rungwise.dosing.supply.InUseRule;

/** How his vial is kept, and until when it may be used. */
record SheetVial(VialUse use, InUseRule rule, Form form, Keeping keeping) {

  Map<Slot, String> filling(Language language, ClinicTime time) {
    var filling = new EnumMap<Slot, String>(Slot.class);
    LocalDate last = time.dayOf(use.end().at().minusMillis(1));
    filling.put(Slot.LAST_DAY, language.weekdayAnd(last));
    daysOnceOpen().ifPresent(days -> filling.put(Slot.IN_USE_DAYS, Integer.toString(days)));
    if (form instanceof Form.Powder powder) {
      filling.put(Slot.MIX_VOLUME, powder.diluent().toString());
      filling.put(Slot.USE_WITHIN_HOURS, powder.usableFor().wholeHoursText());
    }
    return filling;
  }

  /** The days for which a vial that is not open yet may be used once it is; a powder has hours. */
  private Optional<Integer> daysOnceOpen() {
    if (use.dates().opened().isPresent() || form instanceof Form.Powder) {
      return Optional.empty();
    }
    Optional<Integer> ofRule =
        rule instanceof InUseRule.DaysAfterOpening limit
            ? Optional.of(limit.days())
            : Optional.empty();
    return Stream.of(ofRule, use.dates().daysInUse())
        .flatMap(Optional::stream)
        .min(Integer::compareTo);
  }

  /** What is said of it, in its order. */
  List<PatientWord> words() {
    var words = new ArrayList<PatientWord>();
    words.add(keeping.word());
    if (form instanceof Form.Powder) {
      words.add(PatientWord.SHEET_KEEP_POWDER);
    } else if (rule instanceof InUseRule.SingleUse) {
      words.add(PatientWord.SHEET_KEEP_ONCE);
    }
    words.add(PatientWord.SHEET_KEEP_LAST);
    if (daysOnceOpen().isPresent()) {
      words.add(PatientWord.SHEET_KEEP_DAYS);
    } else if (isTimeOfUseOpen()) {
      words.add(PatientWord.SHEET_KEEP_ASK);
    }
    return words;
  }

  private boolean isTimeOfUseOpen() {
    return rule instanceof InUseRule.NotStated
        && !(form instanceof Form.Powder)
        && use.dates().daysInUse().isEmpty();
  }
}
