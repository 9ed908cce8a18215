package rungwise.clinic.handout;

import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.course.CoursePorts;
import rungwise.clinic.course.NewEntry;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.protocols.LabelReader;
import rungwise.clinic.standing.CourseReader;
import rungwise.clinic.standing.CourseState;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.clinic.words.HomeSheet;
import rungwise.clinic.words.Language;
import rungwise.clinic.words.Paper;
import rungwise.dosing.decision.KeptAdvice;
import rungwise.dosing.history.Place;
import rungwise.dosing.known.Dose;
import rungwise.dosing.known.Preparation;
import rungwise.quantities.Volume;

/** Sheets of courses that were written by the use cases, of any dose that can be signed. */
public final class SheetWorld {

  private final TitrationWorld world;
  private final CoursePorts stored;
  private final SheetPress press;

  public SheetWorld(CoursePorts stored, SheetPress press) {
    this.world = new TitrationWorld(stored, new LabelReader());
    this.stored = stored;
    this.press = press;
  }

  /** A sheet with the dose that it was made of. */
  public record Made(HomeSheet sheet, Dose dose, Optional<Dose> next) {}

  /** What somebody types for a man. */
  public record Typed(String hospital, String transport) {
    public static final Typed PLAIN = new Typed("North Hospital", "by taxi");
  }

  public CourseId course(Preparation preparation, String barrel) {
    CourseId id = world.openWith(preparation, barrel);
    world.makeReady(id);
    return id;
  }

  /** Signs a volume for home and makes its sheet. */
  public Made sign(
      CourseId id,
      Volume volume,
      Optional<Volume> next,
      Language language,
      Paper paper,
      Keeping keeping,
      Typed typed) {
    CourseFile file = world.file(id);
    stored.append(NewEntry.of(id, signed(file, volume, next), AccountId.PROGRAM, world.now()));
    CourseState state = new CourseReader(world.ports()).state(world.file(id), world.now());
    return made(state, language, paper, keeping, typed);
  }

  private DoseSigned signed(CourseFile file, Volume volume, Optional<Volume> next) {
    return new DoseSigned(
        file.plan(),
        volume,
        Place.HOME,
        next.map(more -> List.of(volume, more)).orElse(List.of(volume)),
        next.orElse(volume),
        Set.of(),
        Optional.empty(),
        file.basis(),
        world.now(),
        new KeptAdvice("signed by a test", Optional.empty()),
        next,
        Optional.empty());
  }

  private Made made(
      CourseState state, Language language, Paper paper, Keeping keeping, Typed typed) {
    CourseFile file = state.file();
    var reader = new CourseReader(world.ports());
    Preparation preparation = state.question().preparation();
    var writing =
        new SheetWriting(
            state,
            file.signedDose().orElseThrow(),
            new SheetVial(
                Objects.requireNonNull(
                    reader.vialUses(file).get(file.vial().orElseThrow().entry().id())),
                world.ports().inUse().apply(preparation.id()),
                preparation.form(),
                keeping),
            new SheetWriting.Said(
                language, paper, "555 0100", "555 0101", typed.hospital(), typed.transport()),
            /* isDraft= */ true,
            press,
            world.ports().time());
    HomeSheet sheet =
        writing.sheet(new UUID(9, file.basis()).toString(), "https://clinic.example/sheet");
    return new Made(
        sheet,
        writing.dose(),
        file.signedDose().orElseThrow().fact().nextStep().map(state.question().ladder()::dose));
  }
}
