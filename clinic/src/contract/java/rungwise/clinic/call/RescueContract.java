package rungwise.clinic.call;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.call.CallDraft.What;
import rungwise.clinic.callbook.CallBook;
import rungwise.clinic.callbook.CallProtocol;
import rungwise.clinic.called.CallLog;
import rungwise.clinic.called.RescueRecord;
import rungwise.clinic.course.CourseFact.RescueWritten;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.people.Account;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.rescue.RescueWord;
import rungwise.clinic.titration.Staff;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.urgent.Speaker;
import rungwise.dosing.urgent.rescue.GasReading;
import rungwise.dosing.urgent.rescue.LogVerdict;
import rungwise.dosing.urgent.rescue.RescueLimits;
import rungwise.dosing.urgent.rescue.RescueLog.Flag;
import rungwise.quantities.Fault;
import rungwise.quantities.Mass;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;

/**
 * The log of a rescue, over any store. Limits: EAU, Figure 13 (200 mcg every 3 to 5 min, at most 1
 * mg in 1 h), rows B003, B004 and G019 to G026 of the reference sheet. New York is 5 hours behind
 * UTC then.
 */
public abstract class RescueContract {

  private TitrationWorld world;
  private Calls calls;
  private Rescues rescues;
  private CourseId course;
  private Optional<CallBook.Signed> signed = Optional.empty();

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  /** A man on the line since 17:00 whose first dose was signed; it is 4 March, 22:00. */
  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    course = world.open();
    world.signProposed(course);
    world.pass(Duration.ofHours(2 * 24 + 12));
    calls = new Calls(world.ports(), () -> List.of(Staff.PRESCRIBER, Staff.ON_CALL));
    rescues = new Rescues(world.ports(), () -> signed);
  }

  private void opened() {
    calls
        .write(
            Staff.ON_CALL,
            course,
            CallDraft.of(What.BEGAN).at(new SaidTime(SaidTime.TODAY, "17:00")))
        .orThrow();
  }

  private static RescueDraft given(String dose, String clock) {
    return RescueDraft.of(RescueDraft.What.GIVEN)
        .with(RescueFields.DOSE, dose)
        .with(RescueDraft.TIME, clock)
        .with(RescueDraft.SIDE, "LEFT")
        .with(RescueDraft.SECOND, "a second reader");
  }

  private static RescueDraft prepare(String dose) {
    return RescueDraft.of(RescueDraft.What.PREPARE)
        .with(RescueFields.DOSE, dose)
        .with(RescueDraft.SECOND, "a second reader");
  }

  private static RescueDraft measured(String clock) {
    return RescueDraft.of(RescueDraft.What.MEASURED)
        .with(RescueDraft.TIME, clock)
        .with(RescueDraft.SYSTOLIC, "142")
        .with(RescueDraft.DIASTOLIC, "88")
        .with(RescueDraft.PULSE, "61");
  }

  private Reading<Long> write(RescueDraft draft) {
    return write(Staff.ON_CALL, draft);
  }

  private Reading<Long> write(Account actor, RescueDraft draft) {
    return rescues.write(actor, course, draft);
  }

  private RescueRecord record() {
    return RescueRecord.of(world.file(course));
  }

  private List<Flag> flags() {
    return record().log(Answer.NO, Optional.empty()).flags(RescueLimits.SAMPLE.value());
  }

  private static Mass mcg(long count) {
    return Mass.ofPicograms(count * 1_000_000);
  }

  private static List<String> fields(Reading<Long> read) {
    return read.placed().stream().map(Fault::field).toList();
  }

  private List<LogVerdict.Kind> held(RescueDraft draft) {
    return rescues.held(world.file(course), draft).stream()
        .flatMap(hold -> hold.reasons().stream())
        .map(LogVerdict.Reason::kind)
        .toList();
  }

  @Test
  void what_was_given_is_written_in_any_order_however_soon_and_large_and_flagged() {
    opened();
    write(given("200 mcg", "21:40")).orThrow();
    write(given("900 mcg", "21:38")).orThrow();

    assertThat(record().given()).hasSize(2);
    assertThat(flags().stream().map(Object::getClass))
        .contains(Flag.TooSoon.class, Flag.Together.class, Flag.TooMuch.class, Flag.Unusual.class);
    assertThat(record().log(Answer.NO, Optional.empty()).inLastHour(world.now()))
        .isEqualTo(mcg(1_100));
  }

  @Test
  void each_side_counts_and_nobody_hides_a_dose_in_two_halves() {
    opened();
    write(given("300 mcg", "21:40").with(RescueDraft.SIDE, RescueDraft.EACH)).orThrow();

    assertThat(record().given()).hasSize(2);
    assertThat(record().log(Answer.NO, Optional.empty()).inLastHour(world.now()))
        .isEqualTo(mcg(600));
    assertThat(flags().stream().map(Object::getClass)).contains(Flag.Together.class);
  }

  /** Ten times: row G008, one ampoule in 10 mL given as if it were diluted twice. */
  @Test
  void volume_and_strength_that_do_not_make_the_dose_are_asked_back_and_else_make_it() {
    opened();
    RescueDraft strong =
        given("", "21:40").with(RescueFields.STRENGTH, "1 mg/mL").with(RescueDraft.VOLUME, "2 mL");

    assertThat(fields(write(strong.with(RescueFields.DOSE, "200 mcg"))))
        .containsExactly(RescueFields.DOSE);
    assertThat(fields(write(strong.with(RescueFields.STRENGTH, "1:1000"))))
        .containsExactly(RescueFields.STRENGTH);
    write(strong).orThrow();

    assertThat(record().given().getFirst().dose()).contains(mcg(2_000));
    assertThat(flags().stream().map(Object::getClass)).contains(Flag.TooStrong.class);
  }

  @Test
  void a_dose_of_which_nothing_is_known_is_written_and_holds_the_next() {
    opened();
    write(given("", "21:40")).orThrow();
    write(measured("21:50")).orThrow();

    assertThat(held(prepare("200 mcg"))).containsExactly(LogVerdict.Kind.AMOUNT_NOT_KNOWN);
  }

  @Test
  void nothing_is_prepared_sooner_than_3_minutes_whoever_gives_a_reason() {
    opened();
    write(given("200 mcg", "21:58")).orThrow();
    write(measured("21:59")).orThrow();
    RescueDraft asked =
        prepare("200 mcg").with(RescueDraft.WORDS, "he needs it").with(RescueDraft.READ, "");

    assertThat(fields(write(Staff.PRESCRIBER, asked))).containsExactly(RescueFields.DOSE);
    assertThat(record().words(RescueWord.Prepared.class)).isEmpty();

    world.pass(Duration.ofMinutes(1));
    write(prepare("200 mcg")).orThrow();
    assertThat(record().words(RescueWord.Prepared.class)).hasSize(1);
    assertThat(record().given()).hasSize(1);
  }

  @Test
  void what_holds_is_read_and_overridden_with_a_reason_by_who_treats() {
    opened();
    world.answer(course, Condition.MAO_INHIBITOR, Answer.NOT_KNOWN);
    for (String clock : List.of("21:30", "21:35", "21:40", "21:45", "21:50")) {
      write(given("200 mcg", clock)).orThrow();
    }
    RescueDraft asked = prepare("200 mcg").with(RescueDraft.SECOND, "");
    assertThat(held(asked))
        .containsExactly(
            LogVerdict.Kind.OVER_LIMIT,
            LogVerdict.Kind.PRESSURE_NOT_WRITTEN,
            LogVerdict.Kind.MAO_INHIBITOR,
            LogVerdict.Kind.NO_SECOND_PERSON);
    RescueDraft reasoned = asked.with(RescueDraft.WORDS, "alone, and still firm");
    assertThat(fields(write(reasoned))).containsExactly(RescueDraft.WORDS);

    RescueDraft read =
        reasoned.with(
            RescueDraft.READ, Rescues.token(rescues.held(world.file(course), asked).orElseThrow()));
    assertThat(fields(write(Staff.EDUCATOR, read))).containsExactly(RescueDraft.WORDS);
    assertThat(fields(write(read.with(RescueDraft.WORDS, " ")))).containsExactly(RescueDraft.WORDS);
    write(read).orThrow();

    Written<RescueWritten> last = record().counting().getLast();
    assertThat(last.entry().reason()).contains("alone, and still firm");
    assertThat(last.fact().word())
        .isInstanceOfSatisfying(
            RescueWord.Prepared.class,
            prepared ->
                assertThat(prepared.overridden()).contains(LogVerdict.Kind.OVER_LIMIT).hasSize(4));
  }

  @Test
  void a_struck_dose_counts_no_more_and_stays_in_the_record() {
    opened();
    write(given("900 mcg", "21:40")).orThrow();
    String entry = record().counting().getLast().entry().id().text();
    RescueDraft strike = RescueDraft.of(RescueDraft.What.STRIKE).with(RescueDraft.ENTRY, entry);

    assertThat(write(strike).found()).isEmpty();
    write(strike.with(RescueDraft.WORDS, "it was 90 mcg by the label")).orThrow();

    assertThat(record().given()).isEmpty();
    assertThat(world.file(course).everWritten(RescueWritten.class)).hasSize(2);
    assertThat(write(strike.with(RescueDraft.WORDS, "once more")).found()).isEmpty();
  }

  @Test
  void whoever_was_given_a_rescue_is_reviewed_before_any_dose_although_it_was_short() {
    calls
        .write(
            Staff.ON_CALL,
            course,
            CallDraft.of(What.BEGAN).at(new SaidTime(SaidTime.TODAY, "20:30")))
        .orThrow();
    write(given("200 mcg", "21:40")).orThrow();
    calls
        .write(
            Staff.ON_CALL,
            course,
            CallDraft.of(What.SOFT).at(new SaidTime(SaidTime.TODAY, "21:55")))
        .orThrow();
    assertThat(CallLog.holding(world.file(course))).hasSize(1);

    review();
    assertThat(CallLog.holding(world.file(course))).isEmpty();
    world.pass(Duration.ofHours(3));
    write(given("200 mcg", "21:45").with(RescueDraft.DAY, SaidTime.YESTERDAY)).orThrow();
    assertThat(CallLog.of(world.file(course))).hasSize(1);
    assertThat(CallLog.holding(world.file(course))).hasSize(1);
  }

  private void review() {
    world
        .lifting()
        .reviewEmergency(
            Staff.PRESCRIBER, course, Optional.of(world.now()), "seen, and soft by then")
        .orThrow();
  }

  @Test
  void a_dose_of_a_man_whom_nobody_had_called_opens_a_call_and_holds() {
    write(given("200 mcg", "21:40")).orThrow();

    assertThat(CallLog.open(world.file(course))).isPresent();
    assertThat(CallLog.holding(world.file(course))).hasSize(1);
  }

  @Test
  void what_cannot_be_true_is_asked_back_all_at_once() {
    opened();
    RescueDraft wrong =
        given("200", "23:59")
            .with(RescueDraft.GIVEN_BY, "A Reader")
            .with(RescueDraft.SECOND, "a reader")
            .with(RescueDraft.SYSTOLIC, "80");

    assertThat(fields(write(wrong)))
        .containsExactlyInAnyOrder(
            RescueDraft.TIME, RescueDraft.SYSTOLIC, RescueFields.DOSE, RescueDraft.SECOND);
    assertThat(write(Staff.AUDITOR, given("200 mcg", "21:40")).found()).isEmpty();
    assertThat(record().counting()).isEmpty();
  }

  @Test
  void a_dose_of_days_ago_is_written_with_its_date() {
    opened();
    write(given("200 mcg", "23:10").with(RescueDraft.DATE, "2026-03-01")).orThrow();

    assertThat(world.ports().time().words(record().given().getFirst().at()))
        .contains("1 March")
        .contains("23:10");
  }

  /** Row G036: pO2 below 30, pCO2 above 60, pH below 7.25 (BMJ Best Practice, secondary). */
  @Test
  void a_blood_gas_is_kept_with_what_it_says() {
    opened();
    RescueDraft gas =
        RescueDraft.of(RescueDraft.What.GAS)
            .with(RescueFields.OXYGEN, "25 mmHg")
            .with(RescueFields.CARBON_DIOXIDE, "65 mmHg")
            .with(RescueFields.PH, "6.2");

    assertThat(fields(write(gas))).containsExactly(RescueFields.again(RescueFields.PH));
    write(gas.with(RescueFields.again(RescueFields.PH), "6.2")).orThrow();
    write(gas.with(RescueFields.PH, "7.3")).orThrow();

    assertThat(record().words(RescueWord.GasTaken.class))
        .extracting(RescueWord.GasTaken::reading)
        .satisfiesExactly(
            first -> assertThat(first).isInstanceOf(GasReading.Ischaemic.class),
            second -> assertThat(second).isInstanceOf(GasReading.Indeterminate.class));
  }

  private void sign(CallProtocol protocol) {
    signed = Optional.of(new CallBook.Signed(2, protocol, Staff.PRESCRIBER.id(), world.now()));
  }

  @Test
  void a_step_of_the_signed_protocol_is_ticked_with_its_words_of_then() {
    opened();
    sign(CallProtocol.SAMPLE);
    String words = CallProtocol.SAMPLE.steps().get(2).words();
    RescueDraft tick =
        RescueDraft.of(RescueDraft.What.TICK)
            .with(RescueDraft.STEP, words)
            .with(RescueDraft.SPEAKER, Speaker.HE.name())
            .with(RescueDraft.WORDS, "his sister drives");

    write(tick).orThrow();
    assertThat(fields(write(tick.with(RescueDraft.STEP, "another"))))
        .containsExactly(RescueDraft.STEP);

    assertThat(record().words(RescueWord.Ticked.class))
        .containsExactly(new RescueWord.Ticked(2, 3, words, world.now(), Speaker.HE));
    assertThat(record().counting().getLast().entry().reason()).contains("his sister drives");
  }

  /** The American guideline asks for 3 to 5 min: row B004. */
  @Test
  void the_limits_that_were_signed_hold_beside_the_floor() {
    opened();
    sign(
        new CallProtocol(
            CallProtocol.SAMPLE.steps(),
            "555 0100",
            new RescueLimits(mcg(500), TimeSpan.ofMinutes(5))));
    write(given("200 mcg", "21:56")).orThrow();
    write(measured("21:59")).orThrow();

    assertThat(held(prepare("400 mcg")))
        .containsExactly(LogVerdict.Kind.OVER_LIMIT, LogVerdict.Kind.SOONER_THAN_SIGNED);
  }
}
