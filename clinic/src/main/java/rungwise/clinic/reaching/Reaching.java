package rungwise.clinic.reaching;

import java.time.Instant;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import rungwise.clinic.ClockText;
import rungwise.clinic.OutsideText;
import rungwise.clinic.called.CallLog;
import rungwise.clinic.course.CourseFact.ReachWritten;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.NewEntry;
import rungwise.clinic.people.Account;
import rungwise.clinic.reach.Hours;
import rungwise.clinic.reach.ReachWord;
import rungwise.clinic.reach.Telephone;
import rungwise.clinic.reach.Wishes;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.CourseReader;
import rungwise.clinic.standing.HowToReach;
import rungwise.clinic.standing.StandingPorts;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/** Writes down how a man is reached, and calls that did not reach him. */
public final class Reaching {

  private static final String NO_NUMBER =
      "This number is not one of his any more: open the page again and choose one that is.";

  private final StandingPorts ports;
  private final CourseChanges changes;
  private final CourseReader reader;

  public Reaching(StandingPorts ports) {
    this.ports = ports;
    this.changes = new CourseChanges(ports);
    this.reader = new CourseReader(ports);
  }

  /** Writes one thing down. */
  public Reading<Long> write(Account actor, CourseId id, ReachDraft draft) {
    if (draft.what().isEmpty()) {
      return Reading.refused(
          new Fault(ReachDraft.WHAT, "Choose what is to be written down about reaching him."));
    }
    return changes.change(
        actor,
        By.CLINICIAN,
        id,
        (file, now) ->
            switch (draft.what().get()) {
              case NUMBER -> number(actor, file, draft, now);
              case GONE -> onNumber(draft, file, known -> gone(actor, id, known, draft, now));
              case WISHES -> wishes(draft).map(word -> append(actor, id, word, now));
              case NOT_REACHED ->
                  onNumber(draft, file, known -> notReached(actor, file, known, now));
              case REACHED ->
                  onNumber(
                      draft,
                      file,
                      known ->
                          Reading.of(
                              append(
                                  actor,
                                  id,
                                  new ReachWord.Reached(known.telephone().text()),
                                  now)));
            });
  }

  private long append(Account actor, CourseId id, ReachWord word, Instant now) {
    return changes.append(id, new ReachWritten(word), actor, now);
  }

  private static Reading<Long> onNumber(
      ReachDraft draft, CourseFile file, Function<HowToReach.Known, Reading<Long>> work) {
    return HowToReach.of(file).numbers().stream()
        .filter(one -> isMeant(one, draft))
        .findFirst()
        .map(work)
        .orElseGet(() -> Reading.refused(new Fault(ReachDraft.ENTRY, NO_NUMBER)));
  }

  /** By its entry, or by the number itself where a page knows no more of it. */
  private static boolean isMeant(HowToReach.Known one, ReachDraft draft) {
    return draft.entry().isEmpty()
        ? one.telephone().text().equals(draft.number())
        : one.entry().id().text().equals(draft.entry());
  }

  private Reading<Long> gone(
      Account actor, CourseId id, HowToReach.Known known, ReachDraft draft, Instant now) {
    Optional<String> fault = CourseChanges.textFault(draft.reason());
    if (fault.isPresent()) {
      return Reading.refused(new Fault(ReachDraft.REASON, fault.get()));
    }
    NewEntry entry =
        NewEntry.of(id, new ReachWritten(new ReachWord.NumberGone()), actor.id(), now)
            .correcting(known.entry().id());
    return Reading.of(
        ports
            .courses()
            .append(draft.reason().isBlank() ? entry : entry.because(draft.reason().strip())));
  }

  private Reading<Long> notReached(
      Account actor, CourseFile file, HowToReach.Known known, Instant now) {
    Instant next =
        NextTry.after(now, isNotOver(file, now), known.telephone().hours(), ports.time());
    return Reading.of(
        append(actor, file.id(), new ReachWord.NotReached(known.telephone().text(), next), now));
  }

  /** Whether an erection is not known to be over, so that the hours do not count. */
  private boolean isNotOver(CourseFile file, Instant now) {
    return CallLog.open(file).isPresent() || ReachWords.isNotOver(reader.state(file, now));
  }

  /** A new one, or one on record with another hour, another wish or a digit put right. */
  private Reading<Long> number(Account actor, CourseFile file, ReachDraft draft, Instant now) {
    List<HowToReach.Known> known = HowToReach.of(file).numbers();
    boolean isNew = draft.entry().isBlank();
    List<HowToReach.Known> others =
        known.stream().filter(one -> !one.entry().id().text().equals(draft.entry())).toList();
    if (!isNew && others.size() == known.size()) {
      return Reading.refused(new Fault(ReachDraft.ENTRY, NO_NUMBER));
    }
    return number(draft, others)
        .map(
            word -> {
              NewEntry entry = NewEntry.of(file.id(), new ReachWritten(word), actor.id(), now);
              return ports
                  .courses()
                  .append(isNew ? entry : entry.correcting(new EntryId(draft.entry())));
            });
  }

  private static Reading<ReachWord> number(ReachDraft draft, List<HowToReach.Known> others) {
    var faults = new ArrayList<Fault>();
    Reading<String> text = Telephone.read(draft.number()).at(ReachDraft.NUMBER);
    faults.addAll(text.placed());
    text.found()
        .filter(one -> others.stream().anyMatch(is -> is.telephone().text().equals(one)))
        .ifPresent(
            one ->
                faults.add(
                    new Fault(
                        ReachDraft.NUMBER,
                        one + " is on record already: change what stands there instead.")));
    Optional<Telephone.Whose> whose = one(Telephone.Whose.values(), draft.whose());
    if (whose.isEmpty()) {
      faults.add(new Fault(ReachDraft.WHOSE, "Choose who answers at this number."));
    }
    Optional<Telephone.Message> message = one(Telephone.Message.values(), draft.message());
    if (message.isEmpty()) {
      faults.add(new Fault(ReachDraft.MESSAGE, "Choose what may be left where nobody answers."));
    }
    Reading<Optional<Hours>> hours = hours(draft);
    faults.addAll(hours.placed());
    return faults.isEmpty()
        ? Reading.of(
            new ReachWord.NumberKept(
                new Telephone(
                    text.orThrow(), whose.orElseThrow(), hours.orThrow(), message.orElseThrow())))
        : new Reading.Refused<>(faults);
  }

  private static Reading<Optional<Hours>> hours(ReachDraft draft) {
    Reading<LocalTime> from = end(draft.from()).at(ReachDraft.FROM);
    Reading<LocalTime> until = end(draft.until()).at(ReachDraft.UNTIL);
    var faults = new ArrayList<>(from.placed());
    faults.addAll(until.placed());
    boolean isSaid = !(draft.from().isBlank() && draft.until().isBlank());
    if (isSaid && faults.isEmpty() && from.orThrow().equals(until.orThrow())) {
      faults.add(
          new Fault(
              ReachDraft.UNTIL,
              "He may be called from "
                  + draft.from().strip()
                  + " to "
                  + draft.until().strip()
                  + ", which is no time at all: leave both empty if any hour is right."));
    }
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    return Reading.of(
        isSaid ? Optional.of(new Hours(from.orThrow(), until.orThrow())) : Optional.empty());
  }

  /** An end that nobody named is that of the day. */
  private static Reading<LocalTime> end(String typed) {
    return typed.isBlank() ? Reading.of(LocalTime.MIDNIGHT) : ClockText.read(typed);
  }

  private static Reading<ReachWord> wishes(ReachDraft draft) {
    var faults = new ArrayList<Fault>();
    Optional<Wishes.Partner> partner = one(Wishes.Partner.values(), draft.partner());
    if (partner.isEmpty()) {
      faults.add(new Fault(ReachDraft.PARTNER, "Choose to whom else one may speak."));
    }
    Optional<Wishes.Post> post = one(Wishes.Post.values(), draft.post());
    if (post.isEmpty()) {
      faults.add(new Fault(ReachDraft.POST, "Choose what may be sent to his address."));
    }
    Optional<Wishes.Interpreter> interpreter =
        one(Wishes.Interpreter.values(), draft.interpreter());
    if (interpreter.isEmpty()) {
      faults.add(new Fault(ReachDraft.INTERPRETER, "Choose whether an interpreter is needed."));
    }
    Reading<String> language =
        draft.language().isBlank()
            ? Reading.of("")
            : OutsideText.line("The language", draft.language(), Wishes.LONGEST_LANGUAGE)
                .at(ReachDraft.LANGUAGE);
    faults.addAll(language.placed());
    return faults.isEmpty()
        ? Reading.of(
            new ReachWord.WishesKept(
                new Wishes(
                    partner.orElseThrow(),
                    post.orElseThrow(),
                    language.orThrow(),
                    interpreter.orElseThrow())))
        : new Reading.Refused<>(faults);
  }

  private static <E extends Enum<E>> Optional<E> one(E[] all, String name) {
    return Arrays.stream(all).filter(one -> one.name().equals(name)).findFirst();
  }
}
