package rungwise.web.call;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.call.CallDraft;
import rungwise.clinic.call.CallDraft.What;
import rungwise.clinic.call.CallStage;
import rungwise.clinic.call.SaidTime;
import rungwise.clinic.callbook.CallBook;
import rungwise.clinic.callbook.CallBooks;
import rungwise.clinic.callbook.CallProtocol;
import rungwise.clinic.coded.HandedOnFor;
import rungwise.clinic.people.Account;
import rungwise.clinic.sheet.CallView;
import rungwise.dosing.urgent.Elapsed;
import rungwise.dosing.urgent.Speaker;
import rungwise.web.callbook.DepartmentLine;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.DoseLines;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.Typed;

/**
 * The call of a man on record as shown.
 *
 * @param call what is known of him and of the call
 * @param mayWrite whether the reader may write in it
 * @param signed the protocol for calls that the clinic signed last; else the sample stands
 * @param departments the emergency departments on the clinic's list
 * @param instruction which instruction stands first
 * @param counted when it began and how long ago; empty where nobody said or knows
 * @param number whom to call, in the instruction's own words
 */
public record CourseCallPage(
    CallView call,
    boolean mayWrite,
    Optional<CallBook.Signed> signed,
    List<DepartmentLine> departments,
    Instruction instruction,
    Optional<Counted> counted,
    Optional<DoseLines> dose,
    String number,
    Form form,
    String notice,
    Faults faults,
    Ticking ticking) {

  /** The fields of what may be written down. */
  public record Form(
      Choice day,
      Field time,
      Choice speaker,
      Field place,
      Field whom,
      Optional<Choice> to,
      Choice why,
      Field words) {

    static Form of(Typed typed, List<Account> others, Faults faults) {
      return new Form(
          choice(CallForm.DAY, "Day", days(), typed, faults),
          field(ClinicTime.TIME_FIELD, "He injected, or it became firm, at", typed, faults)
              .withHint("Hours and minutes, such as 19:50. Of two times the earlier one."),
          choice(
              CallDraft.SPEAKER,
              "Said by",
              Arrays.stream(Speaker.values())
                  .map(
                      one ->
                          new Option(one.name(), one.words(), "", /* picked= */ one == Speaker.HE)),
              typed,
              faults),
          field(CallDraft.PLACE, "Where he is", typed, faults),
          field(CallDraft.WHOM, "Who has taken him over", typed, faults),
          others.isEmpty()
              ? Optional.empty()
              : Optional.of(
                  choice(
                      CallDraft.PICKED,
                      "Who has the call from now on",
                      others.stream()
                          .map(
                              one ->
                                  new Option(
                                      one.id().text(), one.fullName(), "", /* picked= */ false)),
                      typed,
                      faults)),
          choice(
              CallDraft.WHY,
              "Why",
              Arrays.stream(HandedOnFor.values())
                  .map(one -> new Option(one.name(), one.words(), "", /* picked= */ false)),
              typed,
              faults),
          field(CallDraft.WORDS, "In your words", typed, faults).optional());
    }

    private static Stream<Option> days() {
      return Stream.of(
          new Option(SaidTime.TODAY, "Today", "", /* picked= */ true),
          new Option(SaidTime.YESTERDAY, "Yesterday", "", /* picked= */ false));
    }

    private static Choice choice(
        String name, String label, Stream<Option> options, Typed typed, Faults faults) {
      return Choice.of(name, label, options.toList()).asTyped(typed).withFaults(faults);
    }

    private static Field field(String name, String label, Typed typed, Faults faults) {
      return Field.of(Field.Kind.TEXT, name, label).asTyped(typed).withFaults(faults);
    }
  }

  static CourseCallPage of(
      CallView call,
      List<Account> others,
      boolean mayWrite,
      CallBooks books,
      Typed typed,
      String notice,
      Faults faults,
      Ticking ticking,
      ClinicTime time) {
    return new CourseCallPage(
        call,
        mayWrite,
        books.signed(),
        DepartmentLine.all(books),
        call.elapsed()
            .map(elapsed -> Instruction.of(CallStage.of(elapsed), /* isSoft= */ false))
            .orElse(Instruction.NOTHING_SAID),
        call.began()
            .filter(at -> !ticking.isWrong() && !at.isAfter(ticking.now()))
            .map(at -> Counted.of(at, ticking.now(), time)),
        call.dose().map(DoseLines::of),
        call.number()
            .or(() -> Optional.of(books.protocol().number()).filter(one -> !one.isEmpty()))
            .map(one -> "his clinic at " + one)
            .orElse(DEFAULT_NUMBER),
        Form.of(typed, others, faults),
        notice,
        faults,
        ticking);
  }

  /** What stands in place of a number that is not on record. */
  public static final String DEFAULT_NUMBER = "his clinic's number for nights and weekends";

  /** Where everything is written down. */
  public String path() {
    return "/courses/" + call.course() + "/call";
  }

  /** Whether a step of the signed protocol is due now. */
  public boolean isDue(CallProtocol.Step step) {
    return step.isDue(call.elapsed().orElseGet(() -> new Elapsed.Unknown(Optional.empty())));
  }

  public String coursePath() {
    return "/courses/" + call.course();
  }

  /** What a form sends. */
  static CallDraft draft(Typed typed) {
    return new CallDraft(
        What.of(typed.text(CallDraft.WHAT)),
        new SaidTime(typed.text(CallForm.DAY), typed.text(ClinicTime.TIME_FIELD)),
        typed.text(CallDraft.SPEAKER),
        typed.text(CallDraft.PICKED),
        typed.text(CallDraft.WHY),
        typed.text(CallDraft.PLACE),
        typed.text(CallDraft.WHOM),
        typed.text(CallDraft.WORDS));
  }
}
