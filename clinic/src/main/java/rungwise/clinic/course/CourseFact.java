package rungwise.clinic.course;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.befell.VialWord;
import rungwise.clinic.coded.ChangeReason;
import rungwise.clinic.coded.HandedOnFor;
import rungwise.clinic.coded.ShownBy;
import rungwise.clinic.elsewhere.ElsewhereWord;
import rungwise.clinic.life.LifeWord;
import rungwise.clinic.measured.Vitals;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.reach.ReachWord;
import rungwise.clinic.rescue.RescueWord;
import rungwise.clinic.soundness.Acknowledgement.Side;
import rungwise.clinic.words.HomeSheet;
import rungwise.dosing.decision.KeptAdvice;
import rungwise.dosing.guard.OverriddenHold;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Place;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.history.Spot;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.known.Tablet;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.screening.Answer;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.screening.Screening.Answered;
import rungwise.dosing.urgent.CallStep;
import rungwise.dosing.urgent.Speaker;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** Something that was written into a course. Each kind is appended and never changed. */
public sealed interface CourseFact {

  /** The course begins. */
  record CourseOpened(Patient patient, AetiologyGroup group) implements CourseFact {}

  /**
   * The screening questions were asked, or said to be still true. It replaces the one before it.
   *
   * @param answers with the time at which each was last said to be true
   */
  record Screened(Map<Condition, Answered> answers) implements CourseFact {
    public Screened {
      var ordered = new EnumMap<Condition, Answered>(Condition.class);
      ordered.putAll(answers);
      answers = Collections.unmodifiableMap(ordered);
    }
  }

  /** A prescriber decided to go on with a condition that asks for a decision. */
  record DecisionWritten(Condition condition) implements CourseFact {}

  /**
   * A prescriber wrote that a yes was wrong.
   *
   * @param shownBy what shows it
   */
  record AnswerOverturned(Condition condition, ShownBy shownBy) implements CourseFact {}

  /** Where he stands before treatment. */
  record BaselineRecorded(Baseline baseline) implements CourseFact {}

  /**
   * He was examined for curvature and scarring.
   *
   * @param at when on that day, where somebody said so; without it, it is known to be after nothing
   *     of that day
   */
  record ExaminationRecorded(LocalDate day, Optional<Instant> at, Answer scarring)
      implements CourseFact {

    /** One of which only the day was said. */
    public ExaminationRecorded(LocalDate day, Answer scarring) {
      this(day, Optional.empty(), scarring);
    }
  }

  /**
   * A vial was dispensed to him, or a dose for him was drawn from one of the clinic's.
   *
   * @param ofClinic the vial of the clinic that it is; empty for one that was dispensed to him
   */
  record VialReceived(Vial vial, Optional<EntryId> ofClinic) implements CourseFact {

    /** A vial that was dispensed to him. */
    public VialReceived(Vial vial) {
      this(vial, Optional.empty());
    }
  }

  /** Preparation, syringe and protocol were chosen. */
  record PlanChosen(Plan plan) implements CourseFact {}

  /**
   * Something that home use needs is on record.
   *
   * @param plan for the emergency plan only
   * @param note what was shown, taught or agreed; may be empty
   */
  record ReadinessRecorded(Readiness item, LocalDate day, Optional<EmergencyPlan> plan, String note)
      implements CourseFact {
    public ReadinessRecorded {
      if (plan.isPresent() != (item == Readiness.EMERGENCY_PLAN)) {
        throw new IllegalArgumentException("bug: an emergency plan belongs to its own item");
      }
    }

    /** The first day on which it no longer holds; empty if it does not expire. */
    public Optional<LocalDate> expires(Protocol.Home asked) {
      return asked.readinessMonths().map(months -> day.plusMonths(months.value()));
    }

    /** What a protocol asks for that this does not give on a day, in words. */
    public List<String> lacks(Protocol.Home asked, LocalDate on) {
      var lacks = new ArrayList<String>();
      expired(asked, on).ifPresent(end -> lacks.add("it held until " + ClinicTime.words(end)));
      lacks.addAll(unanswered(asked));
      return lacks;
    }

    /** Since when it no longer holds on a day; empty if it still does. */
    public Optional<LocalDate> expired(Protocol.Home asked, LocalDate on) {
      return expires(asked).filter(end -> !on.isBefore(end));
    }

    /** What a protocol asks of the emergency plan that this one does not say. */
    public List<String> unanswered(Protocol.Home asked) {
      return plan.map(agreed -> agreed.unanswered(asked)).orElse(List.of());
    }
  }

  /**
   * He was injected in the clinic and is under observation.
   *
   * @param ordered the dose that was signed for it; empty if none was
   * @param vial the entry of the vial
   */
  record ObservationStarted(
      Instant injectedAt,
      PreparationId preparation,
      String barrel,
      Volume drawn,
      Optional<Volume> ordered,
      Optional<Spot> spot,
      Optional<Vitals> before,
      Optional<EntryId> vial)
      implements CourseFact {

    /** The same, drawn from the vial of an entry. */
    public ObservationStarted from(EntryId entry) {
      return new ObservationStarted(
          injectedAt, preparation, barrel, drawn, ordered, spot, before, Optional.of(entry));
    }
  }

  /**
   * Something was seen during an observation.
   *
   * @param observation the entry that started it
   */
  record ObservationNoted(
      EntryId observation,
      Moment moment,
      Instant at,
      Optional<Grade> grade,
      Optional<Vitals> vitals)
      implements CourseFact {}

  /**
   * A prescriber signed a dose.
   *
   * @param rungs the ladder that is signed with it
   * @param overridden the holds that were overridden, with what each had read
   * @param changed why it is not the proposed dose, where it is not
   * @param basis the number of the last entry that the advice had read
   * @param askedAt the instant at which the advice was asked
   * @param advice the whole advice, so that it can be replayed and compared
   * @param nextStep the one step that may follow without a new signature
   * @param accepted how long an erection may last at this dose, where that is over an hour
   */
  record DoseSigned(
      Plan plan,
      Volume volume,
      Place place,
      List<Volume> rungs,
      Volume ceiling,
      Set<OverriddenHold> overridden,
      Optional<ChangeReason> changed,
      long basis,
      Instant askedAt,
      KeptAdvice advice,
      Optional<Volume> nextStep,
      Optional<TimeSpan> accepted)
      implements CourseFact {
    public DoseSigned {
      rungs = List.copyOf(rungs);
      overridden = Set.copyOf(overridden);
    }
  }

  /**
   * An injection that happened, and how it went.
   *
   * @param ordered the dose that was signed for it; empty if none was
   * @param observation the entry of the observation that it ends, for one in the clinic
   */
  record InjectionReported(
      Instant injectedAt,
      PreparationId preparation,
      String barrel,
      Volume drawn,
      Optional<Volume> ordered,
      Grade grade,
      SoftAfter soft,
      SimpleCauses causes,
      Place place,
      Optional<EntryId> observation,
      InjectionDetails details)
      implements CourseFact {}

  /**
   * A man who left the clinic while it was firm was handed by name to somebody on call.
   *
   * @param erection the report of which the end is not known
   * @param to who calls him from then on
   * @param tries how often it was tried to reach him, at least once
   * @param lastTry when it was tried last
   */
  record HandedOver(EntryId erection, AccountId to, int tries, Instant lastTry)
      implements CourseFact {
    public HandedOver {
      if (tries < 1) {
        throw new IllegalArgumentException("bug: handed over after " + tries + " tries");
      }
    }
  }

  /**
   * Somebody said what may mean 4 hours or still firm, and the report is not complete.
   *
   * @param injectedAt when he injected, where that could be read
   * @param about the report that it was to correct
   * @param said what stands in the parts of the form, in their order
   */
  record ReportUnfinished(Optional<Instant> injectedAt, Optional<EntryId> about, List<Said> said)
      implements CourseFact {
    public ReportUnfinished {
      said = List.copyOf(said);
    }

    /**
     * What was typed into one part.
     *
     * @param part its name in the form
     */
    public record Said(String part, String text) {}
  }

  /**
   * Something was written down in a call about an erection that does not go down. It can only hold:
   * no word of a call lifts a stop or opens a volume.
   */
  record CallWritten(Word word) implements CourseFact {

    /** What was written; all but the first name the entry that opened the call. */
    public sealed interface Word {

      /** Whether it goes on holding where nothing is proven: no start is struck, no call ends. */
      default boolean holds() {
        return !(this instanceof Struck || this instanceof Soft || this instanceof HandedTo);
      }
    }

    /** The call begins. */
    public record Opened() implements Word {}

    /** When it began, as somebody says; empty if he was asked and could not say. */
    public record Began(EntryId call, Optional<Instant> at, Speaker by) implements Word {}

    /** A clinician took such a statement back; the reason is the entry's. */
    public record Struck(EntryId call, EntryId began) implements Word {}

    /** It is firm still. */
    public record Firm(EntryId call, Instant at, Speaker by) implements Word {}

    /** A step was done. */
    public record Done(EntryId call, CallStep step, Instant at, Speaker by) implements Word {}

    /** The call stays open and is somebody else's; the words are the entry's. */
    public record HandedOn(EntryId call, AccountId to, HandedOnFor why) implements Word {}

    /** It is fully soft: the call ends. */
    public record Soft(EntryId call, Instant at, Speaker by) implements Word {}

    /** He is in others' care: the call ends. */
    public record HandedTo(EntryId call, String place, String whom, Instant at) implements Word {}
  }

  /**
   * What was given and measured in a rescue.
   *
   * @param call the entry that opened the call
   */
  record RescueWritten(EntryId call, RescueWord word) implements CourseFact {}

  /** How he is reached, or that he was not. */
  record ReachWritten(ReachWord word) implements CourseFact {}

  /** What he injects elsewhere, or that the schedule is opened at a part of it. */
  record ElsewhereWritten(ElsewhereWord word) implements CourseFact {}

  /** The course was brought to a stand, or goes on. */
  record LifeWritten(LifeWord word) implements CourseFact {}

  /** What befell a vial, by the entry that wrote it down first. */
  record VialBefell(EntryId vial, VialWord word) implements CourseFact {}

  /**
   * A sheet was made for him to take home.
   *
   * @param order the entry of the signed dose, as vial and plan are entries too
   */
  record SheetMade(EntryId order, EntryId vial, EntryId plan, HomeSheet sheet)
      implements CourseFact {}

  /** A prescriber has seen every report that the course flagged until then. */
  record FlagsSeen() implements CourseFact {}

  /** He took a tablet for erections. */
  record TabletTaken(Tablet tablet, Instant at) implements CourseFact {}

  /**
   * A prescriber decided whether he may go on with a daily low dose of a tablet for erections.
   *
   * @param isAllowed whether a tablet of it holds no injection
   */
  record DailyTabletDecided(boolean isAllowed) implements CourseFact {}

  /** The report that this entry corrects does not belong here. */
  record ReportWithdrawn() implements CourseFact {}

  /** A prescriber allows volumes again that a long erection had closed. */
  record VolumeReopened(PreparationId preparation, Volume upTo) implements CourseFact {}

  /**
   * A prescriber reviewed what was, or might have been, an emergency.
   *
   * @param softWhenSeen when he was seen or told to be soft, where the prescriber writes that the
   *     end cannot be known
   */
  record EmergencyReviewed(Optional<Instant> softWhenSeen) implements CourseFact {}

  /**
   * A prescriber wrote that what a report said was wrong, so that it stops and closes nothing any
   * more.
   *
   * @param correction the entry that corrects or withdraws the report; it and the ones before it
   *     are confirmed
   */
  record CorrectionConfirmed(EntryId correction) implements CourseFact {}

  /**
   * A prescriber reviewed long erections from before this record began, of which the history does
   * not say what was injected.
   *
   * @param reference of which preparation the history's strengths are parts; empty if nobody can
   *     tell
   */
  record PastReviewed(Optional<PreparationId> reference) implements CourseFact {}

  /**
   * Somebody has acknowledged that an entry was changed after it was written.
   *
   * @param faulty the number of that entry
   * @param read what was read of it, as {@link rungwise.clinic.soundness.Flaw#read()} says
   */
  record FaultAcknowledged(long faulty, String read, Side side) implements CourseFact {}
}
