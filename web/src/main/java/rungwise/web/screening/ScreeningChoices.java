package rungwise.web.screening;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import rungwise.clinic.coded.ShownBy;
import rungwise.clinic.course.Baseline;
import rungwise.clinic.course.Baseline.Ability;
import rungwise.clinic.course.Baseline.Injector;
import rungwise.clinic.screening.BaselineDraft;
import rungwise.clinic.screening.ScreeningView;
import rungwise.clinic.screening.Screenings;
import rungwise.dosing.screening.Answer;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.screening.ScreeningPage.BaselineForm;
import rungwise.web.screening.ScreeningPage.ExaminationForm;
import rungwise.web.screening.ScreeningPage.Kept;

/**
 * The fields of the baseline, of the examination and of a yes that was wrong, with what was typed
 * or is on record.
 */
record ScreeningChoices(ScreeningForms forms, Faults faults) {

  BaselineForm baseline(Optional<Baseline> onRecord) {
    String score =
        onRecord.flatMap(Baseline::score).map(one -> Integer.toString(one.total())).orElse("");
    return new BaselineForm(
        Field.of(Field.Kind.COUNT, BaselineDraft.SCORE, "Total of the five-question score")
            .withHint("1 to 25. The questions themselves are not kept.")
            .withValue(forms.said(BaselineDraft.SCORE, score))
            .optional()
            .withFaults(faults),
        ability(BaselineDraft.HANDS, "His hands", onRecord.map(Baseline::hands)),
        ability(BaselineDraft.SIGHT, "His sight", onRecord.map(Baseline::sight)),
        choice(
            BaselineDraft.INJECTOR,
            "Who will inject",
            Injector.values(),
            Injector::words,
            onRecord.map(Baseline::injector)));
  }

  private Choice ability(String name, String label, Optional<Ability> onRecord) {
    return choice(name, label, Ability.values(), Ability::words, onRecord);
  }

  private <E extends Enum<E>> Choice choice(
      String name, String label, E[] values, Function<E, String> words, Optional<E> onRecord) {
    List<Option> options =
        Arrays.stream(values)
            .map(one -> new Option(token(one), words.apply(one), "", false))
            .toList();
    return Choice.of(name, label, options)
        .withPicked(Set.of(forms.said(name, onRecord.map(ScreeningChoices::token).orElse(""))))
        .withFaults(faults);
  }

  private static String token(Enum<?> one) {
    return one.name().toLowerCase(Locale.ROOT);
  }

  /** The form is open where a later answer contradicts the yes, or it was sent and refused. */
  Kept kept(ScreeningView.KeptYes yes) {
    String name = yes.question().name();
    String shownBy = ScreeningForms.shownByFor(name);
    String reason = ScreeningForms.whyWrong(name);
    List<Option> options =
        Arrays.stream(ShownBy.values())
            .map(one -> new Option(one.name(), one.words(), "", false))
            .toList();
    return new Kept(
        yes,
        Choice.of(shownBy, "What shows that the yes was wrong", options)
            .withPicked(Set.of(forms.said(shownBy)))
            .withFaults(faults),
        Field.of(Field.Kind.TEXT, reason, "In your own words")
            .withHint("It stays on record with your name.")
            .withValue(forms.said(reason))
            .withFaults(faults),
        !yes.denied().isEmpty() || forms.isTicked(reason));
  }

  ExaminationForm examination(String today) {
    List<Option> answers =
        Arrays.stream(Answer.values())
            .map(one -> new Option(one.words(), one.words(), "", false))
            .toList();
    return new ExaminationForm(
        Field.of(Field.Kind.DATE, Screenings.DAY, "Day")
            .withValue(forms.said(Screenings.DAY, today))
            .withFaults(faults),
        Field.of(Field.Kind.TEXT, Screenings.TIME, "Time")
            .withHint("Such as 14:30. Needed where he had an emergency on that day.")
            .withValue(forms.said(Screenings.TIME))
            .whereSaid()
            .withFaults(faults),
        Choice.of(Screenings.SCARRING, "Curvature or scarring found", answers)
            .withPicked(Set.of(forms.said(Screenings.SCARRING)))
            .withFaults(faults),
        Field.of(Field.Kind.TEXT, Screenings.NOTE, "Note")
            .withHint("Where, how large, how much it bends")
            .withValue(forms.said(Screenings.NOTE))
            .optional()
            .withFaults(faults));
  }
}
