package rungwise.clinic.course;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.coded.AfterEnd;
import rungwise.clinic.coded.EndReason;
import rungwise.clinic.coded.VialsLeft;
import rungwise.clinic.life.LifeWord;

/** Everything that can be written of whether a course runs. */
final class SampleLife {

  private SampleLife() {}

  static List<CourseFact> all() {
    var words = new ArrayList<LifeWord>();
    words.add(new LifeWord.Paused());
    words.add(new LifeWord.Resumed());
    words.add(new LifeWord.Reopened());
    for (EndReason why : EndReason.values()) {
      for (VialsLeft vials : VialsLeft.values()) {
        words.add(
            new LifeWord.Ended(
                why, Optional.of(LocalDate.of(2026, 3, 1)), vials, AfterEnd.NOTHING, ""));
      }
    }
    for (AfterEnd after : AfterEnd.values()) {
      words.add(
          new LifeWord.Ended(
              EndReason.OTHER, Optional.empty(), VialsLeft.NONE_LEFT, after, "\"Dr\"; 'X' \u2265"));
    }
    return words.stream().<CourseFact>map(CourseFact.LifeWritten::new).toList();
  }
}
