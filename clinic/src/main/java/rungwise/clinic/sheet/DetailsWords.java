package rungwise.clinic.sheet;

import java.util.ArrayList;
import java.util.stream.Collectors;
import rungwise.clinic.course.Cause;
import rungwise.clinic.course.CourseFact.InjectionReported;
import rungwise.clinic.course.InjectionDetails;
import rungwise.dosing.history.Spot;
import rungwise.dosing.screening.Answer;

/** What else a report said, in a line. */
final class DetailsWords {

  private DetailsWords() {}

  static String of(InjectionReported report) {
    InjectionDetails details = report.details();
    var words = new ArrayList<String>();
    words.add(placeWords(report));
    details.spot().ifPresent(spot -> words.add(placeWords(spot)));
    details.onset().ifPresent(onset -> words.add("first firm after " + onset));
    details.usable().ifPresent(usable -> words.add("usable for " + usable));
    details.pain().ifPresent(pain -> words.add("pain " + pain + " of 10"));
    if (details.bruise() == Answer.YES) {
      words.add("a bruise");
    }
    if (details.aroused() == Answer.NO) {
      words.add("not aroused");
    }
    if (!details.causes().isEmpty()) {
      words.add(details.causes().stream().map(Cause::words).collect(Collectors.joining(", ")));
    }
    if (!details.otherTablets().isEmpty()) {
      words.add("also took: " + details.otherTablets());
    }
    if (details.secondDose() == Answer.YES) {
      words.add("a second dose that day");
    }
    return String.join("; ", words);
  }

  private static String placeWords(InjectionReported report) {
    boolean watched = report.observation().isPresent();
    String doubt =
        switch (report.place()) {
          case CLINIC -> watched ? "" : ", as told: nobody there wrote it down";
          case HOME -> watched ? ", as told: a visit says that it was watched in the clinic" : "";
        };
    return report.place().words() + doubt;
  }

  private static String placeWords(Spot spot) {
    String wrong = spot.standing().words();
    return spot.words() + (wrong.isEmpty() ? "" : ", " + wrong);
  }
}
