package rungwise.clinic.standing;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.function.Function;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFact.VialReceived;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.Vial;
import rungwise.clinic.course.VialLabels;
import rungwise.clinic.keeping.VialLife;
import rungwise.dosing.history.Stock;
import rungwise.dosing.known.Form;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.supply.Freshness;

/**
 * What the doses of one course were drawn from.
 *
 * @param zone where a day begins
 */
record Stocks(
    CourseFile file,
    Protocol protocol,
    ZoneId zone,
    Function<PreparationId, Preparation> preparations) {

  /** The stock of a report's dose. Of a report that names no vial it is not known. */
  Stock of(Written<InjectionReported> report) {
    return report
        .fact()
        .details()
        .vial()
        .flatMap(file::vialOf)
        .map(vial -> of(vial, report.fact().injectedAt(), injected(report)))
        .orElse(Stock.NOT_RECORDED);
  }

  private Preparation injected(Written<InjectionReported> report) {
    return new VialLabels(file, preparations).injected(report.fact());
  }

  /** A vial as stock, as old as it is at an instant. */
  Stock of(Written<VialReceived> vial, Instant at, Preparation preparation) {
    return of(file.rootOf(vial.entry()), vial.fact().vial(), at, preparation);
  }

  /** The same of a label, under the id by which this course knows the vial. */
  Stock of(EntryId id, Vial vial, Instant at, Preparation preparation) {
    return new Stock(id.text(), freshness(id, vial, at, preparation));
  }

  private Freshness freshness(EntryId id, Vial vial, Instant at, Preparation preparation) {
    if (VialLife.of(file, id).mayBeSpoiltAt(at, zone)) {
      return Freshness.OLD;
    }
    return isSingleUse(preparation)
        ? Freshness.FRESH
        : Freshness.of(
            vial.dates().made(),
            LocalDate.ofInstant(at, zone),
            protocol.limits().freshDays().value());
  }

  /** What is dissolved or opened for one injection has no time to grow old. */
  private boolean isSingleUse(Preparation preparation) {
    return !(preparation.form() instanceof Form.Solution);
  }
}
