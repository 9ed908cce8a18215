package rungwise.web.injection;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.clinic.course.Cause;
import rungwise.clinic.titration.FormChoices;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.Spot;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Marking;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.Typed;

/**
 * The questions that every form about an injection asks in the same words.
 *
 * @param form goes before the names of the fields where a page has several forms; may be empty
 */
public record InjectionQuestions(String form, Typed typed, Faults faults) {

  private static final String OCCURRENCE = "occurrence";
  private static final int HOURS = 12;
  private static final List<Integer> USUAL_HOURS = List.of(10, 2);

  /** The name of a field in one of several forms of a page: "noteTime". */
  public static String name(String form, String field) {
    return form.isEmpty()
        ? field
        : form + field.substring(0, 1).toUpperCase(Locale.ROOT) + field.substring(1);
  }

  /** The name of a field of this form. */
  public String name(String field) {
    return name(form, field);
  }

  /** What was typed into a field of this form. */
  public String text(String field) {
    return typed.text(name(field));
  }

  /** A line to type into. */
  public Field field(Field.Kind kind, String field, String label) {
    return Field.of(kind, name(field), label).withValue(text(field)).withFaults(faults);
  }

  /** A line that may stay empty. */
  public Field optional(Field.Kind kind, String field, String label) {
    return field(kind, field, label).optional();
  }

  /** Something picked from a list. */
  public Choice choice(String field, String label, List<Option> options) {
    return choice(field, label, options, "");
  }

  /** The same with what is picked until somebody has picked. */
  public Choice choice(String field, String label, List<Option> options, String preset) {
    return Choice.of(name(field), label, options)
        .withPicked(typed.fields().containsKey(name(field)) ? picked(field) : Set.of(preset))
        .withFaults(faults);
  }

  private Set<String> picked(String field) {
    return typed.all(name(field));
  }

  /** Asked only where the typed time of day came twice that day. */
  public Optional<Choice> occurrence(ClinicTime time) {
    return time.comesTwice(text("date"), text("time"))
        ? Optional.of(
            choice(
                OCCURRENCE,
                "The clocks went back and this time came twice. Which one?",
                List.of(
                    new Option("FIRST", "the first one, before the clocks went back", "", false),
                    new Option("SECOND", "the second one, after the clocks went back", "", false))))
        : Optional.empty();
  }

  /** Which of two equal times of day was said. */
  public Occurrence saidOccurrence() {
    return Arrays.stream(Occurrence.values())
        .filter(one -> one.name().equals(text(OCCURRENCE)))
        .findFirst()
        .orElse(Occurrence.NOT_SAID);
  }

  /** The line really drawn. */
  public Field mark(Barrel barrel) {
    boolean isUnits = barrel.marking() instanceof Marking.UnitLines;
    String label =
        isUnits ? "Line to which he really drew the stopper" : "Volume he really drew, in mL";
    return field(Field.Kind.AMOUNT, "mark", label)
        .withHint("On the " + barrel.words() + ", such as " + (isUnits ? "25" : "0.25"));
  }

  /** How firm it was. */
  public Choice grade(String label) {
    return choice("grade", label, grades().toList());
  }

  /** How firm it was, or nothing said about that. */
  public Choice gradeIfSeen(String label) {
    return choice(
        "grade",
        label,
        Stream.concat(Stream.of(new Option("", "not written down", "", false)), grades()).toList());
  }

  private static Stream<Option> grades() {
    return Arrays.stream(Grade.values())
        .map(
            grade ->
                new Option(
                    Integer.toString(grade.number()),
                    grade.number() + ", " + grade.words(),
                    "",
                    false));
  }

  /** Whether anything went wrong. */
  public Choice causes() {
    return choice(
            "causes",
            "Anything wrong with the injection?",
            Arrays.stream(SimpleCauses.values())
                .map(one -> new Option(FormChoices.token(one), one.words(), "", false))
                .toList())
        .withHint(
            "Whole dose delivered, no leak, needle not bent, not under the skin, no bubble,"
                + " aroused, vial cold and in date.");
  }

  /** What went wrong. */
  public Choice wrong() {
    return choice(
        "wrong",
        "What went wrong (optional)",
        Arrays.stream(Cause.values())
            .map(cause -> new Option(cause.name(), cause.words(), "", false))
            .toList());
  }

  /** His own left or right. */
  public Choice side() {
    return choice(
        "side",
        "Side (optional)",
        Stream.concat(
                Stream.of(new Option("", "not written down", "", false)),
                Arrays.stream(Spot.Side.values())
                    .map(side -> new Option(side.name(), side.words(), "", false)))
            .toList());
  }

  /** The hour on the clock around the shaft: the right ones first, the forbidden ones last. */
  public Choice hour() {
    Comparator<Integer> order =
        Comparator.comparing((Integer hour) -> Spot.standing(hour))
            .thenComparing(hour -> !USUAL_HOURS.contains(hour));
    Stream<Option> hours =
        Stream.concat(USUAL_HOURS.stream(), IntStream.rangeClosed(1, HOURS).boxed())
            .distinct()
            .sorted(order)
            .map(hour -> hour(hour, Spot.standing(hour).words()));
    return choice(
            "hour",
            "Place on the clock (optional)",
            Stream.concat(Stream.of(new Option("", "not written down", "", false)), hours).toList())
        .withHint(
            "As seen by somebody who faces him: 12 is up, 6 is the urethra. 10 and 2, or 9 and 3,"
                + " are right.");
  }

  private static Option hour(int hour, String words) {
    String after = words.isEmpty() ? "" : ", " + words;
    return new Option(Integer.toString(hour), hour + " o'clock" + after, "", false);
  }

  /** From 0 to 10. */
  public Field pain() {
    return optional(Field.Kind.COUNT, "pain", "Pain, 0 none to 10 the worst");
  }

  /** Blood pressure and pulse, which belong together. */
  public List<Field> vitals() {
    return List.of(
        optional(Field.Kind.COUNT, "systolic", "Blood pressure, upper"),
        optional(Field.Kind.COUNT, "diastolic", "Lower"),
        optional(Field.Kind.COUNT, "pulse", "Pulse"));
  }
}
