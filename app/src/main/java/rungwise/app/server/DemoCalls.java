package rungwise.app.server;

import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.Account;
import rungwise.clinic.reach.Telephone;
import rungwise.clinic.reach.Wishes;
import rungwise.clinic.reaching.ReachDraft;
import rungwise.clinic.reaching.ReachDraft.What;
import rungwise.clinic.reaching.Reaching;
import rungwise.clinic.standing.HowToReach;

/** How the invented men are reached; their numbers belong to nobody. */
record DemoCalls(CourseCases cases, Account educator) {

  /** A number of his at which no message may be left. */
  void number(CourseId id, String number, String from, String until) {
    write(
        id,
        ReachDraft.number(
            number, Telephone.Whose.HIS.name(), from, until, Telephone.Message.NONE.name()));
  }

  /** His partner may be asked that he calls back. */
  void wishes(CourseId id, String language, Wishes.Interpreter interpreter) {
    write(
        id,
        ReachDraft.wishes(
            Wishes.Partner.CALL_BACK.name(),
            Wishes.Post.PLAIN.name(),
            language,
            interpreter.name()));
  }

  /** He was called and not reached. */
  void notReached(CourseId id) {
    HowToReach.Known first =
        HowToReach.of(cases.titration().find(id).orElseThrow().file()).numbers().getFirst();
    write(id, ReachDraft.of(What.NOT_REACHED, first.entry().id().text()));
  }

  private void write(CourseId id, ReachDraft draft) {
    Reaching reaching = cases.reaching();
    reaching.write(educator, id, draft).orThrow();
  }
}
