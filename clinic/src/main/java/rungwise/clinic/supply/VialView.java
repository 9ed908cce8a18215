package rungwise.clinic.supply;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.befell.VialWords;
import rungwise.clinic.course.CourseFact.VialBefell;
import rungwise.clinic.course.CourseFact.VialReceived;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.Vial;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.standing.VialUse;
import rungwise.dosing.history.VialInHand;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.supply.Opening;
import rungwise.dosing.supply.VialCare;
import rungwise.dosing.supply.VialDates;
import rungwise.dosing.supply.VialEnd;
import rungwise.dosing.supply.VialEnd.InUse;
import rungwise.dosing.supply.VialLimit;

/**
 * The vials of a man in words.
 *
 * @param answer whether the next dose may be drawn from the vial in use
 * @param mayBeUsed whether it may
 * @param ordered the composition that was ordered
 * @param components the components of the order, in its order
 * @param others every other component that a label may name
 * @param basis the number of the last entry that is shown
 * @param inUse the vial dispensed last, if there is one
 * @param earlier the vials before it, the last one first
 */
public record VialView(
    String answer,
    boolean mayBeUsed,
    String ordered,
    List<Component> components,
    List<Component> others,
    long basis,
    Optional<Line> inUse,
    List<Line> earlier) {

  /**
   * One vial.
   *
   * @param entry the id of the entry that says so
   * @param isSame whether its label says what is ordered now
   * @param usableUntil the last day of use, or the last minute where hours count
   * @param endedBy what ends it then
   * @param fromNow how long until then, or since
   * @param made may be empty, as may the device
   * @param opened when, and how it is known
   * @param by who wrote it down, and when
   * @param care whether it may be drawn from, by how it was kept
   * @param befell what befell it, the last thing first
   */
  public record Line(
      String entry,
      Vial vial,
      boolean isSame,
      String usableUntil,
      String endedBy,
      String fromNow,
      String beyondUse,
      String made,
      String opened,
      String by,
      VialCare care,
      List<Befell> befell) {

    public Line {
      befell = List.copyOf(befell);
    }

    /** What its last day means: nothing that was kept otherwise may be used until then. */
    public String untilWhat() {
      return care == VialCare.AS_LABELLED ? "May be used until" : "Last day by its dates alone";
    }

    /** What the label says, a line for each component. */
    public List<String> labelled() {
      return amounts(vial.composition());
    }

    /** What a reader of both is told. */
    public String comparison() {
      return isSame ? "The same" : "Differs: not to be used";
    }
  }

  /**
   * Something that befell a vial.
   *
   * @param rule what the general rule says of it; may be empty
   * @param reason who says so, in the writer's words
   * @param by who wrote it down, and when
   */
  public record Befell(String what, String rule, String reason, String by) {}

  private static final String NOT_KNOWN =
      "Not known whether it is in date: it is not known what time it is. Compare its dates with"
          + " another clock";
  private static final String NOT_SAID = "";
  private static final String PER = " per mL";
  private static final String BETWEEN = ", ";

  public VialView {
    components = List.copyOf(components);
    others = List.copyOf(others);
    earlier = List.copyOf(earlier);
  }

  /** What was ordered, a line for each component. */
  public List<String> orderedAmounts() {
    return amounts(ordered);
  }

  private static List<String> amounts(String composition) {
    String parts = composition.substring(0, composition.length() - PER.length());
    return Arrays.stream(parts.split(BETWEEN, -1)).map(part -> part + PER).toList();
  }

  /** The vials of a course at its instant. */
  public static VialView of(
      CourseState state, CourseView course, Map<EntryId, VialUse> uses, ClinicTime time) {
    Preparation preparation = state.question().preparation();
    var lines = new ArrayList<Line>();
    for (Written<VialReceived> written : state.file().ownVials()) {
      VialUse use = Optional.ofNullable(uses.get(written.entry().id())).orElseThrow();
      lines.add(line(written, use, state, course, time));
    }
    Collections.reverse(lines);
    return new VialView(
        answer(state),
        state
            .question()
            .vial()
            .filter(vial -> vial.label().isOf(preparation))
            .filter(vial -> state.clock().isKnown())
            .filter(vial -> isInDate(vial.end(), state))
            .filter(vial -> vial.end().inUse() == InUse.KNOWN)
            .filter(vial -> vial.care() == VialCare.AS_LABELLED)
            .isPresent(),
        preparation.composition(),
        Arrays.stream(Component.values()).filter(preparation::holds).toList(),
        Arrays.stream(Component.values()).filter(one -> !preparation.holds(one)).toList(),
        state.file().basis(),
        lines.stream().findFirst(),
        lines.stream().skip(1).toList());
  }

  private static String answer(CourseState state) {
    Optional<VialInHand> vial = state.question().vial();
    if (vial.isEmpty()) {
      return "No vial is on record";
    }
    VialEnd end = vial.get().end();
    if (!vial.get().label().isOf(state.question().preparation())) {
      return "The label differs from the order: not to be used";
    }
    if (!isInDate(end, state)) {
      return past(end.by());
    }
    if (!state.clock().isKnown()) {
      return NOT_KNOWN;
    }
    return switch (vial.get().care()) {
      case AS_LABELLED -> ofLabelled(end);
      case TO_BE_JUDGED -> "Not to be used until a prescriber has judged what happened to it";
      case GONE -> "By the record it is gone: enter the vial that he has";
    };
  }

  private static String ofLabelled(VialEnd end) {
    return switch (end.inUse()) {
      case KNOWN -> "The label says what was ordered, and the vial is in date";
      case OPEN_AND_NOT_STATED ->
          "It is open, and nobody has said for how long it may be: ask the pharmacy";
    };
  }

  /** As late as it may be by the truth, while the clock is believed. */
  private static boolean isInDate(VialEnd end, CourseState state) {
    return end.isInDate(state.now().plus(state.clock().slack()));
  }

  private static String past(VialLimit limit) {
    return switch (limit) {
      case VialLimit.LabelDate label -> "Past the date on its label: not to be used";
      case VialLimit.DaysOpen open -> "Open for too many days: not to be used";
      case VialLimit.Dissolved dissolved -> "Dissolved too long ago: not to be used";
      case VialLimit.SingleUse once -> "Opened for one injection: not to be kept and used";
    };
  }

  private static Line line(
      Written<VialReceived> written,
      VialUse use,
      CourseState state,
      CourseView course,
      ClinicTime time) {
    Vial vial = written.fact().vial();
    VialDates dates = use.dates();
    CourseView.EntryLine entry = course.entry(written.entry().number());
    return new Line(
        written.entry().id().text(),
        vial,
        new VialInHand.Label(vial.composition()).isOf(state.question().preparation()),
        usableUntil(use.end(), time),
        endedBy(use.end()),
        fromNow(use.end(), state),
        ClinicTime.words(dates.beyondUse()),
        dates.made().map(ClinicTime::words).orElse(NOT_SAID),
        opened(dates, vial.dates()),
        entry.by() + ", " + entry.at(),
        use.life().care(),
        use.life().all().reversed().stream().map(one -> befell(one, course)).toList());
  }

  private static Befell befell(Written<VialBefell> written, CourseView course) {
    CourseView.EntryLine entry = course.entry(written.entry().number());
    return new Befell(
        VialWords.of(written.fact().word()),
        VialWords.byRule(written.fact().word()).orElse(""),
        written.entry().reason().orElse(""),
        entry.by() + ", " + entry.at());
  }

  private static String usableUntil(VialEnd end, ClinicTime time) {
    return switch (end.by()) {
      case VialLimit.LabelDate label -> lastDay(end, time);
      case VialLimit.DaysOpen open -> lastDay(end, time);
      case VialLimit.Dissolved dissolved -> time.words(end.at());
      case VialLimit.SingleUse once -> time.words(end.at());
    };
  }

  private static String lastDay(VialEnd end, ClinicTime time) {
    return ClinicTime.words(time.dayOf(end.at().minusMillis(1)));
  }

  private static String endedBy(VialEnd end) {
    return switch (end.inUse()) {
      case KNOWN -> end.by().words();
      case OPEN_AND_NOT_STATED -> end.by().words() + "; how long it may be open is not stated";
    };
  }

  private static String fromNow(VialEnd end, CourseState state) {
    if (!state.clock().isKnown()) {
      return "not known how long from now";
    }
    String distance = ClinicTime.distance(state.now(), end.at());
    return isInDate(end, state) ? "ends " + distance : "ended " + distance;
  }

  private static String opened(VialDates known, VialDates label) {
    String days =
        label.daysInUse().map(open -> ", good for " + open + " days once opened").orElse("");
    if (known.opened().isEmpty()) {
      return "not yet" + days;
    }
    String at = words(known.opened().get());
    return known.opened().equals(label.opened())
        ? at + days
        : "by " + at + ", when a dose was drawn from it" + days;
  }

  private static String words(Opening opening) {
    return ClinicTime.words(opening.day())
        + opening.clock().map(clock -> " " + ClinicTime.clockText(clock)).orElse("");
  }
}
