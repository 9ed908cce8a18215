package rungwise.clinic.dose;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.known.Dose;
import rungwise.dosing.syringe.Barrel;
import rungwise.quantities.Reading;

/** What there is to say to a question about a dose on a syringe. */
public sealed interface DoseReply {

  /** It can be drawn. */
  record Drawable(DoseAnswer answer) implements DoseReply {}

  /**
   * No line of the syringe stands there.
   *
   * @param sentence what was asked for and which lines there are
   * @param below the dose at the next lower line, if a signature could ever open it
   * @param others the syringes that have a line there
   */
  record NoLine(String sentence, Optional<Dose> below, List<Barrel> others) implements DoseReply {
    public NoLine {
      others = List.copyOf(others);
    }

    @Override
    public String toString() {
      String next =
          below.map(dose -> " The line below is " + dose.volumeAndMark() + ".").orElse("");
      String elsewhere =
          others.stream()
              .map(one -> one.token() + " (" + one + ")")
              .collect(Collectors.joining(", "));
      return sentence
          + next
          + (others.isEmpty()
              ? " No syringe known here has a line there: ask for another dose or preparation."
              : " A line there is on: " + elsewhere + ".");
    }
  }

  /**
   * There is a line, and no signature opens it.
   *
   * @param verdicts the hard stops
   */
  record Forbidden(Dose dose, List<Verdict> verdicts) implements DoseReply {
    public Forbidden {
      verdicts = List.copyOf(verdicts);
    }
  }

  /** It was not asked in a way that fits the preparation or the syringe. */
  record Unfit(String fault) implements DoseReply {}

  /** The answer, or in words why there is none. */
  default Reading<DoseAnswer> reading() {
    return switch (this) {
      case Drawable drawable -> Reading.of(drawable.answer());
      case NoLine none -> Reading.refused(none.toString());
      case Forbidden forbidden ->
          new Reading.Refused<>(
              forbidden.verdicts().stream()
                  .map(
                      verdict ->
                          forbidden.dose().volumeAndMark()
                              + " is not a dose to order. "
                              + DoseAnswer.words(verdict))
                  .toList());
      case Unfit unfit -> Reading.refused(unfit.fault());
    };
  }
}
