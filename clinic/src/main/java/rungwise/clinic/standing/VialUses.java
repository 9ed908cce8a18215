package rungwise.clinic.standing;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.CourseFact.ObservationStarted;
import rungwise.clinic.course.CourseFact.VialReceived;
import rungwise.clinic.course.CourseFile;
import rungwise.clinic.course.CourseFile.Written;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.course.Vial;
import rungwise.clinic.course.VialLabels;
import rungwise.clinic.keeping.VialLife;
import rungwise.dosing.known.Form;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.supply.InUseRule;
import rungwise.dosing.supply.Opening;
import rungwise.dosing.supply.VialDates;

/**
 * Until when the vials of one course may be used. A vial from which a dose was drawn is open,
 * whether or not anybody wrote down that it was opened.
 *
 * @param zone where a day begins
 */
record VialUses(
    CourseFile file,
    Function<PreparationId, Preparation> preparations,
    Function<PreparationId, InUseRule> rules,
    ZoneId zone) {

  /** What ends a vial, by its label and by the preparation that its label says. */
  VialUse of(Written<VialReceived> vial) {
    EntryId root = file.rootOf(vial.entry());
    VialUse use = of(vial.fact().vial(), firstDrawn(root));
    return new VialUse(use.dates(), use.end(), VialLife.of(file, root));
  }

  /**
   * The same of a label.
   *
   * @param drawn when a dose was drawn from it first, if one was
   */
  VialUse of(Vial vial, Optional<Instant> drawn) {
    VialDates dates = vial.dates();
    return new VialLabels(file, preparations)
        .planned(vial.composition())
        .map(preparation -> use(drawn, dates, preparation))
        .orElseGet(() -> use(dates, new InUseRule.NotStated(), new Form.Solution()));
  }

  private VialUse use(VialDates dates, InUseRule rule, Form form) {
    return new VialUse(dates, dates.end(rule, form, zone), VialLife.NOTHING);
  }

  private VialUse use(Optional<Instant> drawn, VialDates dates, Preparation preparation) {
    InUseRule rule = rules.apply(preparation.id());
    VialDates known =
        drawn
            .filter(at -> isForManyDoses(preparation, rule))
            .map(at -> dates.openBy(Opening.byUseAt(at, zone), zone))
            .orElse(dates);
    return use(known, rule, preparation.form());
  }

  /** Whether one vial of it serves for more than one dose. */
  private static boolean isForManyDoses(Preparation preparation, InUseRule rule) {
    return preparation.form() instanceof Form.Solution && !(rule instanceof InUseRule.SingleUse);
  }

  private Optional<Instant> firstDrawn(EntryId vial) {
    Stream<Instant> reported =
        file.reports().stream()
            .map(Written::fact)
            .filter(report -> isOf(report.details().vial(), vial))
            .map(InjectionReported::injectedAt);
    Stream<Instant> observed =
        file.observing().stream()
            .map(Written::fact)
            .filter(started -> isOf(started.vial(), vial))
            .map(ObservationStarted::injectedAt);
    return Stream.concat(reported, observed).min(Instant::compareTo);
  }

  private boolean isOf(Optional<EntryId> one, EntryId vial) {
    return one.map(entry -> file.rootOf(file.entry(entry))).equals(Optional.of(vial));
  }
}
