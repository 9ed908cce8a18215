package rungwise.clinic.handout;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.clinic.handout.SheetStanding.Change;
import rungwise.clinic.words.HomeSheet;
import rungwise.clinic.words.PatientWord;
import rungwise.clinic.words.Slot;

/**
 * What a sheet that was made says otherwise than one that would be made now.
 *
 * @param isDoseOther whether any word of the dose itself differs
 */
record SheetChanges(Set<Change> changes, boolean isDoseOther) {

  /** What is new with every injection or every sheet, and makes no sheet old. */
  private static final Set<PatientWord> PASSING =
      EnumSet.of(
          PatientWord.SHEET_PLACE_LAST,
          PatientWord.SHEET_PLACE_FIRST,
          PatientWord.SHEET_TIME_LEAD,
          PatientWord.SHEET_TIME_ONSET,
          PatientWord.SHEET_DRAFT,
          PatientWord.SHEET_KEEP_DAYS);

  static SheetChanges between(HomeSheet made, HomeSheet now) {
    var changes = EnumSet.noneOf(Change.class);
    boolean isDoseOther = false;
    if (made.wordsVersion() != now.wordsVersion()) {
      changes.add(Change.WORDS);
    }
    for (Slot slot : Slot.values()) {
      if (!made.filled(slot).equals(now.filled(slot)) && !isOpenedSince(slot, made, now)) {
        isDoseOther |= isOfDose(slot);
        of(slot).ifPresent(changes::add);
      }
    }
    for (PatientWord word : differing(made, now)) {
      of(word).ifPresent(changes::add);
    }
    return new SheetChanges(changes, isDoseOther);
  }

  /** A vial that was not open then: the sheet says for how many days it may be used once it is. */
  private static boolean isOpenedSince(Slot slot, HomeSheet made, HomeSheet now) {
    return (slot == Slot.LAST_DAY || slot == Slot.IN_USE_DAYS)
        && made.says(PatientWord.SHEET_KEEP_DAYS)
        && !now.says(PatientWord.SHEET_KEEP_DAYS);
  }

  private static List<PatientWord> differing(HomeSheet made, HomeSheet now) {
    var both = new HashSet<PatientWord>(made.words());
    both.retainAll(new HashSet<>(now.words()));
    return Arrays.stream(PatientWord.values())
        .filter(word -> !PASSING.contains(word))
        .filter(word -> (made.says(word) || now.says(word)) && !both.contains(word))
        .toList();
  }

  private static boolean isOfDose(Slot slot) {
    return switch (slot) {
      case VOLUME, MARK_WORDS, SYRINGE, CONTENT, COMPOSITION, NEXT_VOLUME, NEXT_MARK_WORDS -> true;
      default -> false;
    };
  }

  private static Optional<Change> of(Slot slot) {
    return switch (slot) {
      case LAST_DAY, IN_USE_DAYS, MIX_VOLUME, USE_WITHIN_HOURS -> Optional.of(Change.VIAL);
      case WAIT_HOURS, MAX_WEEK -> Optional.of(Change.TIMES);
      case CLINIC_NUMBER, AFTER_HOURS_NUMBER, HOSPITAL, TRANSPORT -> Optional.of(Change.PLAN);
      case PDE5_HOURS -> Optional.of(Change.PILLS);
      case SHEET_ID, SHEET_CODE, MADE_DAY, PLACE_LAST, PLACE_NEXT, OWN_ONSET -> Optional.empty();
      default -> Optional.of(Change.OTHER);
    };
  }

  private static Optional<Change> of(PatientWord word) {
    return switch (word) {
      case SHEET_TIME_WEEK, SHEET_TIME_WEEK_ONE -> Optional.of(Change.TIMES);
      case SHEET_NOT_PILLS, SHEET_NOT_PILLS_UNSET -> Optional.of(Change.PILLS);
      case SHEET_KEEP_ONCE, SHEET_KEEP_ASK, SHEET_KEEP_POWDER -> Optional.of(Change.VIAL);
      default -> Optional.of(Change.OTHER);
    };
  }
}
