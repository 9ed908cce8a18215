package rungwise.checks.topics;

import java.math.BigDecimal;
import java.util.Optional;
import rungwise.checks.reading.Tally;

/** How easily a text is read: the formulas by which texts for patients are measured. */
final class ReadingTopics {

  /** A word has two syllables at most unless the row counts its long ones. */
  private static final int ANY = 1;

  private ReadingTopics() {}

  static void addTo(TopicTable table) {
    table
        .on("D.readability", "flesch_kincaid_grade", input -> of(words(input).fleschKincaidGrade()))
        .on("D.readability", "flesch_reading_ease", input -> of(words(input).fleschReadingEase()))
        .on("D.readability", "smog", input -> of(smog(input).smog()))
        .on("D.readability", "smog_simple", input -> of(eachSentence(input).smogSimple()))
        .on("D.readability", "target_grade_max", ReadingTopics::target);
  }

  private static Answer of(double score) {
    return new Answer.OneNumber(BigDecimal.valueOf(score));
  }

  private static Tally words(Input input) {
    return new Tally(
        whole(input, "sentences"), whole(input, "words"), whole(input, "syllables"), 0);
  }

  private static Tally smog(Input input) {
    return new Tally(whole(input, "sentences"), ANY, ANY, whole(input, "polysyllables"));
  }

  private static Tally eachSentence(Input input) {
    return new Tally(1, ANY, ANY, whole(input, "polysyllables_per_sentence"));
  }

  private static Answer target(Input input) {
    input.one(
        "audience",
        given -> given.equals("patient leaflet") ? Optional.of(given) : Optional.empty());
    return new Answer.OneNumber(BigDecimal.valueOf(Tally.MOST_GRADE));
  }

  private static int whole(Input input, String name) {
    return input.decimal(name).intValueExact();
  }
}
