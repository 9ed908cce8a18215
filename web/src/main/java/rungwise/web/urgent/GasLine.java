package rungwise.web.urgent;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import rungwise.dosing.urgent.rescue.Asked;
import rungwise.dosing.urgent.rescue.GasReading;

/**
 * What a blood gas says, as shown.
 *
 * @param headline in a few words
 * @param isGrave whether it is to be treated as ischaemic
 * @param sentence what that rests on, and what to do
 */
public record GasLine(String headline, boolean isGrave, String sentence) {

  private static final List<String> HOW_MANY = List.of("None", "One", "Two");

  static Optional<GasLine> of(GasReading reading) {
    return switch (reading) {
      case GasReading.Ischaemic all ->
          Optional.of(
              new GasLine(
                  "Ischaemic",
                  /* isGrave= */ true,
                  "All three criteria are met. It is an emergency."));
      case GasReading.NonIschaemic all ->
          Optional.of(
              new GasLine(
                  "Non-ischaemic by this sample",
                  /* isGrave= */ false,
                  "All three criteria of it are met. After an injection into the penis that is"
                      + " unusual: was the sample from the corpus cavernosum? The treating"
                      + " physician decides."));
      case GasReading.Indeterminate some -> Optional.of(indeterminate(some));
      case GasReading.Refused refused -> Optional.empty();
    };
  }

  private static GasLine indeterminate(GasReading.Indeterminate some) {
    String met =
        HOW_MANY.get(some.ischaemic().size())
            + " of three criteria of an ischaemic one "
            + (some.ischaemic().size() == 2 ? "are" : "is")
            + " met"
            + named(some.ischaemic())
            + ".";
    String inconsistent =
        some.isInconsistent()
            ? " It does not fit together, because "
                + listed(some.nonIschaemic())
                + " would be that of flowing blood: take another sample, and do not wait for it."
            : "";
    return new GasLine(
        "Indeterminate: treat as ischaemic until that is excluded",
        /* isGrave= */ true,
        met + inconsistent);
  }

  private static String named(List<Asked> criteria) {
    return criteria.isEmpty() ? "" : ": " + listed(criteria);
  }

  private static String listed(List<Asked> criteria) {
    return criteria.stream().map(Asked::words).collect(Collectors.joining(" and "));
  }
}
