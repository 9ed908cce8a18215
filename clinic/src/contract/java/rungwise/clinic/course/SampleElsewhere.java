package rungwise.clinic.course;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rungwise.clinic.coded.ToldBy;
import rungwise.clinic.elsewhere.ElsewhereWord;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.known.PreparationId;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** Everything that can be written of a man who is taken over. */
final class SampleElsewhere {

  private static final PreparationId OF = new PreparationId("alprostadil-20");

  private SampleElsewhere() {}

  static List<CourseFact> all() {
    var words = new ArrayList<ElsewhereWord>();
    words.add(new ElsewhereWord.Opened(OF, Volume.ofMicrolitres(1)));
    String other = "11111111-1111-4111-8111-111111111111";
    words.add(new ElsewhereWord.Joined(other, /* leads= */ true));
    words.add(new ElsewhereWord.Joined(other, /* leads= */ false));
    words.add(new ElsewhereWord.Parted(other));
    TimeSpan hour = TimeSpan.ofHours(1);
    for (ToldBy by : ToldBy.values()) {
      words.add(told(Grade.NONE, new SoftAfter.NotKnown(), by, Optional.empty()));
    }
    for (Grade grade : Grade.values()) {
      words.add(told(grade, new SoftAfter.Exactly(hour), ToldBy.LETTER, Optional.of("u100-1")));
      words.add(told(grade, new SoftAfter.AtLeast(hour), ToldBy.LETTER, Optional.of("ml-1")));
      words.add(
          told(
              grade,
              new SoftAfter.Between(TimeSpan.ofMinutes(0), hour),
              ToldBy.LETTER,
              Optional.empty()));
    }
    return words.stream().<CourseFact>map(CourseFact.ElsewhereWritten::new).toList();
  }

  private static ElsewhereWord told(
      Grade grade, SoftAfter soft, ToldBy by, Optional<String> barrel) {
    return new ElsewhereWord.Told(
        OF,
        Volume.ofMicrolitres(375),
        barrel,
        "\"Dr\"; 'X' \u2265",
        barrel.map(any -> LocalDate.of(2026, 3, 1)),
        grade,
        soft,
        by);
  }
}
