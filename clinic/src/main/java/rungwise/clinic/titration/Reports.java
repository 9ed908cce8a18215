package rungwise.clinic.titration;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import rungwise.clinic.course.CourseFact.DailyTabletDecided;
import rungwise.clinic.course.CourseFact.ReportUnfinished;
import rungwise.clinic.course.CourseFact.TabletTaken;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.NewEntry;
import rungwise.clinic.people.Account;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.CourseReader;
import rungwise.clinic.standing.StandingPorts;
import rungwise.clinic.standing.UnfinishedReports;
import rungwise.quantities.Reading;

/**
 * Reports of injections. None is refused for what it says: what cannot be true together is asked
 * back, and where it could mean 4 hours or still firm it stands on record meanwhile and stops the
 * course.
 */
public final class Reports {

  private static final int LONGEST_SAID = 200;
  private static final String NOT_PRINTED = "\\p{C}";

  private final StandingPorts ports;
  private final CourseChanges changes;

  public Reports(StandingPorts ports) {
    this.ports = ports;
    this.changes = new CourseChanges(ports);
  }

  /** Records what a man reported, or corrects an earlier report. */
  public ReportAnswer enter(Account actor, CourseId id, ReportDraft draft) {
    return answer(
        changes.change(
            actor, By.CLINICIAN, id, (file, now) -> Reading.of(enter(actor, file, now, draft))));
  }

  private static ReportAnswer answer(Reading<ReportAnswer> answer) {
    return answer
        .found()
        .orElseGet(
            () ->
                ReportAnswer.refused(
                    answer.faults().stream()
                        .map(fault -> new PartFault(ReportPart.FORM, fault))
                        .toList()));
  }

  private ReportAnswer enter(Account actor, CourseFile file, Instant now, ReportDraft draft) {
    ReportReading.Outcome read = read(file, now, draft);
    Optional<Written<ReportUnfinished>> earlier = unfinished(file, draft.completes());
    if (read.report().isEmpty()) {
      return read.mayBeFourHours()
          ? kept(actor, file, now, draft, read, earlier)
          : ReportAnswer.refused(read.faults());
    }
    NewEntry entry = NewEntry.of(file.id(), read.report().get(), actor.id(), now);
    NewEntry placed =
        draft
            .corrects()
            .map(report -> entry.correcting(report).because(reason(draft)))
            .or(() -> earlier.map(worry -> entry.correcting(worry.entry().id())))
            .orElse(entry);
    read.tablet().ifPresent(taken -> keep(actor, file, now, taken));
    long number = ports.courses().append(placed);
    var notices = new ArrayList<>(read.notices());
    notices.addAll(flagged(file.id(), number, now));
    return new ReportAnswer(Optional.of(number), notices, List.of(), Optional.empty());
  }

  /** Whoever writes the report down reads what of it a prescriber is told. */
  private List<String> flagged(CourseId id, long report, Instant now) {
    CourseFile file = ports.courses().find(id).orElseThrow();
    String told =
        new CourseReader(ports)
            .state(file, now).flags().stream()
                .filter(flag -> flag.report().entry().number() == report)
                .map(flag -> flag.kind().words())
                .collect(Collectors.joining(" "));
    return told.isEmpty() ? List.of() : List.of("A prescriber is told of it: " + told);
  }

  /** A tablet that is on record already is not written down again. */
  private long keep(Account actor, CourseFile file, Instant now, TabletTaken taken) {
    return file.inForce(TabletTaken.class).stream()
        .filter(written -> written.fact().equals(taken))
        .mapToLong(written -> written.entry().number())
        .findFirst()
        .orElseGet(() -> changes.append(file.id(), taken, actor, now));
  }

  /** Writes down a tablet for erections that he took: today, and now where no time is said. */
  public ReportAnswer tookTablet(Account actor, CourseId id, ReportDraft draft) {
    return answer(
        changes.change(
            actor,
            By.CLINICIAN,
            id,
            (file, now) -> {
              var faults = new PartFaults();
              Optional<TabletTaken> taken =
                  new TabletReading(ports.time(), ports.present(now)).of(draft, faults);
              if (taken.isEmpty() && faults.isEmpty()) {
                faults.add(ReportPart.TABLET, "Choose which tablet he took.");
              }
              return Reading.of(
                  faults.isEmpty()
                      ? ReportAnswer.kept(keep(actor, file, now, taken.orElseThrow()))
                      : ReportAnswer.refused(faults.faults()));
            }));
  }

  /** A prescriber decides whether he may go on with a daily low dose. */
  public Reading<Long> decideDailyTablet(
      Account actor, CourseId id, boolean isAllowed, String reason) {
    return changes.change(
        actor,
        By.PRESCRIBER,
        id,
        (file, now) ->
            changes.appendWithReason(
                id, new DailyTabletDecided(isAllowed), actor, now, Optional.empty(), reason));
  }

  private static String reason(ReportDraft draft) {
    return draft.text(ReportPart.REASON).strip();
  }

  private ReportReading.Outcome read(CourseFile file, Instant now, ReportDraft draft) {
    return new ReportReading(draft, file, ports, now).read();
  }

  /** What must be asked back of an unfinished report, as things stand now. */
  public List<PartFault> faultsOf(CourseFile file, ReportDraft draft) {
    return read(file, changes.now(), draft).faults();
  }

  /** What was typed into a report that is still unfinished. */
  public static Optional<ReportDraft> draftOf(CourseFile file, EntryId unfinished) {
    return unfinished(file, Optional.of(unfinished)).map(Reports::draft);
  }

  private static ReportDraft draft(Written<ReportUnfinished> written) {
    ReportDraft draft = ReportDraft.EMPTY;
    for (Map.Entry<ReportPart, List<String>> part : parts(written.fact()).entrySet()) {
      draft = draft.with(part.getKey(), part.getValue().toArray(String[]::new));
    }
    ReportDraft filled = draft.completing(written.entry().id());
    return written.fact().about().map(filled::correcting).orElse(filled);
  }

  private static Map<ReportPart, List<String>> parts(ReportUnfinished fact) {
    var parts = new EnumMap<ReportPart, List<String>>(ReportPart.class);
    for (ReportUnfinished.Said said : fact.said()) {
      ReportPart.of(said.part())
          .ifPresent(
              part -> parts.computeIfAbsent(part, one -> new ArrayList<>()).add(said.text()));
    }
    return parts;
  }

  private static Optional<Written<ReportUnfinished>> unfinished(
      CourseFile file, Optional<EntryId> entry) {
    return UnfinishedReports.of(file).stream()
        .filter(written -> entry.equals(Optional.of(written.entry().id())))
        .findFirst();
  }

  /** What was said stands on record as it is, once however often it is sent. */
  private ReportAnswer kept(
      Account actor,
      CourseFile file,
      Instant now,
      ReportDraft draft,
      ReportReading.Outcome read,
      Optional<Written<ReportUnfinished>> earlier) {
    var fact =
        new ReportUnfinished(
            read.injectedAt(),
            draft.corrects().filter(id -> ReportReading.reported(file, id).isPresent()),
            said(draft));
    Optional<EntryId> same =
        UnfinishedReports.of(file).stream()
            .filter(written -> written.fact().equals(fact))
            .map(written -> written.entry().id())
            .findFirst();
    EntryId entry = same.orElseGet(() -> append(actor, file, now, fact, earlier));
    return new ReportAnswer(Optional.empty(), List.of(), read.faults(), Optional.of(entry));
  }

  private EntryId append(
      Account actor,
      CourseFile file,
      Instant now,
      ReportUnfinished fact,
      Optional<Written<ReportUnfinished>> earlier) {
    NewEntry entry = NewEntry.of(file.id(), fact, actor.id(), now);
    long number =
        ports
            .courses()
            .append(earlier.map(one -> entry.correcting(one.entry().id())).orElse(entry));
    return ports.courses().find(file.id()).orElseThrow().entries().stream()
        .filter(one -> one.number() == number)
        .findFirst()
        .orElseThrow()
        .id();
  }

  private static List<ReportUnfinished.Said> said(ReportDraft draft) {
    var said = new ArrayList<ReportUnfinished.Said>();
    draft
        .typed()
        .forEach(
            (part, values) ->
                values.stream()
                    .map(Reports::printed)
                    .filter(text -> !text.isBlank())
                    .map(text -> new ReportUnfinished.Said(part.field(), text))
                    .forEach(said::add));
    return said;
  }

  /** As it can be read again; nobody types more than that into a field of a report. */
  private static String printed(String text) {
    String printed = text.replaceAll(NOT_PRINTED, " ").strip();
    return printed.length() <= LONGEST_SAID
        ? printed
        : printed.substring(0, printed.offsetByCodePoints(0, LONGEST_SAID / 2));
  }
}
