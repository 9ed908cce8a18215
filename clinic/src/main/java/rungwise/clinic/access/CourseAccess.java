package rungwise.clinic.access;

import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.clinic.Transactions;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.Courses;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/**
 * The right to open a course. Whoever treats in this clinic has it for every course. An on-call
 * clinician and a programme lead take it, for one course and one shift, with a reason that is on
 * record before anything is shown. Nobody else can take it.
 */
public final class CourseAccess {

  /** How long an access that was taken counts: one long shift. A sample, no source. */
  public static final Duration GOOD_FOR = Duration.ofHours(12);

  /** How many one part of the list holds. */
  public static final int ON_ONE_PAGE = 50;

  private static final int LONGEST = 500;

  /** The fields of the question why a course is opened. */
  public static final String REASON = "accessReason";

  public static final String WORDS = "accessWords";

  private static final String NO_REASON = "No reason was chosen: choose one";
  private static final String NO_WORDS =
      "The words are missing: write why you open this course, in 1 to 500 characters";
  private static final String TOO_LONG = "The words are too long: use at most 500 characters";
  private static final String NO_COURSE = "There is no such course: open the list again";
  private static final String NOT_CLINICAL =
      "Only a clinician can take access to a course: ask an administrator for the role";

  private final TakenAccesses taken;
  private final Courses courses;
  private final Transactions transactions;
  private final InstantSource clock;

  public CourseAccess(
      TakenAccesses taken, Courses courses, Transactions transactions, InstantSource clock) {
    this.taken = taken;
    this.courses = courses;
    this.transactions = transactions;
    this.clock = clock;
  }

  /** Whether an account treats here, and so has the right to every course. */
  public static boolean isStanding(Account account) {
    return account.may(Role.PRESCRIBER) || account.may(Role.NURSE_EDUCATOR);
  }

  private static boolean mayTake(Account account) {
    return account.may(Role.ON_CALL_CLINICIAN) || account.may(Role.PROGRAMME_LEAD);
  }

  /** Whether a course is open to an account now. */
  public boolean isOpen(Account account, CourseId course) {
    return isStanding(account)
        || (mayTake(account) && taken.isGood(account.id(), course, clock.instant()));
  }

  /** Takes access to one course; words are needed where the reason does not say it all. */
  public Reading<TakenAccess> take(
      Account actor, CourseId course, Optional<AccessReason> reason, String words) {
    String written = words.strip();
    List<Fault> faults = faults(reason, written);
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    String why =
        Stream.of(reason.map(AccessReason::words).orElse(""), written)
            .filter(part -> !part.isEmpty())
            .reduce((first, second) -> first + ": " + second)
            .orElse("");
    return transactions.inTransaction(
        () -> {
          if (!mayTake(actor) && !isStanding(actor)) {
            return Reading.refused(NOT_CLINICAL);
          }
          if (courses.find(course).isEmpty()) {
            return Reading.refused(NO_COURSE);
          }
          Instant now = clock.instant();
          var access = new TakenAccess(actor.id(), course, why, now, now.plus(GOOD_FOR));
          taken.append(access);
          return Reading.of(access);
        });
  }

  private static List<Fault> faults(Optional<AccessReason> reason, String written) {
    if (reason.isEmpty()) {
      return List.of(new Fault(REASON, NO_REASON));
    }
    if (reason.get() == AccessReason.OTHER && written.isEmpty()) {
      return List.of(new Fault(WORDS, NO_WORDS));
    }
    return written.length() > LONGEST ? List.of(new Fault(WORDS, TOO_LONG)) : List.of();
  }

  /**
   * What was taken, the newest first; one more than a page if there is an older part.
   *
   * @param before the number before which the part begins
   */
  public List<TakenAccess.Numbered> list(long before) {
    return taken.list(before, ON_ONE_PAGE + 1);
  }
}
