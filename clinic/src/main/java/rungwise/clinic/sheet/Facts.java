package rungwise.clinic.sheet;

import java.util.List;
import rungwise.clinic.ClinicTime;
import rungwise.dosing.history.Fact;

/** What a rule read, in words. */
final class Facts {

  private Facts() {}

  static List<String> words(List<Fact> facts, ClinicTime time) {
    return facts.stream().map(fact -> words(fact, time)).toList();
  }

  private static String words(Fact fact, ClinicTime time) {
    return switch (fact) {
      case Fact.Said said -> said.what() + ": " + said.value();
      case Fact.Happened happened -> happened.what() + ": " + time.words(happened.at());
    };
  }
}
