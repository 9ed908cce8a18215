package rungwise.clinic.standing;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import rungwise.clinic.course.CourseFact.DoseSigned;
import rungwise.clinic.course.CourseFact.EmergencyReviewed;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFact.VolumeReopened;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.StruckReport;
import rungwise.clinic.course.VialLabels;
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
import rungwise.quantities.Volume;

/** A course's entries as what the engine may look at. */
public final class CourseHistory {

  private final CourseFile file;
  private final Function<Written<InjectionReported>, Stock> stock;
  private final Function<PreparationId, Preparation> preparations;
  private final VialLabels labels;

  /**
   * Of a course.
   *
   * @param stock from which vial a report's dose was drawn
   * @param preparations every version of every preparation that was ever injected
   */
  public CourseHistory(
      CourseFile file,
      Function<Written<InjectionReported>, Stock> stock,
      Function<PreparationId, Preparation> preparations) {
    this.file = file;
    this.stock = stock;
    this.preparations = preparations;
    this.labels = new VialLabels(file, preparations);
  }

  /** What counts of it. */
  public History read() {
    return new History(
        file.reports().stream().map(this::injection).toList(),
        mayHaveBeen(),
        struck(),
        observing(),
        reopenings(),
        reviews(),
        acceptances(),
        Before.NOTHING);
  }

  private List<Injection> mayHaveBeen() {
    return file.reports().stream().flatMap(this::mayHaveBeen).toList();
  }

  private Stream<Injection> mayHaveBeen(Written<InjectionReported> report) {
    return labels.mayHaveBeen(report).stream().map(other -> injection(report, other));
  }

  private List<Struck> struck() {
    return StruckReport.of(file).stream().flatMap(this::struck).toList();
  }

  private Stream<Struck> struck(StruckReport one) {
    long now = one.now().number();
    var read = new Struck(injection(one.said()), now, one.instead().map(this::injection));
    return Stream.concat(
        Stream.of(read),
        labels.mayHaveBeen(one.said()).stream()
            .map(
                other ->
                    new Struck(
                        injection(one.said(), other),
                        now,
                        one.instead().map(report -> injectionOf(report, other)),
                        read.counts())));
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
   * The dose that was signed for it, where one of what was injected had been. A row of before that
   * was kept repeats what was drawn where nothing was ordered.
   */
  private Optional<Volume> ordered(InjectionReported report, Preparation injected) {
    boolean wasOrdered =
        file.inForce(DoseSigned.class).stream()
            .filter(written -> !written.entry().minute().isAfter(report.injectedAt()))
            .anyMatch(written -> written.fact().plan().preparation().equals(injected.id()));
    return report
        .ordered()
        .filter(volume -> wasOrdered && injected.id().equals(report.preparation()));
  }

  /** What a report says, read by one of the labels where it does not say from which vial either. */
  private Injection injectionOf(Written<InjectionReported> report, Preparation other) {
    return report.fact().details().vial().isPresent()
        ? injection(report)
        : injection(report, other);
  }

  private Injection injection(Written<InjectionReported> written) {
    return injection(written, labels.injected(written.fact()));
  }

  private Injection injection(Written<InjectionReported> written, Preparation injected) {
    InjectionReported report = written.fact();
    return new Injection(
        written.entry().number(),
        report.injectedAt(),
        injected,
        report.drawn(),
        ordered(report, injected),
        report.grade(),
        report.soft(),
        report.causes(),
        Injection.Setting.of(report.place(), report.observation().isPresent()),
        stock.apply(written));
  }
}
