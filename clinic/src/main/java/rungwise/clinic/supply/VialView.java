package rungwise.clinic.supply;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFact.VialReceived;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.Vial;
import rungwise.clinic.sheet.CourseView;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.history.VialInHand;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.supply.VialDates;

/**
 * The vials of a man in words.
 *
 * @param answer whether the next dose may be drawn from the vial in use
 * @param mayBeUsed whether it may
 * @param ordered the composition that was ordered
 * @param components the components of the order, in its order
 * @param others every other component that a label may name
 * @param inUse the vial dispensed last, if there is one
 * @param earlier the vials before it, the last one first
 */
public record VialView(
    String answer,
    boolean mayBeUsed,
    String ordered,
    List<Component> components,
    List<Component> others,
    Optional<Line> inUse,
    List<Line> earlier) {

  /**
   * One vial.
   *
   * @param entry the id of the entry that says so
   * @param isSame whether its label says what is ordered now
   * @param lastDay the last day of use
   * @param fromNow how long until the end of that day, or since
   * @param made may be empty, as may the next two and the device
   * @param opened with the days of use, where the label limits them
   * @param by who wrote it down, and when
   */
  public record Line(
      String entry,
      Vial vial,
      boolean isSame,
      String lastDay,
      String fromNow,
      String beyondUse,
      String made,
      String opened,
      String by) {

    /** What the label says, a line for each component. */
    public List<String> labelled() {
      return amounts(vial.composition());
    }

    /** What a reader of both is told. */
    public String comparison() {
      return isSame ? "The same" : "Differs: not to be used";
    }
  }

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
  public static VialView of(CourseState state, CourseView course, ClinicTime time) {
    Preparation preparation = state.question().preparation();
    var lines = new ArrayList<Line>();
    for (Written<VialReceived> written : state.file().vials()) {
      lines.add(line(written, state, course, time));
    }
    Collections.reverse(lines);
    return new VialView(
        answer(state),
        state
            .question()
            .vial()
            .filter(vial -> vial.label().isOf(preparation))
            .filter(vial -> state.now().isBefore(vial.usableUntil()))
            .isPresent(),
        preparation.composition(),
        Arrays.stream(Component.values()).filter(preparation::holds).toList(),
        Arrays.stream(Component.values()).filter(one -> !preparation.holds(one)).toList(),
        lines.stream().findFirst(),
        lines.stream().skip(1).toList());
  }

  private static String answer(CourseState state) {
    Optional<VialInHand> vial = state.question().vial();
    if (vial.isEmpty()) {
      return "No vial is on record";
    }
    boolean isInDate = state.now().isBefore(vial.get().usableUntil());
    if (!vial.get().label().isOf(state.question().preparation())) {
      return "The label differs from the order: not to be used";
    }
    return isInDate
        ? "The label says what was ordered, and the vial is in date"
        : "Past its last day of use: not to be used";
  }

  private static Line line(
      Written<VialReceived> written, CourseState state, CourseView course, ClinicTime time) {
    Vial vial = written.fact().vial();
    VialDates dates = vial.dates();
    CourseView.EntryLine entry = course.entry(written.entry().number());
    return new Line(
        written.entry().id().text(),
        vial,
        new VialInHand.Label(vial.composition()).isOf(state.question().preparation()),
        ClinicTime.words(dates.lastDay()),
        fromNow(dates.lastDay(), state, time),
        ClinicTime.words(dates.beyondUse()),
        dates.made().map(ClinicTime::words).orElse(NOT_SAID),
        opened(dates),
        entry.by() + ", " + entry.at());
  }

  private static String fromNow(LocalDate lastDay, CourseState state, ClinicTime time) {
    var end = lastDay.plusDays(1).atStartOfDay(time.zone()).toInstant();
    String distance = ClinicTime.distance(state.now(), end);
    return state.now().isBefore(end) ? "ends " + distance : "ended " + distance;
  }

  private static String opened(VialDates dates) {
    return dates.opened().map(ClinicTime::words).orElse("not yet")
        + dates.daysInUse().map(days -> ", good for " + days + " days once opened").orElse("");
  }
}
