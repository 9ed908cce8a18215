package rungwise.clinic.sheet;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFact.HandedOver;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.EmergencyPlan;
import rungwise.clinic.day.OpenErection;
import rungwise.clinic.day.OpenErections;
import rungwise.clinic.day.Urgency;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.reaching.ReachWords;
import rungwise.clinic.standing.CourseState;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** An erection of which nobody has said how it ended, in words. */
record OpenErectionWords(ClinicTime time, Function<AccountId, String> names) {

  private static final String NO_PLAN =
      "No emergency plan is on record: the nearest emergency department.";

  /** The block of a course; empty if every end is known. */
  Optional<OpenErectionView> of(CourseState state) {
    List<OpenErection> all = OpenErections.of(state);
    return all.stream().findFirst().map(first -> view(state, first, all));
  }

  private OpenErectionView view(CourseState state, OpenErection open, List<OpenErection> all) {
    Instant now = state.now();
    Urgency urgency = open.urgency(state.knownNow());
    return new OpenErectionView(
        state.file().id(),
        state.file().patient().fullName(),
        state.file().patient().recordNumber(),
        urgency,
        !open.isWithdrawn(),
        headline(open, urgency, now),
        elapsed(open, state.knownNow()),
        fourHours(open, state),
        call(open, urgency, now),
        new OpenErectionView.About(
            injected(open), plan(state), tell(state), more(all.subList(1, all.size()))),
        new ReachWords(time, names).of(state),
        open.handedOver().map(one -> handed(one, now)),
        way(open),
        state.file().isSound());
  }

  private String headline(OpenErection open, Urgency urgency, Instant now) {
    if (urgency == Urgency.EMERGENCY_DEPARTMENT) {
      return "Emergency: emergency department now";
    }
    String firm = open.firmAt().map(at -> "firm at " + time.clock(at, now)).orElse("");
    if (firm.isEmpty()) {
      return "End not known: what was said is not complete";
    }
    return open.isWithdrawn()
        ? "End not known: the report of " + firm + " no longer counts"
        : "Firm when last seen: " + firm;
  }

  private static String elapsed(OpenErection open, Optional<Instant> now) {
    return open.injectedAt()
        .flatMap(
            at ->
                now.filter(known -> !at.isAfter(known))
                    .map(known -> Duration.between(at, known).toMinutes()))
        .map(minutes -> TimeSpan.ofMinutes(minutes) + " since the injection")
        .orElse("It is not known how long ago he was injected");
  }

  private String fourHours(OpenErection open, CourseState state) {
    boolean isAhead =
        open.fourHoursAt()
            .filter(at -> state.knownNow().filter(at::isAfter).isPresent())
            .isPresent();
    if (open.isSaid() && isAhead) {
      return "Not known how it ended; 4 hours or more were said of it.";
    }
    return open.fourHoursAt()
        .map(
            at ->
                state
                    .knownNow()
                    .map(now -> fourHoursAt(at, now, time))
                    .orElse("Not known how it ended; 4 hours: " + time.words(at) + "."))
        .orElse("Not known how it ended, nor when 4 hours are over.");
  }

  private static String fourHoursAt(Instant at, Instant now, ClinicTime time) {
    return "Not known how it ended; 4 hours "
        + (at.isAfter(now) ? "are at " : "were at ")
        + time.clock(at, now)
        + ", "
        + ClinicTime.distance(now, at)
        + ".";
  }

  /** What a safety check says of one whose 4 hours are not over. */
  Optional<String> notOverYet(CourseState state, Instant injectedAt) {
    return OpenErections.of(state).stream()
        .filter(open -> open.injectedAt().filter(injectedAt::equals).isPresent())
        .filter(open -> open.urgency(state.knownNow()) != Urgency.EMERGENCY_DEPARTMENT)
        .findFirst()
        .map(open -> fourHours(open, state));
  }

  private String call(OpenErection open, Urgency urgency, Instant now) {
    if (open.where() == OpenErection.Where.UNDER_OBSERVATION) {
      return "He is under observation and not down: treat him now, or take him there.";
    }
    String fourHours = open.fourHoursAt().map(at -> time.clock(at, now)).orElse("");
    return switch (urgency) {
      case EMERGENCY_DEPARTMENT ->
          "Call him now. If it still lasts, he goes to the emergency department at once.";
      case CALL_NOW ->
          "Call him now. If it still lasts, or if nobody is reached, he sets out so as to be in"
              + " the emergency department by "
              + fourHours
              + ".";
      case CALL_AT_TWO_HOURS ->
          "Call him at "
              + open.twoHoursAt().map(at -> time.clock(at, now)).orElse("")
              + ", 2 hours after the injection.";
    };
  }

  private String injected(OpenErection open) {
    String when = open.injectedAt().map(at -> "Injected " + time.words(at)).orElse("Injected");
    String where =
        switch (open.where()) {
          case NOT_SAID -> "";
          case AT_HOME -> " at home";
          case LEFT_THE_CLINIC -> " in the clinic, which he has left";
          case UNDER_OBSERVATION -> " in the clinic";
        };
    return when + where + open.drawn().map(drawn -> ": " + content(open, drawn)).orElse("") + ".";
  }

  private static String content(OpenErection open, Volume drawn) {
    return drawn
        + open.preparation()
            .map(one -> ", " + one.contentOf(drawn) + ", of " + one.composition())
            .orElse("");
  }

  private static List<String> plan(CourseState state) {
    return state.file().emergencyPlan().map(OpenErectionWords::lines).orElse(List.of(NO_PLAN));
  }

  private static List<String> lines(EmergencyPlan plan) {
    return Stream.concat(
            Stream.of(
                "Hospital: " + plan.hospital() + ".",
                "After hours: " + plan.afterHoursNumber() + ".",
                "How he gets there: " + plan.transport() + "."),
            plan.more().stream().map(said -> said.asked() + ": " + said.answer() + "."))
        .toList();
  }

  private static Optional<String> tell(CourseState state) {
    var lines = new ArrayList<String>();
    List<String> has = those(state, Answer.YES);
    if (!has.isEmpty()) {
      lines.add("Tell the hospital first: " + String.join("; ", has) + ".");
    }
    List<String> unknown = those(state, Answer.NOT_KNOWN);
    if (!unknown.isEmpty()) {
      lines.add("Ask him: " + String.join("; ", unknown) + ": not on record.");
    }
    return lines.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", lines));
  }

  private static List<String> those(CourseState state, Answer answer) {
    return CallViews.WARNINGS.stream()
        .filter(condition -> state.question().screening().answerTo(condition) == answer)
        .map(OpenErectionWords::tellOf)
        .toList();
  }

  private static String tellOf(Condition condition) {
    return condition == Condition.MAO_INHIBITOR
        ? "an MAO inhibitor (phenylephrine may cause a hypertensive crisis)"
        : condition.words().substring(0, 1).toLowerCase(Locale.ROOT)
            + condition.words().substring(1);
  }

  private List<String> more(List<OpenErection> others) {
    return others.stream()
        .map(
            other ->
                "Nor is it known how this one ended: "
                    + other.injectedAt().map(time::words).orElse("no time on record")
                    + other.drawn().map(drawn -> ", " + drawn).orElse("")
                    + ".")
        .toList();
  }

  private String handed(Written<HandedOver> written, Instant now) {
    HandedOver handed = written.fact();
    return "Handed to "
        + names.apply(handed.to())
        + " at "
        + time.clock(written.entry().recordedAt(), now)
        + " after "
        + EntryWords.tries(handed.tries())
        + ", the last at "
        + time.clock(handed.lastTry(), now)
        + written.entry().reason().map(words -> ": " + words).orElse("")
        + ".";
  }

  private static OpenErectionView.Way way(OpenErection open) {
    return switch (open.way()) {
      case OpenErection.Way.Correct correct ->
          new OpenErectionView.Way.Correct(correct.report().text());
      case OpenErection.Way.Report report -> new OpenErectionView.Way.Report();
      case OpenErection.Way.EndObservation observation -> new OpenErectionView.Way.EndObservation();
      case OpenErection.Way.Review review -> new OpenErectionView.Way.Review();
    };
  }
}
