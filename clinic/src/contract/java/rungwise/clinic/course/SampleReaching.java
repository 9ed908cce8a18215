package rungwise.clinic.course;

import java.time.Instant;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.reach.Hours;
import rungwise.clinic.reach.ReachWord;
import rungwise.clinic.reach.Telephone;
import rungwise.clinic.reach.Wishes;

/** Everything that can be written of how a man is reached. */
final class SampleReaching {

  private static final Instant AT = Instant.parse("2026-03-02T20:15:00.123Z");

  private SampleReaching() {}

  static List<CourseFact> all() {
    var words = new ArrayList<ReachWord>();
    for (Telephone.Whose whose : Telephone.Whose.values()) {
      for (Telephone.Message message : Telephone.Message.values()) {
        words.add(number(whose, Optional.empty(), message));
        words.add(number(whose, hours("18:00", "00:00"), message));
        words.add(number(whose, hours("00:00", "23:59"), message));
      }
    }
    words.add(new ReachWord.NumberGone());
    for (Wishes.Partner partner : Wishes.Partner.values()) {
      for (Wishes.Post post : Wishes.Post.values()) {
        for (Wishes.Interpreter interpreter : Wishes.Interpreter.values()) {
          words.add(new ReachWord.WishesKept(new Wishes(partner, post, "", interpreter)));
          words.add(new ReachWord.WishesKept(new Wishes(partner, post, "Farsi", interpreter)));
        }
      }
    }
    words.add(new ReachWord.NotReached("+44 7700 900123", AT));
    words.add(new ReachWord.Reached("0161 496 0000 ext. 12"));
    return words.stream().<CourseFact>map(CourseFact.ReachWritten::new).toList();
  }

  private static Optional<Hours> hours(String from, String until) {
    return Optional.of(new Hours(LocalTime.parse(from), LocalTime.parse(until)));
  }

  private static ReachWord number(
      Telephone.Whose whose, Optional<Hours> hours, Telephone.Message message) {
    return new ReachWord.NumberKept(
        new Telephone("+44 7700 900123 (\"desk\")", whose, hours, message));
  }
}
