package rungwise.clinic.sheet;

import java.util.List;
import java.util.Optional;
import rungwise.clinic.ClinicTime;
import rungwise.dosing.history.Fact;

/** What a rule read, in words. */
final class Facts {

  private Facts() {}

  static List<String> words(List<Fact> facts, ClinicTime time) {
    return facts.stream().flatMap(fact -> words(fact, time).stream()).toList();
  }

  private static Optional<String> words(Fact fact, ClinicTime time) {
    return switch (fact) {
      case Fact.Said said -> Optional.of(said.what() + ": " + said.value());
      case Fact.Happened happened ->
          Optional.of(happened.what() + ": " + time.words(happened.at()));
      case Fact.Which which -> Optional.empty();
    };
  }
}
