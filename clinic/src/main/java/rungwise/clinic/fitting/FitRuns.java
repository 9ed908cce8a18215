package rungwise.clinic.fitting;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import rungwise.clinic.forecast.ForecastMove;
import rungwise.clinic.forecast.ForecastMoves;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.Role;
import rungwise.clinic.populations.PopulationChange;
import rungwise.clinic.populations.PopulationSheet;
import rungwise.clinic.populations.SignedPopulation;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.quantities.Reading;

/**
 * The use cases about fits to the clinic's own courses. One fit is there at a time: while it runs
 * no other is started, and the next one takes its place. Nothing of it is kept before it is signed.
 */
public final class FitRuns {

  private static final String NOT_ALLOWED =
      "Only the programme lead can fit the response model to the clinic's courses.";
  private static final String NOT_THERE =
      "There is no fit that could be signed: choose courses and run one.";

  private static final String OTHER =
      "Another fit was run since this page was opened, so nothing was signed. Read the new one.";

  private final FitPorts ports;
  private Optional<FitRun> run = Optional.empty();

  public FitRuns(FitPorts ports) {
    this.ports = ports;
  }

  /** The preparations that a strength may be relative to. */
  public List<Preparation> references() {
    return ports.kept().get();
  }

  /** The courses that a choice leads to, or what is wrong with it. */
  public Reading<ChosenCourses> choose(Account actor, FitDraft draft) {
    if (!actor.may(Role.PROGRAMME_LEAD)) {
      return Reading.refused(NOT_ALLOWED);
    }
    return draft.read(ids(references())).map(this::chosen);
  }

  private ChosenCourses chosen(FitChoice choice) {
    Preparation reference = ports.preparations().apply(choice.reference()).orElseThrow();
    return CourseChooser.choose(ports, choice, reference);
  }

  private static Set<PreparationId> ids(List<Preparation> preparations) {
    return preparations.stream().map(Preparation::id).collect(Collectors.toUnmodifiableSet());
  }

  /** Starts a fit to the courses of a choice as they are now. */
  public Reading<ChosenCourses> start(Account actor, FitDraft draft) {
    Reading<ChosenCourses> chosen = choose(actor, draft);
    return chosen.found().isPresent() ? start(chosen.orThrow()) : chosen;
  }

  private synchronized Reading<ChosenCourses> start(ChosenCourses chosen) {
    if (state() instanceof FitState.Running) {
      return Reading.refused("A fit is running: stop it first, or wait until it has ended.");
    }
    if (!chosen.isEnough()) {
      return Reading.refused(
          "There are " + chosen.courses().count() + " such courses: a fit needs 2 at least.");
    }
    var started = new FitRun(ports.workers().get());
    run = Optional.of(started);
    ports.executor().execute(() -> started.run(chosen));
    return Reading.of(chosen);
  }

  /** What became of the fit that was started last. */
  public synchronized FitState state() {
    return run.map(FitRun::state).orElseGet(FitState.None::new);
  }

  /** Stops the fit that runs; without one nothing happens. */
  public synchronized Reading<FitState> stop(Account actor) {
    if (!actor.may(Role.PROGRAMME_LEAD)) {
      return Reading.refused(NOT_ALLOWED);
    }
    run.ifPresent(FitRun::stop);
    return Reading.of(state());
  }

  /**
   * Signs the fit that has ended for use with preparations.
   *
   * @param fingerprint of the fit that was looked at: see {@link #fingerprint}
   */
  public Reading<SignedPopulation> sign(
      Account actor, String fingerprint, String name, Set<PreparationId> preparations) {
    if (!actor.may(Role.PROGRAMME_LEAD)) {
      return Reading.refused(NOT_ALLOWED);
    }
    return state() instanceof FitState.Done(FitResult result) && result.isOffered()
        ? sign(actor, result, fingerprint, new SignAs(name, preparations))
        : Reading.refused(NOT_THERE);
  }

  private record SignAs(String name, Set<PreparationId> preparations) {}

  private Reading<SignedPopulation> sign(
      Account actor, FitResult result, String fingerprint, SignAs as) {
    return fingerprint(result).equals(fingerprint)
        ? ports
            .populations()
            .signFitted(actor, as.name(), ports.writer().write(result), as.preparations())
        : Reading.refused(OTHER);
  }

  /** Tells a fit from any other: what is signed must be what was looked at. */
  public String fingerprint(FitResult result) {
    try {
      byte[] document = ports.writer().write(result).getBytes(StandardCharsets.UTF_8);
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(document));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("bug: every Java has SHA-256", e);
    }
  }

  /** The fit as it is looked at before it is signed; empty where it is not offered. */
  public Optional<PopulationSheet> sheet(FitResult result) {
    return result.isOffered()
        ? Optional.of(ports.populations().look(ports.writer().write(result)).orThrow())
        : Optional.empty();
  }

  /** What changes against the population in use; empty where there is none to compare with. */
  public Optional<PopulationChange> change(FitResult result) {
    return result
        .model()
        .flatMap(
            model ->
                ports
                    .populations()
                    .inUseFor(model.reference().id())
                    .flatMap(
                        inUse ->
                            PopulationChange.of(inUse, model.population(), model.reference())));
  }

  /** How forecasts of the courses there are would move. */
  public List<ForecastMove> moves(FitResult result) {
    return result
        .model()
        .map(model -> new ForecastMoves(ports.populations()).of(ports.courses().get(), model))
        .orElse(List.of());
  }
}
