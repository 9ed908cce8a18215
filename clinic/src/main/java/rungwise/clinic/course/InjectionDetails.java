package rungwise.clinic.course;

import java.util.Collections;
import java.util.EnumSet;
import java.util.Optional;
import java.util.Set;
import rungwise.dosing.history.Spot;
import rungwise.dosing.screening.Answer;
import rungwise.quantities.TimeSpan;

/**
 * What else a report may say. Nothing of it is asked for; what was not asked is empty or not known.
 *
 * @param onset from the injection to the first firmness
 * @param usable how long it was usable
 * @param pain 0 none to 10 the worst
 * @param causes what went wrong
 * @param vial the entry of the vial it was drawn from, if another than the one in use was named
 * @param otherTablets tablets or drugs taken that day, in his words; may be empty
 * @param secondDose whether he injected once more that day
 */
public record InjectionDetails(
    Optional<TimeSpan> onset,
    Optional<TimeSpan> usable,
    Optional<Spot> spot,
    Optional<Integer> pain,
    Answer bruise,
    Answer aroused,
    Set<Cause> causes,
    Optional<EntryId> vial,
    String otherTablets,
    Answer secondDose) {

  public static final int MOST_PAIN = 10;

  public static final InjectionDetails NONE =
      new InjectionDetails(
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Optional.empty(),
          Answer.NOT_KNOWN,
          Answer.NOT_KNOWN,
          Set.of(),
          Optional.empty(),
          "",
          Answer.NOT_KNOWN);

  public InjectionDetails {
    var ordered = EnumSet.noneOf(Cause.class);
    ordered.addAll(causes);
    causes = Collections.unmodifiableSet(ordered);
    if (pain.filter(one -> one < 0 || one > MOST_PAIN).isPresent()) {
      throw new IllegalArgumentException("bug: pain of " + pain);
    }
  }
}
