package rungwise.checks.topics;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Optional;
import rungwise.dosing.known.DurationScheme;
import rungwise.quantities.TimeSpan;

/** What published schemes call a long erection. */
final class DurationTopics {

  private static final BigDecimal MINUTES_IN_AN_HOUR = BigDecimal.valueOf(60);

  private DurationTopics() {}

  static void addTo(TopicTable table) {
    table
        .on("duration class, US label trials", DurationTopics::name)
        .on("duration class, guideline", DurationTopics::name);
  }

  private static Answer name(Input input) {
    DurationScheme scheme = input.one("scheme", DurationTopics::schemeOf);
    BigDecimal minutes = input.decimal("duration_h").multiply(MINUTES_IN_AN_HOUR);
    TimeSpan duration =
        TimeSpan.parseMinutes(minutes.stripTrailingZeros().toPlainString()).orThrow();
    return Answer.words(scheme.nameOf(duration).name().toLowerCase(Locale.ROOT));
  }

  private static Optional<DurationScheme> schemeOf(String token) {
    return switch (token) {
      case "US_label" -> Optional.of(DurationScheme.US_LABEL_TRIALS);
      case "EAU" -> Optional.of(DurationScheme.EAU);
      default -> Optional.empty();
    };
  }
}
