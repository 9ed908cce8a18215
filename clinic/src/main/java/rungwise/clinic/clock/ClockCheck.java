package rungwise.clinic.clock;

/** Port: what is believed of the clock now. */
@FunctionalInterface
public interface ClockCheck {

  /** For a clock that is given and not doubted: stories, files that are carried, tests. */
  ClockCheck GIVEN = ClockBelief::given;

  ClockBelief belief();
}
