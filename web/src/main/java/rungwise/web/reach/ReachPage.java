package rungwise.web.reach;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.reach.Hours;
import rungwise.clinic.reach.Telephone;
import rungwise.clinic.reach.Wishes;
import rungwise.clinic.reaching.ReachDraft;
import rungwise.clinic.reaching.ReachDraft.What;
import rungwise.clinic.reaching.ReachView;
import rungwise.clinic.sheet.CourseView;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.Typed;

/**
 * How a man is reached, as shown.
 *
 * @param notice what was just done; may be empty
 * @param mayWrite whether the person may write it down
 * @param changed the number of which the form holds what is on record; empty for a new one
 */
public record ReachPage(
    CourseId course,
    CourseView.Man man,
    String notice,
    Faults faults,
    ReachView view,
    boolean mayWrite,
    Optional<ReachView.Line> changed,
    NumberForm number,
    WishesForm wishes) {

  /** The form of a number. */
  public record NumberForm(Field number, Choice whose, Field from, Field until, Choice message) {

    static NumberForm of(Optional<ReachView.Line> changed, Typed typed, Faults faults) {
      Optional<Telephone> known = changed.map(ReachView.Line::telephone);
      Optional<Hours> hours = known.flatMap(Telephone::hours);
      return new NumberForm(
          field(ReachDraft.NUMBER, "Telephone number", typed, faults, text(known))
              .withHint("As he says it, with the country's code if it is abroad"),
          choice(
              ReachDraft.WHOSE,
              "Who answers there",
              options(
                  Telephone.Whose.values(), Telephone.Whose::words, known.map(Telephone::whose)),
              typed,
              faults),
          field(
                  ReachDraft.FROM,
                  "Only after",
                  typed,
                  faults,
                  hours.map(Hours::from).map(ClinicTime::clockText).orElse(""))
              .withHint("Hours and minutes, such as 18:00; empty if any hour is right")
              .optional(),
          field(
                  ReachDraft.UNTIL,
                  "Only before",
                  typed,
                  faults,
                  hours.map(Hours::until).map(ClinicTime::clockText).orElse(""))
              .withHint("Hours and minutes, such as 21:30")
              .optional(),
          choice(
              ReachDraft.MESSAGE,
              "Where nobody answers",
              options(
                  Telephone.Message.values(),
                  Telephone.Message::words,
                  known.map(Telephone::message)),
              typed,
              faults));
    }

    private static String text(Optional<Telephone> known) {
      return known.map(Telephone::text).orElse("");
    }
  }

  /** The form of what he asked for. */
  public record WishesForm(Choice partner, Choice post, Field language, Choice interpreter) {

    static WishesForm of(Optional<Wishes> asked, Typed typed, Faults faults) {
      return new WishesForm(
          choice(
              ReachDraft.PARTNER,
              "To whom else one may speak",
              options(Wishes.Partner.values(), Wishes.Partner::words, asked.map(Wishes::partner)),
              typed,
              faults),
          choice(
              ReachDraft.POST,
              "By post",
              options(Wishes.Post.values(), Wishes.Post::words, asked.map(Wishes::post)),
              typed,
              faults),
          field(
                  ReachDraft.LANGUAGE,
                  "Language in which he is spoken to",
                  typed,
                  faults,
                  asked.map(Wishes::language).orElse(""))
              .optional(),
          choice(
              ReachDraft.INTERPRETER,
              "Interpreter",
              options(
                  Wishes.Interpreter.values(),
                  Wishes.Interpreter::words,
                  asked.map(Wishes::interpreter)),
              typed,
              faults));
    }
  }

  static ReachPage of(
      CourseView course,
      boolean mayWrite,
      Optional<String> entry,
      Typed typed,
      String notice,
      Faults faults) {
    Optional<ReachView.Line> changed =
        entry.flatMap(
            one ->
                course.reach().numbers().stream()
                    .filter(line -> line.entry().equals(one))
                    .findFirst());
    boolean isNumber = What.of(typed.text(ReachDraft.WHAT)).equals(Optional.of(What.NUMBER));
    return new ReachPage(
        course.id(),
        course.man(),
        notice,
        faults,
        course.reach(),
        mayWrite,
        changed,
        NumberForm.of(changed, isNumber ? typed : Typed.NOTHING, faults),
        WishesForm.of(course.reach().asked(), isNumber ? Typed.NOTHING : typed, faults));
  }

  public String coursePath() {
    return "/courses/" + course;
  }

  public String path() {
    return coursePath() + "/reach";
  }

  /** What a form sends. */
  static ReachDraft draft(Typed typed) {
    return new ReachDraft(
        What.of(typed.text(ReachDraft.WHAT)),
        typed.text(ReachDraft.ENTRY),
        typed.text(ReachDraft.NUMBER),
        typed.text(ReachDraft.WHOSE),
        typed.text(ReachDraft.FROM),
        typed.text(ReachDraft.UNTIL),
        typed.text(ReachDraft.MESSAGE),
        typed.text(ReachDraft.PARTNER),
        typed.text(ReachDraft.POST),
        typed.text(ReachDraft.LANGUAGE),
        typed.text(ReachDraft.INTERPRETER),
        typed.text(ReachDraft.REASON));
  }

  private static <E extends Enum<E>> Stream<Option> options(
      E[] all, Function<E, String> words, Optional<E> picked) {
    return Arrays.stream(all)
        .map(
            one ->
                new Option(
                    one.name(),
                    words.apply(one).substring(0, 1).toUpperCase(Locale.ROOT)
                        + words.apply(one).substring(1),
                    "",
                    picked.equals(Optional.of(one))));
  }

  private static Choice choice(
      String name, String label, Stream<Option> options, Typed typed, Faults faults) {
    List<Option> all = options.toList();
    return Choice.of(name, label, all).asTyped(typed).withFaults(faults);
  }

  private static Field field(
      String name, String label, Typed typed, Faults faults, String onRecord) {
    return Field.of(Field.Kind.TEXT, name, label)
        .withValue(onRecord)
        .asTyped(typed)
        .withFaults(faults);
  }
}
