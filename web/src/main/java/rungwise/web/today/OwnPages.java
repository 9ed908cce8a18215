package rungwise.web.today;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.springframework.stereotype.Component;
import rungwise.clinic.day.Need;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountState;
import rungwise.clinic.people.People;
import rungwise.clinic.people.Role;
import rungwise.clinic.populations.Populations;
import rungwise.clinic.protocols.Protocols;
import rungwise.clinic.today.DayList;
import rungwise.clinic.today.DayRows.Counts;
import rungwise.web.session.Sessions;
import rungwise.web.today.OwnPage.Figure;
import rungwise.web.today.OwnPage.Part;
import rungwise.web.today.TodayPage.Step;

/** The first page of who treats nobody: what they may do, and figures that name no man. */
@Component
final class OwnPages {

  private final DayList list;
  private final People people;
  private final Sessions sessions;
  private final Protocols protocols;
  private final Populations populations;

  OwnPages(
      DayList list,
      People people,
      Sessions sessions,
      Protocols protocols,
      Populations populations) {
    this.list = list;
    this.people = people;
    this.sessions = sessions;
    this.protocols = protocols;
    this.populations = populations;
  }

  /**
   * The page of an account.
   *
   * @param first what is to be done before anything else; may be empty
   */
  OwnPage of(Account account, List<Step> first) {
    var parts = new ArrayList<Part>();
    if (account.may(Role.PROGRAMME_LEAD)) {
      parts.add(lead());
    }
    if (account.may(Role.ADMINISTRATOR)) {
      parts.add(administrator());
    }
    if (account.may(Role.AUDITOR)) {
      parts.add(auditor());
    }
    return new OwnPage(first, parts);
  }

  private Part lead() {
    Counts counts = list.counts();
    var figures = new ArrayList<Figure>();
    figures.add(new Figure("Courses", counts.all()));
    figures.add(new Figure("Erections not known to be over", counts.open()));
    counts.others().entrySet().stream()
        .filter(one -> one.getKey().isWaiting())
        .sorted(Map.Entry.comparingByKey())
        .forEach(one -> figures.add(figure(one.getKey(), one.getValue())));
    figures.add(new Figure("Protocols signed for use", protocols.signed().size()));
    figures.add(new Figure("Populations signed", populations.signed().size()));
    return new Part(
        Role.PROGRAMME_LEAD.words(),
        "You see no man's course here: find a man and take access to read one.",
        figures,
        List.of(
            new Step("Read, write and sign protocols.", "/protocols", "Protocols"),
            new Step("See which courses run by which version.", "/protocols/courses", "Courses"),
            new Step("Read and sign what the model rests on.", "/populations", "Populations"),
            new Step("Fit the model to the clinic's own courses.", "/populations/fit", "Fit")));
  }

  private static Figure figure(Need need, int men) {
    return new Figure(need.words(), men);
  }

  private Part administrator() {
    List<Account> all = people.list();
    return new Part(
        Role.ADMINISTRATOR.words(),
        "You see no man's course.",
        List.of(
            new Figure("People who may sign in", count(all, AccountState.ACTIVE)),
            new Figure("Invitations not yet accepted", count(all, AccountState.INVITED)),
            new Figure("Sessions open now", sessions.list().size())),
        List.of(
            new Step("Invite the people who work here.", "/people/invite", "Invite somebody"),
            new Step("Give roles, or end an account.", "/people", "People"),
            new Step("End a session that was left open.", "/sessions", "Signed in now"),
            new Step("Read what was changed by another program.", "/record-faults", "Faults")));
  }

  private static int count(List<Account> all, AccountState state) {
    return (int) all.stream().filter(one -> one.state().equals(state)).count();
  }

  private Part auditor() {
    return new Part(
        Role.AUDITOR.words(),
        "You see who looked at which record number, and no man's course.",
        List.of(
            new Figure("Courses", list.counts().all()),
            new Figure("People who may sign in", count(people.list(), AccountState.ACTIVE))),
        List.of(
            new Step("Read who looked at what, and who changed it.", "/audit", "Audit trail"),
            new Step("Read who took access to a course, and why.", "/access-taken", "Access taken"),
            new Step("Read who has seen one record.", "/views", "Who looked")));
  }
}
