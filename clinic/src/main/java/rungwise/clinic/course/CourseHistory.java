package rungwise.clinic.course;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFact.EmergencyReviewed;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFact.VolumeReopened;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.dosing.history.Acceptance;
import rungwise.dosing.history.Before;
import rungwise.dosing.history.EmergencyReview;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.Observing;
import rungwise.dosing.history.Reopening;
import rungwise.dosing.history.Stock;
import rungwise.dosing.history.Struck;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;

/**
 * A course's entries as what the engine may look at.
 *
 * @param stock from which vial a report's dose was drawn
 * @param preparations every version of every preparation that was ever injected
 */
public record CourseHistory(
    CourseFile file,
    Function<Written<InjectionReported>, Stock> stock,
    Function<PreparationId, Preparation> preparations) {

  /** What counts of it. */
  public History read() {
    return new History(
        file.reports().stream().map(this::injection).toList(),
        struck(),
        observing(),
        reopenings(),
        reviews(),
        acceptances(),
        Before.NOTHING);
  }

  private List<Struck> struck() {
    return StruckReport.of(file).stream()
        .map(
            one ->
                new Struck(
                    injection(one.said()), one.now().number(), one.instead().map(this::injection)))
        .toList();
  }

  private List<Observing> observing() {
    return file.observing().stream()
        .map(
            written ->
                new Observing(
                    written.entry().number(), written.fact().injectedAt(), written.fact().drawn()))
        .toList();
  }

  private List<Acceptance> acceptances() {
    return file.inForce(DoseSigned.class).stream()
        .flatMap(written -> acceptance(written).stream())
        .toList();
  }

  private Optional<Acceptance> acceptance(Written<DoseSigned> written) {
    DoseSigned signed = written.fact();
    return signed
        .accepted()
        .map(
            upTo ->
                new Acceptance(
                    written.entry().number(),
                    preparations.apply(signed.plan().preparation()),
                    signed.volume(),
                    upTo));
  }

  private List<Reopening> reopenings() {
    return file.inForce(VolumeReopened.class).stream()
        .map(
            written ->
                new Reopening(
                    written.entry().number(), written.fact().preparation(), written.fact().upTo()))
        .toList();
  }

  private List<EmergencyReview> reviews() {
    return file.inForce(EmergencyReviewed.class).stream()
        .map(
            written -> new EmergencyReview(written.entry().number(), written.fact().softWhenSeen()))
        .toList();
  }

  /**
   * Whether a dose of it had been signed. A row of before that was kept repeats what was drawn
   * where nothing was ordered.
   */
  private boolean wasOrdered(InjectionReported report) {
    return file.inForce(DoseSigned.class).stream()
        .filter(written -> !written.entry().minute().isAfter(report.injectedAt()))
        .anyMatch(written -> written.fact().plan().preparation().equals(report.preparation()));
  }

  private Injection injection(Written<InjectionReported> written) {
    InjectionReported report = written.fact();
    return new Injection(
        written.entry().number(),
        report.injectedAt(),
        preparations.apply(report.preparation()),
        report.drawn(),
        report.ordered().filter(volume -> wasOrdered(report)),
        report.grade(),
        report.soft(),
        report.causes(),
        Injection.Setting.of(report.place(), report.observation().isPresent()),
        stock.apply(written));
  }
}
