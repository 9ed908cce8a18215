package rungwise.dosing.urgent;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;
import rungwise.quantities.TimeSpan;

/**
 * What published texts tie to the hours of an ischaemic erection. Each says from when, and none
 * says until when nothing happens.
 */
public enum Risk {
  SMOOTH_MUSCLE_CHANGE_BEGINS(
      TimeSpan.ofHours(6),
      End.INCLUDED,
      "The smooth muscle begins to change.",
      Source.read(Citation.EMEDICINE_PRIAPISM, "from 6 h")),
  CELLULAR_DAMAGE(
      TimeSpan.ofHours(24),
      End.INCLUDED,
      "Cells are damaged.",
      Source.read(Citation.EMEDICINE_PRIAPISM, "from 24 h")),
  FIBROSIS_RECOVERY_UNLIKELY(
      TimeSpan.ofHours(36),
      End.INCLUDED,
      "Fibrosis; a recovery of erections is unlikely, and he is told so.",
      Source.read(
          Citation.EMEDICINE_PRIAPISM,
          "fibrosis from 36 h; unlikely recovery after 36 h is AUA/SMSNA, in a secondary copy")),
  CONSIDER_EARLY_IMPLANT(
      TimeSpan.ofHours(48),
      End.LEFT_OUT,
      "An early implant is considered with him.",
      Source.read(Citation.EAU_SEXUAL_HEALTH, "priapism, Figure 13: longer than 48 h"));

  /** Whether the hour itself belongs to it. */
  private enum End {
    INCLUDED,
    LEFT_OUT
  }

  private final TimeSpan from;
  private final End end;
  private final String words;
  private final Source source;

  Risk(TimeSpan from, End end, String words, Source source) {
    this.from = from;
    this.end = end;
    this.words = words;
    this.source = source;
  }

  /** "From 6 h" or "After 48 h". */
  public String fromWords() {
    return switch (end) {
      case INCLUDED -> "From " + from;
      case LEFT_OUT -> "After " + from;
    };
  }

  public String words() {
    return words;
  }

  public Source source() {
    return source;
  }

  private boolean isReachedBy(TimeSpan lasted) {
    return switch (end) {
      case INCLUDED -> !lasted.isLessThan(from);
      case LEFT_OUT -> lasted.isMoreThan(from);
    };
  }

  /** What is reached for certain, the earliest first. */
  public static List<Risk> reached(Elapsed elapsed) {
    Optional<TimeSpan> least =
        switch (elapsed) {
          case Elapsed.Known known -> Optional.of(known.lasted());
          case Elapsed.Unknown unknown -> unknown.atLeast();
        };
    return Arrays.stream(values())
        .filter(risk -> least.filter(risk::isReachedBy).isPresent())
        .toList();
  }

  /** What may be reached besides, because nobody knows when it began. */
  public static List<Risk> perhapsReached(Elapsed elapsed) {
    return switch (elapsed) {
      case Elapsed.Known known -> List.of();
      case Elapsed.Unknown unknown -> {
        List<Risk> certain = reached(elapsed);
        yield Arrays.stream(values()).filter(risk -> !certain.contains(risk)).toList();
      }
    };
  }
}
