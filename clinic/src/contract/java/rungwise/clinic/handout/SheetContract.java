package rungwise.clinic.handout;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.clock.ClockBelief;
import rungwise.clinic.course.CourseFact.SheetMade;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.handout.SheetStanding.Change;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.running.EndDraft;
import rungwise.clinic.running.Running;
import rungwise.clinic.supply.VialForm;
import rungwise.clinic.titration.ReportForm;
import rungwise.clinic.titration.SignForms;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.clinic.words.HomeSheet;
import rungwise.clinic.words.PatientWord;
import rungwise.clinic.words.PatientWords;
import rungwise.clinic.words.Slot;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.quantities.Reading;

/** Sheets for home: made of a dose in force alone, and never current a moment longer than it. */
public abstract class SheetContract {

  private static final String ADDRESS = "https://clinic.example/sheet";

  private TitrationWorld world;
  private Sheets sheets;
  private CourseId course;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  /** A course with a dose that is signed for home. */
  @BeforeEach
  void begin() {
    CoursePorts stored = open();
    world = new TitrationWorld(stored, new LabelReader());
    course = world.open();
    world.makeReady(course);
    world.signProposed(course);
    world.pass(Duration.ofDays(2));
    world.report(course, ReportForm.at("2026-03-02", "20:00")).orThrow();
    world.sign(course, SignForms.atHome(world.proposed(course))).orThrow();
    var ids = new AtomicInteger();
    sheets =
        new Sheets(
            world.ports(),
            stored.signedWords(),
            new PlainPress(),
            () -> new UUID(9, ids.incrementAndGet()));
  }

  private SheetDraft draft(String language, String hospital, String transport) {
    return new SheetDraft(
        world.file(course).signedDose().map(one -> one.entry().id().text()).orElse(""),
        language,
        "letter",
        "FRIDGE",
        "555 0100",
        "555 0101",
        hospital,
        transport);
  }

  private Reading<EntryId> make() {
    return sheets.make(Staff.EDUCATOR, course, draft("en", "North Hospital", "by taxi"), ADDRESS);
  }

  private HomeSheet made() {
    EntryId entry = make().orThrow();
    return ((SheetMade) world.file(course).entry(entry).fact()).sheet();
  }

  private SheetStanding standing(HomeSheet sheet) {
    return sheets.standing(sheet.code()).orElseThrow();
  }

  private void assertNotCurrent(HomeSheet sheet) {
    assertThat(standing(sheet)).isInstanceOf(SheetStanding.NotCurrent.class);
    assertThat(make().found()).isEmpty();
  }

  private void assertAsksForNew(HomeSheet sheet, Change... changes) {
    assertThat(standing(sheet))
        .isInstanceOfSatisfying(
            SheetStanding.AskForNew.class,
            ask -> assertThat(ask.changed()).containsExactlyInAnyOrder(changes));
  }

  private ReportForm evening() {
    return ReportForm.at("2026-03-04", "20:00");
  }

  @Test
  void it_says_the_signed_dose_and_what_goes_with_it() {
    HomeSheet sheet = made();

    assertThat(sheet.text(PatientWord.SHEET_DOSE_VOLUME)).contains("0.12 mL", "12-unit mark");
    assertThat(sheet.text(PatientWord.SHEET_TIME_WAIT)).contains("24 hours");
    assertThat(sheet.text(PatientWord.SHEET_TIME_WEEK)).contains("no more than 3 shots");
    assertThat(sheet.text(PatientWord.SHEET_KEEP_LAST)).contains("Sunday, 31 December 2028");
    assertThat(sheet.text(PatientWord.SHEET_STRIP_FOUR)).contains("North Hospital");
    assertThat(sheet.text(PatientWord.SHEET_CURRENT)).contains(sheet.code().words());
    assertThat(sheet.square()).isEqualTo(ADDRESS + "?code=" + sheet.code().text());
    assertThat(sheet.says(PatientWord.SHEET_NEXT_DOSE)).isFalse();
    assertThat(standing(sheet)).isInstanceOf(SheetStanding.Current.class);
  }

  @Test
  void every_text_of_it_is_whole_and_its_document_is_always_the_same() {
    EntryId entry = make().orThrow();
    byte[] first = sheets.document(course, entry).orElseThrow();

    assertThat(new String(first, StandardCharsets.UTF_8)).doesNotContain("{").contains("Man 1");
    running().pause(Staff.EDUCATOR, course, "travels").orThrow();
    assertThat(sheets.document(course, entry)).contains(first);
  }

  @Test
  void a_next_step_stands_on_it_only_if_it_was_signed() {
    world.sign(course, SignForms.withNextStep(SignForms.atHome(world.proposed(course)))).orThrow();
    HomeSheet sheet = made();

    assertThat(sheet.text(PatientWord.SHEET_NEXT_DOSE)).contains("0.25 mL", "25-unit mark");
    assertThat(sheet.says(PatientWord.SHEET_NEXT_COUNT)).isFalse();
  }

  @Test
  void all_that_is_wrong_with_a_form_is_said_at_once_at_its_field() {
    var wrong =
        new SheetDraft(
            draft("en", "", "").order(), "xx", "", "", "", "12", "\u05d0\u05d1", "x".repeat(1000));

    assertThat(sheets.make(Staff.EDUCATOR, course, wrong, ADDRESS).placed())
        .extracting(fault -> fault.field())
        .containsExactlyInAnyOrder(
            SheetDraft.LANGUAGE,
            SheetDraft.PAPER,
            SheetDraft.KEEPING,
            SheetDraft.CLINIC_NUMBER,
            SheetDraft.AFTER_HOURS,
            SheetDraft.HOSPITAL,
            SheetDraft.TRANSPORT);
  }

  @Test
  void who_does_not_treat_him_makes_none() {
    assertThat(
            sheets
                .make(Staff.AUDITOR, course, draft("en", "North Hospital", "by taxi"), ADDRESS)
                .found())
        .isEmpty();
  }

  @Test
  void none_is_made_of_a_dose_for_the_clinic_or_of_none() {
    world.signProposed(course);
    assertThat(make().faults()).singleElement().asString().contains("for the clinic only");

    CourseId unsigned = world.open();
    assertThat(
            sheets
                .make(Staff.EDUCATOR, unsigned, draft("en", "North Hospital", "by taxi"), ADDRESS)
                .faults())
        .containsExactly(SheetRefusals.NOT_SIGNED);
  }

  @Test
  void what_he_may_do_again_by_mere_time_leaves_it_current() {
    HomeSheet sheet = made();
    world.pass(Duration.ofHours(12));
    world.report(course, evening().mark("12").grade("3").exactly("40").place("home")).orThrow();

    assertThat(world.state(course).mayInject().isClear()).isFalse();
    assertThat(standing(sheet)).isInstanceOf(SheetStanding.Current.class);
  }

  @Test
  void a_late_report_of_a_long_erection_ends_it_in_the_same_instant() {
    HomeSheet sheet = made();
    world.pass(Duration.ofHours(14));
    world.report(course, evening().mark("12").exactly("130").place("home")).orThrow();

    assertNotCurrent(sheet);
  }

  @Test
  void a_correction_ends_it_in_the_same_instant() {
    world.pass(Duration.ofHours(14));
    world.report(course, evening().mark("12").grade("3").exactly("40").place("home")).orThrow();
    HomeSheet sheet = made();
    assertThat(standing(sheet)).isInstanceOf(SheetStanding.Current.class);
    world
        .report(
            course,
            evening()
                .mark("12")
                .exactly("130")
                .place("home")
                .correcting(world.lastReport(course), "he looked at the clock again"))
        .orThrow();

    assertNotCurrent(sheet);
  }

  @Test
  void another_dose_or_plan_ends_it() {
    HomeSheet sheet = made();
    world.sign(course, SignForms.atHome(world.proposed(course))).orThrow();
    assertThat(standing(sheet)).isInstanceOf(SheetStanding.NotCurrent.class);

    HomeSheet second = made();
    assertThat(standing(second)).isInstanceOf(SheetStanding.Current.class);
    world.chooseBarrel(course, "u100-0.5").orThrow();
    assertNotCurrent(second);
  }

  @Test
  void a_recall_of_the_preparation_ends_it() {
    HomeSheet sheet = made();
    world.withdraw(SamplePreparations.ALPROSTADIL_20.id());
    world.pass(Duration.ofMinutes(1));

    assertNotCurrent(sheet);
  }

  @Test
  void an_answer_that_forbids_ends_it_and_an_override_makes_another_order() {
    HomeSheet sheet = made();
    world.answer(course, Condition.SICKLE_CELL, Answer.YES);

    assertNotCurrent(sheet);
  }

  @Test
  void a_pause_and_an_end_end_it() {
    HomeSheet sheet = made();
    running().pause(Staff.EDUCATOR, course, "chest pain").orThrow();
    assertNotCurrent(sheet);
    running().resume(Staff.PRESCRIBER, course, world.file(course).basis(), "seen").orThrow();
    assertThat(standing(sheet)).isInstanceOf(SheetStanding.Current.class);
    running()
        .end(
            Staff.PRESCRIBER,
            course,
            new EndDraft("HIS_WISH", "", "RETURNED", "TABLETS", "", "he has decided"))
        .orThrow();
    assertNotCurrent(sheet);
  }

  private Running running() {
    return new Running(world.ports());
  }

  @Test
  void while_it_is_not_known_what_time_it_is_none_is_current() {
    HomeSheet sheet = made();
    world.judgeClockBy(
        () ->
            new ClockBelief.Wrong(
                List.of(
                    new ClockBelief.Sign(ClockBelief.Sign.What.TIME_SOURCE, Duration.ofDays(1)))));

    assertNotCurrent(sheet);
  }

  @Test
  void a_new_vial_and_a_new_plan_ask_for_a_new_sheet() {
    HomeSheet sheet = made();
    world.pass(Duration.ofMinutes(1));
    world.receive(
        course, VialForm.of(SamplePreparations.ALPROSTADIL_20).lot("L-2").beyondUse("2027-06-30"));
    assertAsksForNew(sheet, Change.VIAL);

    HomeSheet second = made();
    assertThat(second.filled(Slot.LAST_DAY)).contains("Wednesday, 30 June 2027");
    world.makeReady(course);
    assertAsksForNew(second, Change.PLAN);
  }

  @Test
  void a_code_that_was_never_given_is_not_known() {
    HomeSheet sheet = made();
    var other =
        new HomeSheet(
            sheet.id() + "0",
            sheet.language(),
            sheet.paper(),
            sheet.wordsVersion(),
            sheet.address(),
            sheet.words(),
            sheet.filling());

    assertThat(sheets.standing(other.code())).isEmpty();
  }

  @Test
  void the_words_are_a_draft_until_a_prescriber_has_signed_them() {
    assertThat(made().says(PatientWord.SHEET_DRAFT)).isTrue();
    assertThat(sheets.signWords(Staff.EDUCATOR, PatientWords.VERSION).found()).isEmpty();
    sheets.signWords(Staff.PRESCRIBER, PatientWords.VERSION).orThrow();

    assertThat(made().says(PatientWord.SHEET_DRAFT)).isFalse();
    assertThat(sheets.view(world.state(course), by -> "Ines Halloran").signedWords())
        .startsWith("Ines Halloran, ");
    assertThat(sheets.signWords(Staff.PRESCRIBER, PatientWords.VERSION).found()).isEmpty();
  }
}
