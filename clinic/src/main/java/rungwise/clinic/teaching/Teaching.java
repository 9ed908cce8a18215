package rungwise.clinic.teaching;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFact.ReadinessRecorded;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EmergencyPlan;
import rungwise.clinic.people.Account;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.CourseReader;
import rungwise.clinic.standing.StandingPorts;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;

/** The use case that writes down what must be done before a man injects at home. */
public final class Teaching {

  private static final int LONGEST_LINE = 120;

  private final CourseChanges changes;
  private final CourseReader reader;
  private final ClinicTime time;

  public Teaching(StandingPorts ports) {
    this.changes = new CourseChanges(ports);
    this.reader = new CourseReader(ports);
    this.time = ports.time();
  }

  /** Writes down one item with its day; a later record of the same item stands beside it. */
  public Reading<Long> record(Account actor, CourseId id, ReadinessDraft draft) {
    return changes.change(
        actor,
        By.CLINICIAN,
        id,
        (file, now) -> {
          List<String> questions =
              reader.protocolOf(file).home().plan().stream().map(Sourced::value).toList();
          Reading<ReadinessRecorded> fact =
              read(draft, questions, LocalDate.ofInstant(now, time.zone()));
          return fact.found().isEmpty()
              ? new Reading.Refused<>(fact.placed())
              : Reading.of(changes.append(id, fact.orThrow(), actor, now));
        });
  }

  private static Reading<ReadinessRecorded> read(
      ReadinessDraft draft, List<String> questions, LocalDate today) {
    var faults = new ArrayList<Fault>();
    Optional<Readiness> item =
        Arrays.stream(Readiness.values())
            .filter(one -> one.name().equals(draft.item()))
            .findFirst();
    if (item.isEmpty()) {
      faults.add(Fault.ofForm("Choose what was done."));
    }
    Reading<LocalDate> day = ClinicTime.readDate(draft.day()).at(ReadinessDraft.DAY);
    faults.addAll(day.placed());
    day.found()
        .filter(one -> one.isAfter(today))
        .ifPresent(
            one ->
                faults.add(
                    new Fault(ReadinessDraft.DAY, ClinicTime.words(one) + " is still to come.")));
    CourseChanges.textFault(draft.note(), ReadinessDraft.NOTE).ifPresent(faults::add);
    boolean isPlan = item.equals(Optional.of(Readiness.EMERGENCY_PLAN));
    if (isPlan) {
      faults.addAll(planFaults(draft, questions));
    }
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    return Reading.of(
        new ReadinessRecorded(
            item.orElseThrow(),
            day.found().orElseThrow(),
            isPlan ? Optional.of(plan(draft, questions)) : Optional.empty(),
            draft.note().strip()));
  }

  private static EmergencyPlan plan(ReadinessDraft draft, List<String> questions) {
    return new EmergencyPlan(
        draft.hospital().strip(),
        draft.afterHoursNumber().strip(),
        draft.transport().strip(),
        questions.stream()
            .map(question -> new EmergencyPlan.Said(question, answer(draft, question)))
            .toList());
  }

  private static String answer(ReadinessDraft draft, String question) {
    return draft.more().getOrDefault(question, "").strip();
  }

  private static List<Fault> planFaults(ReadinessDraft draft, List<String> questions) {
    var faults = new ArrayList<Fault>();
    if (draft.hospital().isBlank()) {
      faults.add(new Fault(ReadinessDraft.HOSPITAL, "Enter the hospital that he goes to."));
    }
    if (draft.afterHoursNumber().isBlank()) {
      faults.add(
          new Fault(ReadinessDraft.AFTER_HOURS, "Enter the number that is answered after hours."));
    }
    if (draft.transport().isBlank()) {
      faults.add(new Fault(ReadinessDraft.TRANSPORT, "Enter how he gets there, and who drives."));
    }
    for (int asked = 0; asked < questions.size(); asked++) {
      String question = questions.get(asked);
      String field = ReadinessDraft.answerTo(asked + 1);
      if (answer(draft, question).isEmpty()) {
        faults.add(new Fault(field, "The protocol asks for this: " + question + "."));
      }
      lineFault(field, answer(draft, question)).ifPresent(faults::add);
    }
    lineFault(ReadinessDraft.HOSPITAL, draft.hospital()).ifPresent(faults::add);
    lineFault(ReadinessDraft.AFTER_HOURS, draft.afterHoursNumber()).ifPresent(faults::add);
    lineFault(ReadinessDraft.TRANSPORT, draft.transport()).ifPresent(faults::add);
    return faults;
  }

  private static Optional<Fault> lineFault(String field, String line) {
    return line.length() > LONGEST_LINE
        ? Optional.of(new Fault(field, "Write at most " + LONGEST_LINE + " characters a line."))
        : Optional.empty();
  }
}
