package rungwise.dosing.protocol;

import java.util.Arrays;
import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.dosing.known.Component;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Seen;
import rungwise.dosing.source.Source;
import rungwise.quantities.Mass;

/**
 * The most that each text allows of alprostadil, where it gives a number. They are published for
 * alprostadil alone; a mixture is held against the same, because nothing was published for it.
 */
enum Published {
  US_SYRINGE(Citation.US_SYRINGE_LABEL, Seen.READ, "2.5 mcg", "1.25 mcg", "10 mcg", "60 mcg"),
  US_VIAL(Citation.US_VIAL_LABEL, Seen.READ, "2.5 mcg", "1.25 mcg", "10 mcg", "60 mcg"),
  US_VIAL_OLDER(
      Citation.US_VIAL_LABEL_OLDER,
      Seen.READ_IN_SECONDARY_COPY,
      "2.5 mcg",
      "1.25 mcg",
      "10 mcg",
      "60 mcg"),
  US_CARTRIDGE(Citation.US_CARTRIDGE_LABEL, Seen.READ, "2.5 mcg", "1.25 mcg", "10 mcg", "40 mcg"),
  UK(
      Citation.UK_ALFADEX_SMPC,
      Seen.READ_IN_SECONDARY_COPY,
      "2.5 mcg",
      "1.25 mcg",
      "5 mcg",
      "40 mcg");

  /** Which of the numbers of a text. */
  enum Figure {
    START("the first dose"),
    START_AFTER_SPINAL_CORD_INJURY("the first dose after a spinal cord injury"),
    STEP("one step"),
    MAXIMUM("the maximum");

    private final String words;

    Figure(String words) {
      this.words = words;
    }
  }

  private final Citation citation;
  private final Seen seen;
  private final Mass start;
  private final Mass spinalCord;
  private final Mass step;
  private final Mass maximum;

  Published(
      Citation citation, Seen seen, String start, String spinalCord, String step, String maximum) {
    this.citation = citation;
    this.seen = seen;
    this.start = Mass.parse(start).orThrow();
    this.spinalCord = Mass.parse(spinalCord).orThrow();
    this.step = Mass.parse(step).orThrow();
    this.maximum = Mass.parse(maximum).orThrow();
  }

  private Mass of(Figure figure) {
    return switch (figure) {
      case START -> start;
      case START_AFTER_SPINAL_CORD_INJURY -> spinalCord;
      case STEP -> step;
      case MAXIMUM -> maximum;
    };
  }

  /** What a mass goes past: the text that is cited, else every one of them; empty if nothing. */
  static Optional<String> passedBy(Mass mass, Figure figure, Source cited) {
    Stream<Published> texts =
        Arrays.stream(values()).filter(one -> one.isCitedBy(cited)).findFirst().stream();
    Published text = Stream.concat(texts, Stream.of(mostOf(figure))).findFirst().orElseThrow();
    return Optional.of(text)
        .filter(one -> mass.isMoreThan(one.of(figure)))
        .map(one -> one.words(figure));
  }

  private static Published mostOf(Figure figure) {
    return Arrays.stream(values()).max(Comparator.comparing(one -> one.of(figure))).orElseThrow();
  }

  private boolean isCitedBy(Source source) {
    return source instanceof Source.Published published && published.citation() == citation;
  }

  private String words(Figure figure) {
    return "goes past "
        + of(figure).in(Component.ALPROSTADIL.unit())
        + " of alprostadil, "
        + figure.words
        + " in "
        + new Source.Published(citation, "for alprostadil alone", seen).words();
  }
}
