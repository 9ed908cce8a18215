package rungwise.dosing;

import java.time.Instant;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.dosing.history.Before;
import rungwise.dosing.history.Before.TakenOver;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.Injection;
import rungwise.dosing.history.SimpleCauses;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.history.Stock;
import rungwise.dosing.known.Preparation;
import rungwise.quantities.Volume;

/** A dose that was told from elsewhere. */
final class ToldDose {

  private ToldDose() {}

  /** What was known before, and one more told dose. */
  static Before added(
      Before before,
      long entry,
      Instant at,
      Preparation preparation,
      Volume drawn,
      Grade grade,
      SoftAfter soft,
      int percent) {
    var told =
        new Injection(
            entry,
            at,
            preparation,
            drawn,
            Optional.empty(),
            grade,
            soft,
            SimpleCauses.NOT_ASKED,
            Injection.Setting.HOME,
            Stock.NOT_RECORDED);
    var all =
        Stream.concat(
                before.elsewhere().takenOver().stream(), Stream.of(new TakenOver(told, percent)))
            .toList();
    return before.with(new Before.Elsewhere(all, Optional.empty()), /* isOpenThere= */ false);
  }
}
