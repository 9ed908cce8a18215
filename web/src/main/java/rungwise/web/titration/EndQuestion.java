package rungwise.web.titration;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.titration.EndAnswer;
import rungwise.clinic.titration.ReportPart;
import rungwise.web.injection.InjectionQuestions;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Field;
import rungwise.web.titration.ReportPage.Answered;
import rungwise.web.titration.ReportPage.Soft;

/** How long until he was fully soft: its answers stand beside a scale of hours. */
final class EndQuestion {

  private EndQuestion() {}

  static Soft of(InjectionQuestions ask, ClinicTime time) {
    List<EndAnswer> shown =
        Arrays.stream(EndAnswer.values()).filter(answer -> isAsked(answer, ask)).toList();
    Choice choice =
        ask.choice(
                ReportPart.SOFT.field(),
                "How long after the injection until he was fully soft?",
                shown.stream()
                    .map(answer -> new Option(answer.token(), answer.words(), hint(answer), false))
                    .toList())
            .withHint("Fuller but not firm is not soft yet.");
    List<Answered> answers =
        shown.stream()
            .map(answer -> answered(answer, choice.options().get(shown.indexOf(answer)), ask))
            .toList();
    return new Soft(choice, answers, occurrence(ask, time));
  }

  /** Minutes when last seen are of reports that are on record already. */
  private static boolean isAsked(EndAnswer answer, InjectionQuestions ask) {
    return answer != EndAnswer.AT_LEAST
        || ask.text(ReportPart.SOFT.field()).equals(answer.token())
        || hasTyped(answer, ask);
  }

  private static boolean hasTyped(EndAnswer answer, InjectionQuestions ask) {
    return answer.parts().stream().anyMatch(part -> !ask.text(part.field()).isBlank());
  }

  private static Answered answered(EndAnswer answer, Option option, InjectionQuestions ask) {
    return new Answered(
        option,
        from(answer),
        answer.mayBeFourHours(),
        hasTyped(answer, ask),
        answer.parts().stream().map(part -> field(part, ask)).toList());
  }

  private static String from(EndAnswer answer) {
    return switch (answer) {
      case NO_CHANGE -> "0";
      case FROM_61 -> "1 h";
      case FROM_120 -> "2 h";
      case FROM_240 -> "4 h";
      case UP_TO_60, STILL, EXACTLY, ABOUT, BETWEEN, AT_LEAST, NOT_KNOWN -> "";
    };
  }

  private static String hint(EndAnswer answer) {
    return switch (answer) {
      case FROM_240 -> "An emergency, although it is over.";
      case STILL -> "From 4 hours, or not known since when: emergency department now.";
      case AT_LEAST -> "Read as without limit until somebody has asked how it ended.";
      case NOT_KNOWN -> "Somebody has to ask again.";
      case NO_CHANGE, UP_TO_60, FROM_61, FROM_120, EXACTLY, ABOUT, BETWEEN -> "";
    };
  }

  private static Field field(ReportPart part, InjectionQuestions ask) {
    return switch (part) {
      case EXACT_MINUTES -> minutes(ask, part, "Minutes after the injection");
      case LEAST_MINUTES -> minutes(ask, part, "Minutes after the injection when last seen");
      case FROM_MINUTES ->
          minutes(ask, part, "Not before, in minutes after the injection").withHint("0 is allowed");
      case BEFORE_MINUTES ->
          minutes(ask, part, "But before, in minutes")
              .withHint("This minute itself is left out: before 120 means less than 2 hours");
      case SOFT_AT ->
          ask.optional(Field.Kind.TEXT, part.field(), "Soft at about")
              .withHint("such as 0040; counted from the injection, over midnight too");
      default ->
          ask.optional(Field.Kind.TEXT, part.field(), "Firm or fuller still at")
              .withHint("Empty means now. Such as 2215, the first such time after the injection.");
    };
  }

  private static Field minutes(InjectionQuestions ask, ReportPart part, String label) {
    return ask.optional(Field.Kind.AMOUNT, part.field(), label);
  }

  /** Asked where the clocks went back on the day of the injection or the one after it. */
  private static Optional<Choice> occurrence(InjectionQuestions ask, ClinicTime time) {
    String clock =
        ask.text(ReportPart.SOFT_AT.field()).isBlank()
            ? ask.text(ReportPart.SEEN_AT.field())
            : ask.text(ReportPart.SOFT_AT.field());
    return ClinicTime.readDate(ask.text(ReportPart.DATE.field()))
        .found()
        .filter(
            day ->
                time.comesTwice(day.toString(), clock)
                    || time.comesTwice(day.plusDays(1).toString(), clock))
        .map(
            day ->
                ask.choice(
                    ReportPart.SOFT_OCCURRENCE.field(),
                    "The clocks went back and that clock time came twice. Which one?",
                    List.of(
                        new Option("FIRST", "the first one, before they went back", "", false),
                        new Option("SECOND", "the second one, after it", "", false))));
  }
}
