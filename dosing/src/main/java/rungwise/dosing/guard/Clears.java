package rungwise.dosing.guard;

import java.time.Instant;

/** What makes a verdict go away. */
public sealed interface Clears {

  /** It clears by itself at an instant. */
  record At(Instant instant) implements Clears {
    @Override
    public String toString() {
      return "at " + instant;
    }
  }

  /** Somebody must do something. */
  record When(String act) implements Clears {
    @Override
    public String toString() {
      return "when " + act;
    }
  }

  /** Nothing clears it for this dose. */
  record Never() implements Clears {
    @Override
    public String toString() {
      return "never";
    }
  }
}
