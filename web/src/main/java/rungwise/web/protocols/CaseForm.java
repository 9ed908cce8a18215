package rungwise.web.protocols;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import rungwise.clinic.protocols.ProtocolCase;
import rungwise.clinic.protocols.ProtocolCase.Response;
import rungwise.clinic.protocols.ProtocolCase.Walk;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.syringe.Barrel;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Field;
import rungwise.web.page.Typed;
import rungwise.web.start.StartChoices;

/** The made-up man of the form: who he is, and what followed each injection. */
public record CaseForm(
    Typed typed,
    List<Preparation> preparations,
    List<Barrel> barrels,
    Function<PreparationId, rungwise.dosing.choice.Choice> choices) {

  static final int RESPONSES = 6;

  private static final String PREPARATION = "case-preparation";
  private static final String BARREL = "case-barrel";
  private static final String GROUP = "case-group";

  /** One row of the form. */
  public record Row(String name, Choice grade, Field minutes) {}

  public CaseForm {
    preparations = List.copyOf(preparations);
    barrels = List.copyOf(barrels);
  }

  static CaseForm of(Typed typed, StartChoices choices) {
    return new CaseForm(
        typed, choices.preparations().get(), choices.barrels().get(), choices.choices());
  }

  /** Who he is. */
  public List<Choice> man() {
    return List.of(
        choice(
            PREPARATION,
            "Preparation",
            preparations.stream().map(one -> option(one.id().value(), one.toString())).toList()),
        choice(
            BARREL,
            "Syringe",
            barrels.stream().map(one -> option(one.token(), one.words())).toList()),
        choice(
            GROUP,
            "Aetiology",
            Arrays.stream(AetiologyGroup.values())
                .map(one -> option(one.token(), one.words()))
                .toList()));
  }

  private Choice choice(String name, String label, List<Option> options) {
    List<Option> all =
        Stream.concat(Stream.of(option("", "not chosen")), options.stream()).toList();
    return Choice.of(name, label, all).withPicked(typed.all(name));
  }

  private static Option option(String value, String label) {
    return new Option(value, label, "", false);
  }

  /** What followed each injection. */
  public List<Row> rows() {
    return IntStream.rangeClosed(1, RESPONSES)
        .mapToObj(
            number ->
                new Row(
                    "Injection " + number,
                    choice(
                        "case-grade-" + number,
                        "Rigidity",
                        Arrays.stream(Grade.values())
                            .map(
                                grade ->
                                    option(
                                        Integer.toString(grade.number()),
                                        grade.number() + ", " + grade.words()))
                            .toList()),
                    Field.of(Field.Kind.COUNT, "case-minutes-" + number, "Minutes until soft")
                        .withValue(typed.text("case-minutes-" + number))
                        .optional()))
        .toList();
  }

  /** Whether a man was chosen. */
  boolean isChosen() {
    return Stream.of(PREPARATION, BARREL, GROUP).noneMatch(name -> typed.text(name).isBlank());
  }

  /** The walk of the man who was chosen, or why there is none. */
  Reading<Walk> walk(Protocol protocol) {
    var preparation =
        preparations.stream()
            .filter(one -> one.id().value().equals(typed.text(PREPARATION)))
            .findFirst();
    var barrel = barrels.stream().filter(one -> one.token().equals(typed.text(BARREL))).findFirst();
    var group = AetiologyGroup.of(typed.text(GROUP).toLowerCase(Locale.ROOT));
    if (preparation.isEmpty() || barrel.isEmpty() || group.isEmpty()) {
      return Reading.refused("Choose preparation, syringe and aetiology from the lists.");
    }
    return responses()
        .map(
            said ->
                new ProtocolCase(
                        group.get(),
                        preparation.get(),
                        barrel.get(),
                        choices.apply(preparation.get().id()))
                    .walk(protocol, said))
        .orElseGet(() -> Reading.refused("Enter the minutes as a whole number, such as 45."));
  }

  /** What was said, up to the first row without a rigidity; empty if a number is none. */
  private Optional<List<Response>> responses() {
    var said = new ArrayList<Response>();
    for (int number = 1; number <= RESPONSES; number++) {
      Optional<Grade> grade = grade(typed.text("case-grade-" + number));
      if (grade.isEmpty()) {
        break;
      }
      String minutes = typed.text("case-minutes-" + number).strip();
      if (!minutes.isEmpty() && !minutes.matches("[0-9]{1,4}")) {
        return Optional.empty();
      }
      said.add(
          new Response(
              grade.get(),
              minutes.isEmpty()
                  ? new SoftAfter.NotKnown()
                  : new SoftAfter.Exactly(TimeSpan.ofMinutes(Integer.parseInt(minutes)))));
    }
    return Optional.of(said);
  }

  private static Optional<Grade> grade(String text) {
    return Arrays.stream(Grade.values())
        .filter(grade -> Integer.toString(grade.number()).equals(text))
        .findFirst();
  }
}
