package rungwise.clinic.reaching;

import java.time.Instant;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.called.CallLog;
import rungwise.clinic.course.CourseEntry;
import rungwise.clinic.day.OpenErections;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.reach.Hours;
import rungwise.clinic.reach.ReachWord;
import rungwise.clinic.reach.Telephone;
import rungwise.clinic.reach.Wishes;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.standing.HowToReach;

/** How a man is reached, in words. */
public record ReachWords(ClinicTime time, Function<AccountId, String> names) {

  private static final String NOT_ASKED =
      "Not asked what may be said to whom: until then speak with nobody but him.";

  /** Of a course, as it is at its instant. */
  public ReachView of(CourseState state) {
    HowToReach how = HowToReach.of(state.file());
    boolean isNotOver = isNotOver(state);
    return new ReachView(
        how.numbers().stream()
            .map(
                one ->
                    new ReachView.Line(
                        one.entry().id().text(),
                        one.telephone(),
                        wishes(one.telephone(), isNotOver, state.knownNow())))
            .toList(),
        how.wishes().map(ReachWords::wishes).orElse(List.of(NOT_ASKED)),
        how.wishes(),
        how.again().map(again -> again(again, state.now())),
        how.gone().stream().map(one -> gone(one, state.now())).toList());
  }

  /** Whether an erection of his is not known to be over, so that he is called at any hour. */
  public static boolean isNotOver(CourseState state) {
    return OpenErections.first(state).isPresent() || CallLog.open(state.file()).isPresent();
  }

  private List<String> wishes(Telephone telephone, boolean isNotOver, Optional<Instant> now) {
    var lines = new ArrayList<String>();
    telephone
        .hours()
        .ifPresent(hours -> lines.add(isNotOver ? overridden(hours) : hours(hours, now, time)));
    lines.add(sentence(telephone.message().words()));
    return lines;
  }

  private static String overridden(Hours hours) {
    return "His hours are "
        + hours.words()
        + "; an erection that is not known to be over overrides them: call at any hour.";
  }

  /** "Only after 18:00: it is 14:55 there." */
  private static String hours(Hours hours, Optional<Instant> now, ClinicTime time) {
    String asked = sentence(hours.words());
    if (now.isEmpty()) {
      return asked;
    }
    LocalTime clock = LocalTime.ofInstant(now.get(), time.zone());
    String words = asked.substring(0, asked.length() - 1);
    return hours.contains(clock)
        ? words + "; it is " + time.timeText(now.get()) + " there."
        : words + ": it is " + time.timeText(now.get()) + " there, so not now.";
  }

  private static List<String> wishes(Wishes wishes) {
    var lines = new ArrayList<String>();
    lines.add(sentence(wishes.partner().words()));
    String language = wishes.language().isEmpty() ? "" : "Speaks " + wishes.language();
    if (wishes.interpreter() == Wishes.Interpreter.NEEDED) {
      lines.add(
          language.isEmpty()
              ? sentence(wishes.interpreter().words())
              : language + ": " + wishes.interpreter().words() + ".");
    } else if (!language.isEmpty()) {
      lines.add(language + ".");
    }
    lines.add(sentence(wishes.post().words()));
    return lines;
  }

  /** What counts at one number while nothing is open: for the day's list. */
  public static List<String> wishes(
      Telephone telephone, Wishes.Partner partner, Instant now, ClinicTime time) {
    var lines = new ArrayList<String>();
    telephone.hours().ifPresent(hours -> lines.add(hours(hours, Optional.of(now), time)));
    lines.add(sentence(telephone.message().words()));
    lines.add(sentence(partner.words()));
    return lines;
  }

  private String again(HowToReach.Again again, Instant now) {
    CourseEntry last = again.last();
    String by = " by " + names.apply(last.recordedBy());
    return tried(again.tries(), last.recordedAt(), by, now, time) + due(again.due(), now, time);
  }

  /** "Not reached: 2 tries, the last at 14:55. Next try due at 15:05, in 10 min." */
  public static String tried(int tries, Instant last, Instant due, Instant now, ClinicTime time) {
    return tried(tries, last, "", now, time) + due(due, now, time);
  }

  private static String tried(int tries, Instant last, String by, Instant now, ClinicTime time) {
    return "Not reached: "
        + (tries == 1 ? "tried at " : tries + " tries, the last at ")
        + time.clock(last, now)
        + by
        + ". ";
  }

  private static String due(Instant due, Instant now, ClinicTime time) {
    return "Next try "
        + (due.isAfter(now) ? "due at " : "was due at ")
        + time.clock(due, now)
        + ", "
        + ClinicTime.distance(now, due)
        + ".";
  }

  private String gone(HowToReach.Known gone, Instant now) {
    return gone.telephone().text()
        + ": no longer his, written "
        + time.day(gone.entry().recordedAt(), now)
        + " by "
        + names.apply(gone.entry().recordedBy())
        + gone.entry().reason().map(why -> ": " + why).orElse("")
        + ".";
  }

  /** What an entry says. */
  public static String of(ReachWord word, ClinicTime time) {
    return switch (word) {
      case ReachWord.NumberKept(Telephone telephone) ->
          "He is called at "
              + telephone.text()
              + ", "
              + telephone.whose().words()
              + telephone.hours().map(hours -> ", " + hours.words()).orElse("")
              + ", "
              + telephone.message().words();
      case ReachWord.NumberGone gone -> "The number of an earlier entry is no longer his";
      case ReachWord.WishesKept(Wishes wishes) ->
          "He asks: " + String.join(" ", wishes(wishes)).replaceAll("\\.$", "");
      case ReachWord.NotReached(String number, Instant next) ->
          "Not reached at " + number + ", next try " + time.words(next);
      case ReachWord.Reached(String number) -> "Reached at " + number;
    };
  }

  private static String sentence(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1) + ".";
  }
}
