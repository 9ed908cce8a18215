package rungwise.clinic.sheet;

import java.time.Instant;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.course.CourseFact.CallWritten;
import rungwise.dosing.urgent.Speaker;

/** What was written in a call, in words. */
final class CallWords {

  private CallWords() {}

  static String of(CallWritten.Word word, ClinicTime time) {
    return switch (word) {
      case CallWritten.Opened opened -> "Call about a long erection opened";
      case CallWritten.Began began ->
          began
              .at()
              .map(at -> "It began at " + time.words(at) + by(began.by()))
              .orElse("Nobody can say when it began" + by(began.by()));
      case CallWritten.Struck struck -> "A start that was said is struck; it stays to be read";
      case CallWritten.Firm firm -> "Still firm at " + said(firm.at(), firm.by(), time);
      case CallWritten.Done done ->
          "Done at " + said(done.at(), done.by(), time) + ": " + done.step().words();
      case CallWritten.HandedOn on -> "The call is handed on, because " + on.why().words();
      case CallWritten.Soft soft ->
          "Call closed: fully soft at " + said(soft.at(), soft.by(), time);
      case CallWritten.HandedTo to ->
          "Call closed: handed to " + to.place() + ", " + to.whom() + ", at " + time.words(to.at());
    };
  }

  private static String said(Instant at, Speaker by, ClinicTime time) {
    return time.words(at) + by(by);
  }

  private static String by(Speaker speaker) {
    return ", said by " + speaker.words();
  }
}
