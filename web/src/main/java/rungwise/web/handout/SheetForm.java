package rungwise.web.handout;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import rungwise.clinic.handout.Keeping;
import rungwise.clinic.handout.SheetDraft;
import rungwise.clinic.words.Language;
import rungwise.clinic.words.Paper;
import rungwise.web.page.Choice;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.Typed;

/** The form by which a sheet is made; what was typed stays after a fault. */
public record SheetForm(
    String order,
    Choice language,
    Choice paper,
    Choice keeping,
    Field clinicNumber,
    Field afterHours,
    Field hospital,
    Field transport) {

  static final List<String> FIELDS =
      List.of(
          SheetDraft.LANGUAGE,
          SheetDraft.PAPER,
          SheetDraft.KEEPING,
          SheetDraft.CLINIC_NUMBER,
          SheetDraft.AFTER_HOURS,
          SheetDraft.HOSPITAL,
          SheetDraft.TRANSPORT);

  static SheetForm of(SheetDraft draft, Typed typed, Faults faults) {
    return new SheetForm(
        draft.order(),
        choice(
            SheetDraft.LANGUAGE,
            "Language in which he reads",
            options(Language.values(), Language::tag, Language::words, draft.language()),
            typed,
            faults),
        choice(
            SheetDraft.PAPER,
            "Paper",
            options(Paper.values(), Paper::token, Paper::words, draft.paper()),
            typed,
            faults),
        choice(
            SheetDraft.KEEPING,
            "How his vial is kept, as its pharmacy or its label says",
            options(Keeping.values(), Keeping::name, Keeping::words, draft.keeping()),
            typed,
            faults),
        field(
                SheetDraft.CLINIC_NUMBER,
                "Number of the clinic by day",
                draft.clinicNumber(),
                typed,
                faults)
            .withHint("The one that he calls 2 hours after a shot"),
        field(
            SheetDraft.AFTER_HOURS,
            "Number at night and on days off",
            draft.afterHoursNumber(),
            typed,
            faults),
        field(SheetDraft.HOSPITAL, "Hospital for 4 hours", draft.hospital(), typed, faults)
            .withHint("As it is to be printed, in his language"),
        field(SheetDraft.TRANSPORT, "How he gets there", draft.transport(), typed, faults)
            .withHint("In his language, as he would say it: by taxi, en taxi"));
  }

  /** What a form sends. */
  static SheetDraft draft(Typed typed) {
    return new SheetDraft(
        typed.text(SheetDraft.ORDER),
        typed.text(SheetDraft.LANGUAGE),
        typed.text(SheetDraft.PAPER),
        typed.text(SheetDraft.KEEPING),
        typed.text(SheetDraft.CLINIC_NUMBER),
        typed.text(SheetDraft.AFTER_HOURS),
        typed.text(SheetDraft.HOSPITAL),
        typed.text(SheetDraft.TRANSPORT));
  }

  private static <E> List<Choice.Option> options(
      E[] all, Function<E, String> value, Function<E, String> words, String picked) {
    return Arrays.stream(all)
        .map(
            one ->
                new Choice.Option(
                    value.apply(one),
                    words.apply(one).substring(0, 1).toUpperCase(Locale.ROOT)
                        + words.apply(one).substring(1),
                    "",
                    value.apply(one).equals(picked)))
        .toList();
  }

  private static Choice choice(
      String name, String label, List<Choice.Option> options, Typed typed, Faults faults) {
    return Choice.of(name, label, options).asTyped(typed).withFaults(faults);
  }

  private static Field field(String name, String label, String value, Typed typed, Faults faults) {
    return Field.of(Field.Kind.TEXT, name, label)
        .withValue(value)
        .asTyped(typed)
        .withFaults(faults);
  }
}
