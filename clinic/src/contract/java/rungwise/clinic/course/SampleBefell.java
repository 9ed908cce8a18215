package rungwise.clinic.course;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.befell.VialWord;

/** Everything that can be written of what befell a vial. */
final class SampleBefell {

  private SampleBefell() {}

  static List<CourseFact> all(EntryId vial) {
    LocalDate day = LocalDate.of(2026, 3, 1);
    var words = new ArrayList<VialWord>();
    words.add(new VialWord.Warm(day, Optional.empty(), Optional.empty(), Optional.empty()));
    words.add(new VialWord.Warm(day, Optional.of(-1), Optional.of(0), Optional.of(9999)));
    words.add(new VialWord.Warm(day, Optional.of(25), Optional.of(5), Optional.empty()));
    for (VialWord.Place place : VialWord.Place.values()) {
      words.add(new VialWord.Put(day, place));
    }
    for (VialWord.How how : VialWord.How.values()) {
      words.add(new VialWord.Gone(day, how));
    }
    words.add(new VialWord.Judged());
    return words.stream().<CourseFact>map(word -> new CourseFact.VialBefell(vial, word)).toList();
  }
}
