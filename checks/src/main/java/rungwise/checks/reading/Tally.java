package rungwise.checks.reading;

/**
 * What was counted in a text, and what published formulas make of it. They measure length, not
 * sense.
 *
 * @param polysyllables words of three or more syllables
 */
public record Tally(int sentences, int words, int syllables, int polysyllables) {

  /**
   * The highest school grade that a text for patients may ask (JAMA Intern Med 2013, as an ACP
   * summary repeats it; reference row D047).
   */
  public static final int MOST_GRADE = 6;

  /**
   * The Flesch-Kincaid grade (Kincaid 1975, as printed by VA HSR&D; reference rows D026 to D032).
   */
  public double fleschKincaidGrade() {
    return 0.39 * words / sentences + 11.8 * syllables / words - 15.59;
  }

  /** Flesch's reading ease (Flesch 1948, as printed by VA HSR&D; reference rows D029, D031). */
  public double fleschReadingEase() {
    return 206.835 - 1.015 * words / sentences - 84.6 * syllables / words;
  }

  /** SMOG (McLaughlin 1969; reference rows D036, D038). */
  public double smog() {
    return 1.0430 * Math.sqrt(polysyllables * 30.0 / sentences) + 3.1291;
  }

  /** SMOG as it is reckoned by hand (worked values of 2011; reference rows D039 to D045). */
  public double smogSimple() {
    return 3 + Math.sqrt(polysyllables * 30.0 / sentences);
  }

  /** INFLESZ, Flesch-Szigriszt for Spanish (Barrio-Cantalejo 2008; from memory). */
  public double inflesz() {
    return 206.835 - 62.3 * syllables / words - (double) words / sentences;
  }

  Tally and(Tally other) {
    return new Tally(
        sentences + other.sentences,
        words + other.words,
        syllables + other.syllables,
        polysyllables + other.polysyllables);
  }
}
