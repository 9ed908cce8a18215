package rungwise.clinic.titration;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.InjectionDetails;
import rungwise.clinic.course.NewEntry;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.room.StartDraft;
import rungwise.clinic.room.VisitForms;
import rungwise.clinic.standing.ReportFlag;
import rungwise.clinic.supply.VialForm;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.screening.Answer;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** The label of the vial decides what was injected, whatever was planned, over any store. */
public abstract class LabelDecidesContract {

  private static final Preparation PLANNED = SamplePreparations.ALPROSTADIL_20;
  private static final Preparation STRONG = SamplePreparations.ALPROSTADIL_40;
  private static final Volume DRAWN = Volume.ofMicrolitres(120);

  private TitrationWorld world;
  private CourseId course;
  private EntryId planned;

  /** Opens an empty store. */
  protected abstract CoursePorts open();

  /** 0.12 mL of 20 mcg/mL is signed for the clinic, and he has a vial of it. */
  @BeforeEach
  void begin() {
    world = new TitrationWorld(open(), new LabelReader());
    course = world.open();
    planned = world.file(course).vials().getFirst().entry().id();
    world.signProposed(course);
    world.pass(Duration.ofDays(2));
  }

  private static ReportForm form() {
    return ReportForm.at("2026-03-02", "20:00").mark("12");
  }

  private InjectionReported kept() {
    return world.file(course).reports().getLast().fact();
  }

  private History history() {
    return world.state(course).question().history();
  }

  private Injection read() {
    return history().last().orElseThrow();
  }

  private boolean isClosed(Preparation preparation, long microlitres) {
    return history().closing(preparation, Volume.ofMicrolitres(microlitres)).isPresent();
  }

  @Test
  void a_report_is_kept_as_what_the_label_of_its_vial_says_and_both_are_shown() {
    EntryId strong = world.receive(course, VialForm.of(STRONG).lot("S-1"));

    Reading<Long> reading = world.told(course, form().vial(strong));

    assertThat(kept().preparation()).isEqualTo(STRONG.id());
    assertThat(kept().ordered()).isEmpty();
    assertThat(read().preparation()).isEqualTo(STRONG);
    assertThat(world.state(course).flags())
        .extracting(ReportFlag::kind)
        .contains(ReportFlag.Kind.OTHER_LABEL);
    assertThat(reading.notices())
        .contains(
            "The label of the vial says alprostadil 40 mcg per mL, and planned was alprostadil 20"
                + " mcg per mL. The label decides: recorded as 0.12 mL of alprostadil 40 mcg per"
                + " mL, which holds alprostadil 4.8 mcg.");
  }

  @Test
  void a_long_erection_closes_what_the_label_says_and_not_half_of_it() {
    EntryId strong = world.receive(course, VialForm.of(STRONG));

    world.told(course, form().vial(strong).exactly("150")).orThrow();

    assertThat(isClosed(STRONG, 120)).isTrue();
    assertThat(isClosed(PLANNED, 240)).isTrue();
    assertThat(isClosed(PLANNED, 239)).isFalse();
  }

  @Test
  void a_label_that_the_clinic_has_no_preparation_for_is_read_from_its_words() {
    EntryId other =
        world.receive(course, VialForm.of(PLANNED).strength(Component.ALPROSTADIL, "12.5"));

    Reading<Long> reading = world.told(course, form().vial(other).exactly("150"));

    assertThat(reading.notices())
        .first()
        .asString()
        .contains("recorded as 0.12 mL of alprostadil 12.5 mcg per mL", "alprostadil 1.5 mcg");
    assertThat(read().preparation().composition()).isEqualTo("alprostadil 12.5 mcg per mL");
    assertThat(isClosed(PLANNED, 75)).isTrue();
    assertThat(isClosed(PLANNED, 74)).isFalse();
  }

  @Test
  void a_mixture_that_the_clinic_has_no_preparation_for_keeps_every_component() {
    Preparation mixture = SamplePreparations.THREE_DRUG;
    EntryId other =
        world.receive(course, VialForm.of(mixture).strength(Component.ATROPINE, "0.25"));

    world.told(course, form().vial(other)).orThrow();

    assertThat(read().preparation().composition())
        .isEqualTo(
            "papaverine hydrochloride 30 mg, phentolamine mesylate 1 mg, alprostadil 10 mcg,"
                + " atropine sulfate 0.25 mg per mL");
  }

  @Test
  void with_two_labels_on_record_every_report_is_asked_for_its_vial_and_one_label_asks_nothing() {
    world.told(course, form()).orThrow();
    world.receive(course, VialForm.of(STRONG));

    ReportAnswer refused = asked(ReportForm.at("2026-03-03", "20:00").mark("12"));

    assertThat(refused.faults()).extracting(PartFault::part).containsExactly(ReportPart.VIAL);
    assertThat(refused.faults().getFirst().text())
        .contains("alprostadil 20 mcg per mL; alprostadil 40 mcg per mL");
    assertThat(asked(ReportForm.at("2026-03-03", "20:00").mark("12").vialNotKnown()).faults())
        .isEmpty();
  }

  private ReportAnswer asked(ReportForm form) {
    return world.titration().reports().enter(Staff.EDUCATOR, course, form.draft());
  }

  @Test
  void from_nobody_knows_which_vial_it_closes_by_each_label_and_proves_nothing() {
    world.receive(course, VialForm.of(TitrationWorld.WEAK));

    world.told(course, form().vialNotKnown().exactly("150")).orThrow();

    assertThat(read().preparation()).isEqualTo(PLANNED);
    assertThat(read().provesShort()).isFalse();
    assertThat(isClosed(PLANNED, 120)).isTrue();
    assertThat(isClosed(PLANNED, 30)).isTrue();
    assertThat(isClosed(PLANNED, 29)).isFalse();
  }

  @Test
  void a_struck_emergency_from_nobody_knows_which_vial_is_told_once_and_not_once_for_each_label() {
    world.receive(course, VialForm.of(TitrationWorld.WEAK));
    world.told(course, form().vialNotKnown().exactly("240")).orThrow();
    EntryId report = world.lastReport(course);

    world
        .told(course, form().vialNotKnown().exactly("200").correcting(report, "asked again"))
        .orThrow();

    assertThat(history().openEmergencies()).hasSize(1);
  }

  @Test
  void a_vial_that_came_after_the_report_was_told_is_not_what_it_may_have_been() {
    world.told(course, form().vialNotKnown().exactly("150")).orThrow();

    world.receive(course, VialForm.of(TitrationWorld.WEAK));

    assertThat(isClosed(PLANNED, 120)).isTrue();
    assertThat(isClosed(PLANNED, 119)).isFalse();
  }

  @Test
  void a_label_that_was_written_down_wrongly_is_asked_again_of_every_report_from_that_vial() {
    world.told(course, form().vial(planned).exactly("150")).orThrow();
    assertThat(isClosed(PLANNED, 119)).isFalse();

    world
        .vials()
        .amend(
            Staff.EDUCATOR,
            course,
            planned,
            VialForm.of(TitrationWorld.WEAK).draft(),
            "the label was read again")
        .orThrow();

    assertThat(read().preparation().composition()).isEqualTo("alprostadil 5 mcg per mL");
    assertThat(isClosed(PLANNED, 30)).isTrue();
  }

  @Test
  void a_correction_that_names_another_vial_suspends_the_dose_that_rested_on_the_first() {
    EntryId weak = world.receive(course, VialForm.of(TitrationWorld.WEAK));
    world.told(course, form().place("clinic").vial(planned).exactly("30")).orThrow();
    EntryId report = world.lastReport(course);
    world.receive(course, VialForm.of(PLANNED));
    world.signProposed(course);
    assertThat(world.blocks(course)).doesNotContain(GuardRule.NO_FIRST_DOSE);

    world
        .told(course, form().vial(weak).exactly("30").correcting(report, "the other vial"))
        .orThrow();

    assertThat(read().preparation()).isEqualTo(TitrationWorld.WEAK);
    assertThat(world.blocks(course)).contains(GuardRule.NO_FIRST_DOSE);
  }

  @Test
  void a_correction_to_a_vial_that_nobody_knows_is_again_one_of_what_was_planned() {
    EntryId strong = world.receive(course, VialForm.of(STRONG));
    world.told(course, form().vial(strong)).orThrow();
    EntryId report = world.lastReport(course);

    world.told(course, form().vialNotKnown().correcting(report, "he does not know")).orThrow();

    assertThat(kept().preparation()).isEqualTo(PLANNED.id());
  }

  @Test
  void a_visit_is_kept_as_what_the_label_of_the_vial_says() {
    EntryId strong = world.receive(course, VialForm.of(STRONG));
    var forms = new VisitForms(world);

    assertThat(world.room().start(Staff.EDUCATOR, course, forms.start("12").from("")).faults())
        .singleElement()
        .asString()
        .startsWith("Say from which vial it is drawn: the labels of his vials differ");
    assertThat(start(forms.start("12"), strong).faults())
        .contains("Not now: " + GuardRule.VIAL_DIFFERS.wording());
    Reading<Long> given = start(forms.alreadyGiven("12"), strong);

    assertThat(given.notices())
        .anySatisfy(notice -> assertThat(notice).contains("The label decides: recorded as 0.12"));
    var observing = world.file(course).observing().getFirst().fact();
    assertThat(observing.preparation()).isEqualTo(STRONG.id());
    assertThat(observing.ordered()).isEmpty();
    assertThat(world.room().observed(world.file(course)).getFirst().preparation())
        .isEqualTo(STRONG);
  }

  private Reading<Long> start(StartDraft draft, EntryId vial) {
    return world.room().start(Staff.EDUCATOR, course, draft.from(vial.text()));
  }

  @Test
  void at_a_visit_a_vial_that_nobody_knows_is_for_what_has_happened_already() {
    world.receive(course, VialForm.of(STRONG));
    var forms = new VisitForms(world);
    String notKnown = StartDraft.VIAL_NOT_KNOWN;

    assertThat(
            world.room().start(Staff.EDUCATOR, course, forms.start("12").from(notKnown)).faults())
        .containsExactly("Read the label of the vial before he is injected, and choose it.");
    world.room().start(Staff.EDUCATOR, course, forms.alreadyGiven("12").from(notKnown)).orThrow();

    assertThat(world.file(course).observing().getFirst().fact().vial()).isEmpty();
  }

  /** Such rows were kept before the label was asked: the vial is named beside what was planned. */
  @Test
  void a_row_that_was_kept_as_planned_is_read_by_the_label_of_its_vial() {
    EntryId strong = world.receive(course, VialForm.of(STRONG));
    var row =
        new InjectionReported(
            TitrationWorld.START.plus(Duration.ofHours(10)),
            PLANNED.id(),
            "u100-1",
            DRAWN,
            Optional.of(DRAWN),
            Grade.USABLE,
            new SoftAfter.Exactly(TimeSpan.ofMinutes(150)),
            SimpleCauses.NONE_FOUND,
            Place.HOME,
            Optional.empty(),
            from(strong));
    CoursePorts stored = world.stored();
    stored
        .transactions()
        .inTransaction(
            () ->
                stored
                    .courses()
                    .append(NewEntry.of(course, row, Staff.EDUCATOR.id(), world.now())));

    assertThat(read().preparation().isSameAs(STRONG)).isTrue();
    assertThat(read().ordered()).isEmpty();
    assertThat(isClosed(PLANNED, 239)).isFalse();
    assertThat(List.of(isClosed(PLANNED, 240), isClosed(STRONG, 120))).containsOnly(true);
  }

  private static InjectionDetails from(EntryId vial) {
    InjectionDetails none = InjectionDetails.NONE;
    return new InjectionDetails(
        none.onset(),
        none.usable(),
        none.spot(),
        none.pain(),
        Answer.NOT_KNOWN,
        Answer.NOT_KNOWN,
        none.causes(),
        Optional.of(vial),
        "",
        Answer.NOT_KNOWN);
  }
}
