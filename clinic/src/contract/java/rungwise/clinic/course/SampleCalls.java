package rungwise.clinic.course;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import rungwise.clinic.coded.HandedOnFor;
import rungwise.clinic.course.CourseFact.CallWritten;
import rungwise.clinic.people.AccountId;
import rungwise.dosing.urgent.CallStep;
import rungwise.dosing.urgent.Speaker;

/** Everything that can be written in a call, with all that it may hold. */
final class SampleCalls {

  private static final Instant AT = Instant.parse("2026-03-02T20:15:00.123Z");

  private SampleCalls() {}

  static List<CourseFact> all(EntryId call) {
    var words = new ArrayList<CallWritten.Word>();
    words.add(new CallWritten.Opened());
    for (Speaker speaker : Speaker.values()) {
      words.add(new CallWritten.Began(call, Optional.of(AT), speaker));
      words.add(new CallWritten.Began(call, Optional.empty(), speaker));
      words.add(new CallWritten.Firm(call, AT, speaker));
      words.add(new CallWritten.Soft(call, AT, speaker));
    }
    for (CallStep step : CallStep.values()) {
      words.add(new CallWritten.Done(call, step, AT, Speaker.CLINICIAN));
    }
    for (HandedOnFor why : HandedOnFor.values()) {
      words.add(new CallWritten.HandedOn(call, AccountId.of(new UUID(7, 7)), why));
    }
    words.add(new CallWritten.Struck(call, call));
    words.add(new CallWritten.HandedTo(call, "Sample Hospital", "\"Dr\"; 'X' \u2265", AT));
    return words.stream().<CourseFact>map(CallWritten::new).toList();
  }
}
