package rungwise.web.start;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import rungwise.clinic.start.CourseDraft;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.quantities.Fault;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;

/**
 * The form for a new course.
 *
 * @param missing what the clinic lacks before any course can be opened
 */
public record NewCoursePage(
    Faults faults,
    Field fullName,
    Field birthDate,
    Field recordNumber,
    Choice group,
    Choice preparation,
    Choice barrel,
    Choice protocol,
    Choice namesake,
    List<Missing> missing) {

  /** Something to do first. */
  public record Missing(String sentence, String path, String word) {}

  private static final String NAMESAKE = "namesake";

  static NewCoursePage empty(StartChoices choices) {
    var draft = new CourseDraft("", "", "", "", "", "", "", false);
    return of(draft, choices, List.of());
  }

  static NewCoursePage of(CourseDraft draft, StartChoices choices, List<String> faults) {
    Faults all = new Faults(faults.stream().map(Fault::ofForm).toList());
    return new NewCoursePage(
        all,
        Field.of(Field.Kind.TEXT, "fullName", "Full name").withValue(draft.fullName()),
        Field.of(Field.Kind.TEXT, "birthDate", "Birth date")
            .withHint("Year, month and day, such as 1961-04-30")
            .withValue(draft.birthDate()),
        Field.of(Field.Kind.TEXT, "recordNumber", "Record number").withValue(draft.recordNumber()),
        group(draft.group()),
        preparation(choices, draft.preparation()),
        barrel(choices, draft.barrel()),
        protocol(choices, draft.protocol()),
        namesake(draft.namesakeConfirmed()),
        missing(choices));
  }

  private static Choice group(String picked) {
    List<Option> options =
        Arrays.stream(AetiologyGroup.values())
            .map(group -> new Option(group.token(), group.words(), "", false))
            .toList();
    return pick("group", "Why he needs it", options, picked)
        .withHint("It decides the first dose. Not known takes the lowest.");
  }

  private static Choice preparation(StartChoices choices, String picked) {
    List<Option> options =
        choices.preparations().get().stream()
            .map(one -> new Option(one.id().value(), one.name(), one.composition(), false))
            .toList();
    return pick("preparation", "Preparation", options, picked);
  }

  private static Choice barrel(StartChoices choices, String picked) {
    List<Option> options =
        choices.barrels().get().stream()
            .map(one -> new Option(one.token(), one.words(), "", false))
            .toList();
    return pick("barrel", "Syringe", options, picked)
        .withHint("The syringe that he will really use: every dose is a printed line on it.");
  }

  private static Choice protocol(StartChoices choices, String picked) {
    List<Option> options =
        choices.protocols().get().stream()
            .map(
                signed ->
                    new Option(
                        signed.protocol().key(),
                        signed.protocol().title() + ", version " + signed.protocol().version(),
                        signed.protocol().sample() ? "sample" : "",
                        false))
            .toList();
    return pick("protocol", "Titration protocol", options, picked);
  }

  private static Choice namesake(boolean confirmed) {
    var option = new Option("yes", "I have looked: this is somebody else", "", false);
    return pick(NAMESAKE, "Only if another man is alike", List.of(option), confirmed ? "yes" : "");
  }

  /** A choice with what was picked before; with one option only, that one is picked. */
  private static Choice pick(String name, String label, List<Option> options, String picked) {
    var shown = new ArrayList<Option>(options);
    if (shown.isEmpty()) {
      shown.add(new Option("", "none yet", "", false));
    }
    return Choice.of(name, label, shown)
        .withPicked(Set.of(options.size() == 1 ? pickedOrOnly(name, picked, shown) : picked));
  }

  /** Where there is nothing to choose, the one thing is picked, except for a confirmation. */
  private static String pickedOrOnly(String name, String picked, List<Option> shown) {
    return name.equals(NAMESAKE) ? picked : shown.getFirst().value();
  }

  private static List<Missing> missing(StartChoices choices) {
    var missing = new ArrayList<Missing>();
    if (choices.preparations().get().isEmpty()) {
      missing.add(
          new Missing("No preparation is on the clinic's list.", "/preparations", "Preparations"));
    }
    if (choices.barrels().get().isEmpty()) {
      missing.add(new Missing("No syringe is on the clinic's list.", "/syringes", "Syringes"));
    }
    if (choices.protocols().get().isEmpty()) {
      missing.add(new Missing("No protocol is signed.", "/protocols", "Protocols"));
    }
    return missing;
  }
}
