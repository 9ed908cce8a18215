package rungwise.drawing;

import java.util.List;
import java.util.Optional;

/**
 * Where around the penis the last injections were given, as it is to be drawn: hours of a clock on
 * its cross-section, 12 on its upper side.
 *
 * <p>Places: 10 and 2 o'clock, away from the urethra at 6 (Albaugh 2006), and 9 and 3 (common
 * practice, no source); that nerves and vessels run at 12 is from memory.
 *
 * @param view from which side the hours are counted
 * @param places newest first, at most ten; each hour lies on the side that is named
 */
public record InjectionClock(View view, List<Place> places) {

  /** One of his sides, as he would name it. */
  public enum Side {
    HIS_LEFT("his left"),
    HIS_RIGHT("his right");

    private final String words;

    Side(String words) {
      this.words = words;
    }

    String words() {
      return words;
    }

    Side other() {
      return this == HIS_LEFT ? HIS_RIGHT : HIS_LEFT;
    }
  }

  /** From where the clock is seen. The same place has another hour in the other view. */
  public enum View {
    /** By someone who faces him: his right is on the left of the picture. */
    FACING_HIM("Seen by someone who faces him", Side.HIS_RIGHT),
    /** By himself, who looks down: his left is on the left of the picture. */
    HIS_OWN("Seen by himself, looking down", Side.HIS_LEFT);

    private final String words;
    private final Side left;

    View(String words, Side left) {
      this.words = words;
      this.left = left;
    }

    String words() {
      return words;
    }

    /** His side that is on the left of the picture. */
    Side left() {
      return left;
    }
  }

  /**
   * One place.
   *
   * @param hour 1 to 12
   */
  public record Place(Side side, int hour) {
    public Place {
      if (hour < 1 || hour > NOON) {
        throw new IllegalArgumentException("bug: a clock without " + hour + " o'clock");
      }
    }

    /** "his right, 10 o'clock". */
    String words() {
      return side.words() + ", " + hour + " o'clock";
    }

    /** Whether it lies on the upper outer sides. */
    boolean isUsual() {
      return LEFT_HOURS.contains(hour) || RIGHT_HOURS.contains(hour);
    }
  }

  static final int NOON = 12;
  static final int BOTTOM = 6;
  static final int NEXT_ON_THE_LEFT = 10;
  static final int NEXT_ON_THE_RIGHT = 2;
  static final List<Integer> LEFT_HOURS = List.of(9, 10);
  static final List<Integer> RIGHT_HOURS = List.of(2, 3);

  private static final int MOST_PLACES = 10;

  public InjectionClock {
    places = List.copyOf(places);
    if (places.size() > MOST_PLACES) {
      throw new IllegalArgumentException("bug: " + places.size() + " places on one clock");
    }
    for (Place place : places) {
      boolean isOnTheLeft = place.side() == view.left();
      boolean isHourOnTheLeft = place.hour() > BOTTOM && place.hour() < NOON;
      boolean isInTheMiddle = place.hour() == BOTTOM || place.hour() == NOON;
      if (!isInTheMiddle && isOnTheLeft != isHourOnTheLeft) {
        throw new IllegalArgumentException(
            "bug: " + place.words() + " is on the other side, " + view.words());
      }
    }
  }

  Optional<Place> last() {
    return places.stream().findFirst();
  }

  /** Where next: the side that was not used last; either side if none was used. */
  List<Place> next() {
    Place left = new Place(view.left(), NEXT_ON_THE_LEFT);
    Place right = new Place(view.left().other(), NEXT_ON_THE_RIGHT);
    return last()
        .map(last -> List.of(last.side() == view.left() ? right : left))
        .orElse(List.of(left, right));
  }

  /** "Last: his right, 10 o'clock." */
  String lastWords() {
    return last()
        .map(last -> "Last: " + last.words() + (last.isUsual() ? "." : ", not a place to inject."))
        .orElse("No place is on record.");
  }

  /** "Next: his left, 2 o'clock." */
  String nextWords() {
    List<Place> next = next();
    return next.size() == 1
        ? "Next: " + next.getFirst().words() + "."
        : "Next: " + next.getFirst().words() + ", or " + next.getLast().words() + ".";
  }
}
