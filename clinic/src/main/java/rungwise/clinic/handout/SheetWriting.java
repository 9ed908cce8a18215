package rungwise.clinic.handout;

import static rungwise.clinic.words.PatientWord.PART_FROM_TO;
import static rungwise.clinic.words.PatientWord.PART_MAN;
import static rungwise.clinic.words.PatientWord.PART_MINUTES;
import static rungwise.clinic.words.PatientWord.SHEET_CALL_BRUISE;
import static rungwise.clinic.words.PatientWord.SHEET_CALL_CHANGE;
import static rungwise.clinic.words.PatientWord.SHEET_CALL_HOUR;
import static rungwise.clinic.words.PatientWord.SHEET_CALL_NEW;
import static rungwise.clinic.words.PatientWord.SHEET_CALL_ZERO;
import static rungwise.clinic.words.PatientWord.SHEET_CURRENT;
import static rungwise.clinic.words.PatientWord.SHEET_DOSE_COMPOSITION;
import static rungwise.clinic.words.PatientWord.SHEET_DOSE_CONTENT;
import static rungwise.clinic.words.PatientWord.SHEET_DOSE_DEVICE;
import static rungwise.clinic.words.PatientWord.SHEET_DOSE_LINES;
import static rungwise.clinic.words.PatientWord.SHEET_DOSE_NEVER_MORE;
import static rungwise.clinic.words.PatientWord.SHEET_DOSE_VOLUME;
import static rungwise.clinic.words.PatientWord.SHEET_DRAFT;
import static rungwise.clinic.words.PatientWord.SHEET_HEAD_CALL;
import static rungwise.clinic.words.PatientWord.SHEET_HEAD_DOSE;
import static rungwise.clinic.words.PatientWord.SHEET_HEAD_KEEP;
import static rungwise.clinic.words.PatientWord.SHEET_HEAD_LOG;
import static rungwise.clinic.words.PatientWord.SHEET_HEAD_LONG;
import static rungwise.clinic.words.PatientWord.SHEET_HEAD_MAIN;
import static rungwise.clinic.words.PatientWord.SHEET_HEAD_NEXT;
import static rungwise.clinic.words.PatientWord.SHEET_HEAD_NOT;
import static rungwise.clinic.words.PatientWord.SHEET_HEAD_PLACE;
import static rungwise.clinic.words.PatientWord.SHEET_HEAD_STEPS;
import static rungwise.clinic.words.PatientWord.SHEET_HEAD_TIME;
import static rungwise.clinic.words.PatientWord.SHEET_KEEP_KIDS;
import static rungwise.clinic.words.PatientWord.SHEET_KEEP_NEW_VIAL;
import static rungwise.clinic.words.PatientWord.SHEET_KEEP_TRAVEL;
import static rungwise.clinic.words.PatientWord.SHEET_KEEP_WARM;
import static rungwise.clinic.words.PatientWord.SHEET_LOG_FOUR;
import static rungwise.clinic.words.PatientWord.SHEET_LOG_SHOT;
import static rungwise.clinic.words.PatientWord.SHEET_LOG_TWO;
import static rungwise.clinic.words.PatientWord.SHEET_LONG_AGAIN;
import static rungwise.clinic.words.PatientWord.SHEET_LONG_COUNT;
import static rungwise.clinic.words.PatientWord.SHEET_LONG_FOUR;
import static rungwise.clinic.words.PatientWord.SHEET_LONG_LEAVE;
import static rungwise.clinic.words.PatientWord.SHEET_LONG_TWO;
import static rungwise.clinic.words.PatientWord.SHEET_LONG_WHY;
import static rungwise.clinic.words.PatientWord.SHEET_NEEDLE_BENT;
import static rungwise.clinic.words.PatientWord.SHEET_NEEDLE_BROKEN;
import static rungwise.clinic.words.PatientWord.SHEET_NEXT_CLEAN;
import static rungwise.clinic.words.PatientWord.SHEET_NEXT_COUNT;
import static rungwise.clinic.words.PatientWord.SHEET_NEXT_DOSE;
import static rungwise.clinic.words.PatientWord.SHEET_NEXT_ELSE;
import static rungwise.clinic.words.PatientWord.SHEET_NEXT_SHORT;
import static rungwise.clinic.words.PatientWord.SHEET_NEXT_WEAK;
import static rungwise.clinic.words.PatientWord.SHEET_NOT_GERMS;
import static rungwise.clinic.words.PatientWord.SHEET_NOT_PILLS;
import static rungwise.clinic.words.PatientWord.SHEET_NOT_PILLS_UNSET;
import static rungwise.clinic.words.PatientWord.SHEET_NUMBER;
import static rungwise.clinic.words.PatientWord.SHEET_PLACE_AVOID;
import static rungwise.clinic.words.PatientWord.SHEET_PLACE_FIRST;
import static rungwise.clinic.words.PatientWord.SHEET_PLACE_LAST;
import static rungwise.clinic.words.PatientWord.SHEET_PLACE_SORE;
import static rungwise.clinic.words.PatientWord.SHEET_PLACE_SWITCH;
import static rungwise.clinic.words.PatientWord.SHEET_PLACE_WHERE;
import static rungwise.clinic.words.PatientWord.SHEET_RULER;
import static rungwise.clinic.words.PatientWord.SHEET_SHARPS_BOX;
import static rungwise.clinic.words.PatientWord.SHEET_SHARPS_FULL;
import static rungwise.clinic.words.PatientWord.SHEET_SHARPS_ONCE;
import static rungwise.clinic.words.PatientWord.SHEET_STEP_AIR;
import static rungwise.clinic.words.PatientWord.SHEET_STEP_BIN;
import static rungwise.clinic.words.PatientWord.SHEET_STEP_BUBBLE;
import static rungwise.clinic.words.PatientWord.SHEET_STEP_CHECK;
import static rungwise.clinic.words.PatientWord.SHEET_STEP_CLOCK;
import static rungwise.clinic.words.PatientWord.SHEET_STEP_DRAW;
import static rungwise.clinic.words.PatientWord.SHEET_STEP_HOLD;
import static rungwise.clinic.words.PatientWord.SHEET_STEP_IN;
import static rungwise.clinic.words.PatientWord.SHEET_STEP_LOOK;
import static rungwise.clinic.words.PatientWord.SHEET_STEP_MIX;
import static rungwise.clinic.words.PatientWord.SHEET_STEP_OUT;
import static rungwise.clinic.words.PatientWord.SHEET_STEP_PUSH;
import static rungwise.clinic.words.PatientWord.SHEET_STEP_STUCK;
import static rungwise.clinic.words.PatientWord.SHEET_STEP_WASH;
import static rungwise.clinic.words.PatientWord.SHEET_STRIP_FOUR;
import static rungwise.clinic.words.PatientWord.SHEET_STRIP_TWO;
import static rungwise.clinic.words.PatientWord.SHEET_TIME_LEAD;
import static rungwise.clinic.words.PatientWord.SHEET_TIME_NO_SECOND;
import static rungwise.clinic.words.PatientWord.SHEET_TIME_ONSET;
import static rungwise.clinic.words.PatientWord.SHEET_TIME_TOUCH;
import static rungwise.clinic.words.PatientWord.SHEET_TIME_WAIT;
import static rungwise.clinic.words.PatientWord.SHEET_TIME_WEEK;
import static rungwise.clinic.words.PatientWord.SHEET_TIME_WEEK_ONE;
import static rungwise.clinic.words.PatientWord.SHEET_WHO;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.Patient;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.standing.Tablets;
import rungwise.clinic.words.HomeSheet;
import rungwise.clinic.words.Language;
import rungwise.clinic.words.Paper;
import rungwise.clinic.words.PatientWord;
import rungwise.clinic.words.PatientWords;
import rungwise.clinic.words.Slot;
import rungwise.dosing.known.Dose;
import rungwise.dosing.known.DurationLimits;
import rungwise.dosing.known.Form;
import rungwise.dosing.known.Technique;
import rungwise.dosing.ladder.Ladder;
import rungwise.quantities.TimeSpan;

/**
 * What a sheet for home says of a course as it stands: which texts, and what fills them. Danger
 * first, then the dose, then when, where and how.
 *
 * @param signed the dose in force
 * @param vial his vial in use
 * @param said what was typed for him, in his language
 * @param isDraft whether no prescriber has signed the words
 */
record SheetWriting(
    CourseState state,
    Written<DoseSigned> signed,
    SheetVial vial,
    Said said,
    boolean isDraft,
    SheetPress press,
    ClinicTime time) {

  /** The length of the line on which a ruler is laid: long enough to show "fit to page". */
  static final String RULER_LENGTH = "50 mm";

  /** From so many reports on, his own time until firmness is told. */
  private static final int ENOUGH_REPORTS = 3;

  /** What was typed and chosen for one sheet. */
  record Said(
      Language language,
      Paper paper,
      String clinicNumber,
      String afterHoursNumber,
      String hospital,
      String transport) {}

  /** The sheet. */
  HomeSheet sheet(String id, String address) {
    return new HomeSheet(
        id, said.language(), said.paper(), PatientWords.VERSION, address, words(), filling(id));
  }

  Dose dose() {
    return state.question().ladder().dose(signed.fact().volume());
  }

  private Optional<Dose> next() {
    Ladder ladder = state.question().ladder();
    return signed.fact().nextStep().map(ladder::dose);
  }

  private boolean hasLines() {
    return press.lineWords(dose(), said.language()).isPresent();
  }

  private boolean isPowder() {
    return dose().preparation().form() instanceof Form.Powder;
  }

  private boolean isOnePerWeek() {
    return state.question().inSevenDays().value() == 1;
  }

  private boolean isTabletLeftToTheClinic() {
    return new Tablets(state.file()).isDailyAllowed();
  }

  private List<PatientWord> words() {
    var words = new ArrayList<PatientWord>();
    words.addAll(List.of(SHEET_HEAD_MAIN, SHEET_WHO, SHEET_CURRENT, SHEET_NUMBER));
    addIf(words, isDraft, SHEET_DRAFT);
    words.addAll(List.of(SHEET_STRIP_TWO, SHEET_STRIP_FOUR));
    addDose(words);
    addNext(words);
    addTime(words);
    addPlace(words);
    words.addAll(
        List.of(
            SHEET_HEAD_LONG,
            SHEET_LONG_COUNT,
            SHEET_LONG_TWO,
            SHEET_LONG_LEAVE,
            SHEET_LONG_FOUR,
            SHEET_LONG_WHY,
            SHEET_LONG_AGAIN,
            SHEET_HEAD_LOG,
            SHEET_LOG_SHOT,
            SHEET_LOG_TWO,
            SHEET_LOG_FOUR));
    addSteps(words);
    words.addAll(
        List.of(
            SHEET_HEAD_CALL,
            SHEET_CALL_HOUR,
            SHEET_CALL_CHANGE,
            SHEET_CALL_BRUISE,
            SHEET_CALL_ZERO,
            SHEET_CALL_NEW,
            SHEET_HEAD_NOT,
            isTabletLeftToTheClinic() ? SHEET_NOT_PILLS_UNSET : SHEET_NOT_PILLS,
            SHEET_NOT_GERMS));
    addKeeping(words);
    return words;
  }

  private static void addIf(List<PatientWord> words, boolean isSaid, PatientWord word) {
    if (isSaid) {
      words.add(word);
    }
  }

  private void addDose(List<PatientWord> words) {
    words.addAll(
        hasLines()
            ? List.of(SHEET_HEAD_DOSE, SHEET_DOSE_VOLUME, SHEET_DOSE_LINES)
            : List.of(SHEET_HEAD_DOSE, SHEET_DOSE_DEVICE));
    words.addAll(List.of(SHEET_DOSE_CONTENT, SHEET_DOSE_COMPOSITION, SHEET_DOSE_NEVER_MORE));
    addIf(words, hasLines(), SHEET_RULER);
  }

  private void addNext(List<PatientWord> words) {
    if (next().isPresent()) {
      words.addAll(List.of(SHEET_HEAD_NEXT, SHEET_NEXT_DOSE, SHEET_NEXT_WEAK));
      boolean isOnce = state.question().protocol().partialResponsesBeforeStep() == 1;
      addIf(words, !isOnce, SHEET_NEXT_COUNT);
      words.addAll(List.of(SHEET_NEXT_CLEAN, SHEET_NEXT_SHORT, SHEET_NEXT_ELSE));
    }
  }

  private void addTime(List<PatientWord> words) {
    words.addAll(
        List.of(
            SHEET_HEAD_TIME,
            SHEET_TIME_WAIT,
            isOnePerWeek() ? SHEET_TIME_WEEK_ONE : SHEET_TIME_WEEK,
            SHEET_TIME_NO_SECOND,
            ownOnset().isPresent() ? SHEET_TIME_LEAD : SHEET_TIME_ONSET,
            SHEET_TIME_TOUCH));
  }

  private void addPlace(List<PatientWord> words) {
    boolean isLastKnown = filling("").containsKey(Slot.PLACE_LAST);
    words.addAll(
        List.of(
            SHEET_HEAD_PLACE,
            SHEET_PLACE_WHERE,
            SHEET_PLACE_SWITCH,
            isLastKnown ? SHEET_PLACE_LAST : SHEET_PLACE_FIRST,
            SHEET_PLACE_AVOID,
            SHEET_PLACE_SORE));
  }

  private void addSteps(List<PatientWord> words) {
    words.addAll(List.of(SHEET_HEAD_STEPS, SHEET_STEP_LOOK, SHEET_STEP_WASH));
    addIf(words, isPowder(), SHEET_STEP_MIX);
    if (hasLines()) {
      words.addAll(List.of(SHEET_STEP_AIR, SHEET_STEP_DRAW, SHEET_STEP_BUBBLE, SHEET_STEP_CHECK));
    }
    words.addAll(
        List.of(
            SHEET_STEP_HOLD,
            SHEET_STEP_IN,
            SHEET_STEP_PUSH,
            SHEET_STEP_STUCK,
            SHEET_STEP_OUT,
            SHEET_STEP_BIN,
            SHEET_STEP_CLOCK,
            SHEET_NEEDLE_BENT,
            SHEET_NEEDLE_BROKEN));
  }

  private void addKeeping(List<PatientWord> words) {
    words.add(SHEET_HEAD_KEEP);
    words.addAll(vial.words());
    words.addAll(
        List.of(
            SHEET_KEEP_WARM,
            SHEET_KEEP_KIDS,
            SHEET_KEEP_NEW_VIAL,
            SHEET_KEEP_TRAVEL,
            SHEET_SHARPS_BOX,
            SHEET_SHARPS_FULL,
            SHEET_SHARPS_ONCE));
  }

  private Map<Slot, String> filling(String id) {
    Language language = said.language();
    var filling = new EnumMap<Slot, String>(Slot.class);
    filling.put(Slot.MAN, man());
    filling.put(Slot.SHEET_ID, id);
    filling.put(Slot.MADE_DAY, language.date(time.dayOf(state.now())));
    filling.put(Slot.CLINIC_NUMBER, said.clinicNumber());
    filling.put(Slot.AFTER_HOURS_NUMBER, said.afterHoursNumber());
    filling.put(Slot.HOSPITAL, said.hospital());
    filling.put(Slot.TRANSPORT, said.transport());
    filling.put(Slot.RULER_LENGTH, RULER_LENGTH);
    filling.putAll(new SheetDose(language, press).filling(dose(), next()));
    filling.putAll(new SheetPlaces(language).filling(state.file()));
    filling.putAll(vial.filling(language, time));
    filling.putAll(times());
    return filling;
  }

  private Map<Slot, String> times() {
    var filling = new EnumMap<Slot, String>(Slot.class);
    var question = state.question();
    filling.put(Slot.WAIT_HOURS, question.spacing().value().wholeHoursText());
    filling.put(Slot.MAX_WEEK, Integer.toString(question.inSevenDays().value()));
    filling.put(
        Slot.NEXT_COUNT, Integer.toString(question.protocol().partialResponsesBeforeStep()));
    filling.put(Slot.SOFT_LIMIT, minutes(DurationLimits.NO_HIGHER_DOSE.value()));
    filling.put(
        Slot.PDE5_HOURS, Integer.toString(question.protocol().limits().pde5Hours().value()));
    filling.put(Slot.ONSET_FROM, Technique.ONSET.value().getFirst().minutesText());
    filling.put(Slot.ONSET_TO, Technique.ONSET.value().getLast().minutesText());
    filling.put(Slot.PRESS_MINUTES, Technique.COMPRESSION.value().minutesText());
    filling.put(Slot.PUSH_SECONDS, pushSeconds());
    ownOnset().ifPresent(onset -> filling.put(Slot.OWN_ONSET, minutes(onset)));
    return filling;
  }

  private PatientWords texts() {
    return PatientWords.in(said.language());
  }

  private String man() {
    Patient patient = state.file().patient();
    return texts()
        .text(
            PART_MAN,
            Map.of(
                Slot.NAME,
                patient.fullName(),
                Slot.BORN,
                said.language().date(patient.birthDate())));
  }

  private String minutes(TimeSpan span) {
    return texts().text(PART_MINUTES, Map.of(Slot.COUNT, span.minutesText()));
  }

  private String pushSeconds() {
    List<Integer> seconds = Technique.PUSH_SECONDS.value();
    return texts()
        .text(
            PART_FROM_TO,
            Map.of(
                Slot.FIRST,
                seconds.getFirst().toString(),
                Slot.SECOND,
                seconds.getLast().toString()));
  }

  /** The one in the middle of what he reported with this preparation, the lower of two. */
  private Optional<TimeSpan> ownOnset() {
    CourseFile file = state.file();
    List<TimeSpan> told =
        file.reports().stream()
            .map(Written::fact)
            .filter(report -> report.preparation().equals(file.plan().preparation()))
            .map(InjectionReported::details)
            .flatMap(details -> details.onset().stream())
            .sorted()
            .toList();
    return told.size() < ENOUGH_REPORTS
        ? Optional.empty()
        : Optional.of(told.get((told.size() - 1) / 2));
  }
}
