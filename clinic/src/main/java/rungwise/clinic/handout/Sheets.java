package rungwise.clinic.handout;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import rungwise.clinic.IdSource;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFact.ReadinessRecorded;
import rungwise.clinic.course.CourseFact.SheetMade;
import rungwise.clinic.course.CourseFact.VialReceived;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.EmergencyPlan;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.Role;
import rungwise.clinic.soundness.UnreadableRecord;
import rungwise.clinic.standing.CourseChanges;
import rungwise.clinic.standing.CourseChanges.By;
import rungwise.clinic.standing.CourseReader;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.standing.StandingPorts;
import rungwise.clinic.words.HomeSheet;
import rungwise.clinic.words.Language;
import rungwise.clinic.words.Paper;
import rungwise.clinic.words.PatientWords;
import rungwise.clinic.words.SheetCode;
import rungwise.clinic.words.Slot;
import rungwise.dosing.known.Dose;
import rungwise.dosing.ladder.Ladder;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Reading;

/** Sheets for home: making one, finding one that was made, and whether it is current. */
public final class Sheets {

  private static final String NO_VIAL =
      "No vial of his is on record, so the sheet could not say until when it may be used: write the"
          + " vial down first.";
  private static final String NO_PLAN =
      "No emergency plan is on record, so the sheet could not say where he goes: agree on one"
          + " first.";
  private static final String OTHER_ORDER =
      "Another dose has been signed since this page was opened, so no sheet was made: read it, and"
          + " make the sheet of that.";
  private static final String SIGNED_ALREADY = "These words are signed already: nothing was added.";

  private final StandingPorts ports;
  private final SignedWords signedWords;
  private final SheetPress press;
  private final IdSource ids;
  private final CourseReader reader;
  private final CourseChanges changes;

  public Sheets(StandingPorts ports, SignedWords signedWords, SheetPress press, IdSource ids) {
    this.ports = ports;
    this.signedWords = signedWords;
    this.press = press;
    this.ids = ids;
    this.reader = new CourseReader(ports);
    this.changes = new CourseChanges(ports);
  }

  /** What a course has for a sheet. */
  private record Parts(
      Written<DoseSigned> signed, Written<VialReceived> vial, Written<ReadinessRecorded> plan) {}

  /**
   * Makes a sheet of the dose in force and gives back its entry.
   *
   * @param address where it is told whether a sheet is current; may be empty
   */
  public Reading<EntryId> make(Account actor, CourseId id, SheetDraft draft, String address) {
    Reading<Long> made =
        changes.change(
            actor,
            By.CLINICIAN,
            id,
            (file, now) -> {
              CourseState state = reader.state(file, now);
              Reading<Parts> parts = parts(state, draft);
              var reading = new SheetReading(draft, press).read(file);
              if (parts.found().isEmpty()) {
                return Reading.refused(String.join(" ", parts.faults()));
              }
              return reading.found().isEmpty()
                  ? new Reading.Refused<>(reading.placed())
                  : Reading.of(append(actor, state, parts.orThrow(), reading.orThrow(), address));
            });
    return made.found().isEmpty()
        ? new Reading.Refused<>(made.placed())
        : Reading.of(entry(id, made.orThrow()));
  }

  private EntryId entry(CourseId id, long number) {
    return ports.courses().find(id).orElseThrow().entries().stream()
        .filter(entry -> entry.number() == number)
        .findFirst()
        .orElseThrow()
        .id();
  }

  private Reading<Parts> parts(CourseState state, SheetDraft draft) {
    Optional<String> refused = SheetRefusals.of(state);
    if (refused.isPresent()) {
      return Reading.refused(refused.get());
    }
    Optional<Parts> parts = parts(state.file());
    if (parts.isEmpty()) {
      return Reading.refused(state.file().vial().isEmpty() ? NO_VIAL : NO_PLAN);
    }
    return parts.get().signed().entry().id().text().equals(draft.order())
        ? Reading.of(parts.get())
        : Reading.refused(OTHER_ORDER);
  }

  private static Optional<Parts> parts(CourseFile file) {
    Optional<Written<ReadinessRecorded>> plan = plan(file);
    return file.signedDose()
        .flatMap(
            signed ->
                file.vial().flatMap(vial -> plan.map(agreed -> new Parts(signed, vial, agreed))));
  }

  private static Optional<Written<ReadinessRecorded>> plan(CourseFile file) {
    return file.inForce(ReadinessRecorded.class).stream()
        .filter(written -> written.fact().plan().isPresent())
        .reduce((earlier, later) -> later);
  }

  private long append(
      Account actor, CourseState state, Parts parts, SheetReading.Asked asked, String address) {
    HomeSheet sheet =
        writing(state, parts, asked.said(), asked.keeping()).sheet(ids.next().toString(), address);
    return changes.append(
        state.file().id(),
        new SheetMade(
            parts.signed().entry().id(),
            parts.vial().entry().id(),
            parts.plan().entry().id(),
            sheet),
        actor,
        state.now());
  }

  private SheetWriting writing(
      CourseState state, Parts parts, SheetWriting.Said said, Keeping keeping) {
    var preparation = state.question().preparation();
    var vial =
        new SheetVial(
            Objects.requireNonNull(reader.vialUses(state.file()).get(parts.vial().entry().id())),
            ports.inUse().apply(preparation.id()),
            preparation.form(),
            keeping);
    return new SheetWriting(state, parts.signed(), vial, said, isDraft(), press, ports.time());
  }

  private boolean isDraft() {
    return signedWords.signed(PatientWords.VERSION).isEmpty();
  }

  /** A prescriber signs the words as they are now, for every sheet of the clinic from now on. */
  public Reading<Integer> signWords(Account actor, int version) {
    if (!actor.may(Role.PRESCRIBER)) {
      return Reading.refused(By.PRESCRIBER.refusal());
    }
    if (!changes.isTimeKnown()) {
      return Reading.refused(CourseChanges.CLOCK_NOT_KNOWN);
    }
    return ports
        .transactions()
        .inTransaction(
            () -> {
              if (version != PatientWords.VERSION || !isDraft()) {
                return Reading.refused(SIGNED_ALREADY);
              }
              signedWords.sign(version, actor.id(), changes.now());
              return Reading.of(version);
            });
  }

  /** The document of a sheet that was made for a course; empty if there is no such sheet. */
  public Optional<byte[]> document(CourseId id, EntryId entry) {
    return ports.courses().find(id).flatMap(file -> made(file, entry)).map(this::document);
  }

  private record MadeOf(SheetMade sheet, Dose dose) {}

  private byte[] document(MadeOf made) {
    return press.pdf(made.sheet().sheet(), made.dose());
  }

  private Optional<MadeOf> made(CourseFile file, EntryId entry) {
    return file.everWritten(SheetMade.class).stream()
        .filter(written -> written.entry().id().equals(entry))
        .findFirst()
        .map(written -> new MadeOf(written.fact(), dose(file, written.fact())));
  }

  /** The dose of the order that a sheet was made of, whether it is in force or not. */
  private Dose dose(CourseFile file, SheetMade made) {
    DoseSigned signed = (DoseSigned) file.entry(made.order()).fact();
    return new Ladder(
            ports.preparations().apply(signed.plan().preparation()).orElseThrow(),
            Barrels.of(signed.plan().barrel()).orElseThrow(),
            signed.rungs(),
            signed.ceiling())
        .dose(signed.volume());
  }

  /** Whether the sheet of a code is current; empty if there is no such sheet. */
  public Optional<SheetStanding> standing(SheetCode code) {
    return ports
        .courses()
        .withSheet(code)
        .flatMap(
            id -> {
              Instant now = changes.now();
              return ports.courses().readable(id).flatMap(file -> standing(file, code, now));
            });
  }

  private Optional<SheetStanding> standing(CourseFile file, SheetCode code, Instant now) {
    return file.sheet(code).map(written -> written.fact()).map(made -> standing(file, made, now));
  }

  private SheetStanding standing(CourseFile file, SheetMade made, Instant now) {
    Language language = made.sheet().language();
    try {
      return standing(reader.state(file, now), made);
    } catch (UnreadableRecord e) {
      return new SheetStanding.NotCurrent(language);
    }
  }

  private SheetStanding standing(CourseState state, SheetMade made) {
    HomeSheet sheet = made.sheet();
    var notCurrent = new SheetStanding.NotCurrent(sheet.language());
    Optional<Parts> parts = parts(state.file());
    if (SheetRefusals.of(state).isPresent()
        || parts.isEmpty()
        || !parts.get().signed().entry().id().equals(made.order())) {
      return notCurrent;
    }
    HomeSheet now =
        writing(state, parts.get(), said(sheet), keeping(sheet)).sheet(sheet.id(), sheet.address());
    SheetChanges changed = SheetChanges.between(sheet, now);
    if (changed.isDoseOther()) {
      return notCurrent;
    }
    var all = new HashSet<>(changed.changes());
    if (!parts.get().vial().entry().id().equals(made.vial())) {
      all.add(SheetStanding.Change.VIAL);
    }
    if (!parts.get().plan().entry().id().equals(made.plan())) {
      all.add(SheetStanding.Change.PLAN);
    }
    return all.isEmpty()
        ? new SheetStanding.Current(sheet.language())
        : new SheetStanding.AskForNew(sheet.language(), all);
  }

  private static SheetWriting.Said said(HomeSheet sheet) {
    return new SheetWriting.Said(
        sheet.language(),
        sheet.paper(),
        sheet.filled(Slot.CLINIC_NUMBER).orElse(""),
        sheet.filled(Slot.AFTER_HOURS_NUMBER).orElse(""),
        sheet.filled(Slot.HOSPITAL).orElse(""),
        sheet.filled(Slot.TRANSPORT).orElse(""));
  }

  private static Keeping keeping(HomeSheet sheet) {
    for (Keeping one : Keeping.values()) {
      if (sheet.says(one.word())) {
        return one;
      }
    }
    return Keeping.AS_LABELLED;
  }

  /** The sheets of a course, and what a new one would begin with. */
  public SheetView view(CourseState state, Function<AccountId, String> names) {
    CourseFile file = state.file();
    Optional<String> why =
        parts(state, draft(file)).found().isPresent()
            ? Optional.empty()
            : Optional.of(String.join(" ", parts(state, draft(file)).faults()));
    var made = new ArrayList<>(file.everWritten(SheetMade.class));
    made.sort(
        Comparator.comparingLong((Written<SheetMade> one) -> one.entry().number()).reversed());
    List<SheetView.Made> lines = made.stream().map(one -> line(state, one, names)).toList();
    return new SheetView(why, draft(file), isDraft(), signedWords(names), lines);
  }

  /** By whom and when the words in use were signed; empty while they are not. */
  public String signedWords(Function<AccountId, String> names) {
    return signedWords
        .signed(PatientWords.VERSION)
        .map(one -> names.apply(one.by()) + ", " + ports.time().words(one.at()))
        .orElse("");
  }

  private SheetView.Made line(
      CourseState state, Written<SheetMade> one, Function<AccountId, String> names) {
    HomeSheet sheet = one.fact().sheet();
    return new SheetView.Made(
        one.entry().id().text(),
        sheet.code().words(),
        ports.time().words(one.entry().recordedAt()),
        names.apply(one.entry().recordedBy()),
        sheet.language().words(),
        sheet.paper().words(),
        standing(state, one.fact()));
  }

  /**
   * The form begins with what the last sheet said; a plan that was agreed since then takes the
   * place of what was typed by the plan before it.
   */
  private static SheetDraft draft(CourseFile file) {
    Optional<SheetMade> made =
        file.everWritten(SheetMade.class).stream()
            .map(Written::fact)
            .reduce((earlier, later) -> later);
    Optional<HomeSheet> last = made.map(SheetMade::sheet);
    Optional<EmergencyPlan> plan = file.emergencyPlan();
    Optional<HomeSheet> ofPlan =
        made.filter(
                one ->
                    plan(file).map(agreed -> agreed.entry().id()).equals(Optional.of(one.plan())))
            .map(SheetMade::sheet);
    return new SheetDraft(
        file.signedDose().map(written -> written.entry().id().text()).orElse(""),
        last.map(HomeSheet::language).orElse(Language.ENGLISH).tag(),
        last.map(HomeSheet::paper).orElse(Paper.LETTER).token(),
        last.map(sheet -> keeping(sheet).name()).orElse(""),
        last.flatMap(sheet -> sheet.filled(Slot.CLINIC_NUMBER)).orElse(""),
        typed(ofPlan, Slot.AFTER_HOURS_NUMBER, plan.map(EmergencyPlan::afterHoursNumber)),
        typed(ofPlan, Slot.HOSPITAL, plan.map(EmergencyPlan::hospital)),
        typed(ofPlan, Slot.TRANSPORT, Optional.empty())); // the plan is in the words of the clinic
  }

  private static String typed(Optional<HomeSheet> last, Slot slot, Optional<String> otherwise) {
    return last.flatMap(sheet -> sheet.filled(slot)).or(() -> otherwise).orElse("");
  }
}
