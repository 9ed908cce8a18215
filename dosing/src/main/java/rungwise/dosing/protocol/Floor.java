package rungwise.dosing.protocol;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import rungwise.dosing.known.Component;
import rungwise.dosing.protocol.Protocol.Limits;
import rungwise.dosing.protocol.Protocol.SameVisit;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.TimeSpan;

/**
 * What no protocol passes, whoever signs it. A {@link Protocol} cannot be made that passes one, so
 * neither a reader nor a guard ever sees such a rule; {@link #holding} puts the floor in the place
 * of what an older document says.
 */
public enum Floor {
  SATISFACTORY(
      CountedOption.SATISFACTORY_MINUTES.part(),
      "a usable erection of more than 60 min is never what is wanted",
      Source.read(Citation.US_SYRINGE_LABEL, "2: an erection that lasts no more than 1 h")),
  SPACING(
      CountedOption.SPACING_HOURS.part(),
      "there are at least 24 h between two injections",
      Source.read(Citation.US_SYRINGE_LABEL, "17: at least 24 h apart")),
  IN_SEVEN_DAYS(
      CountedOption.IN_SEVEN_DAYS.part(),
      "there are at most 3 injections in 168 h",
      Source.read(Citation.US_SYRINGE_LABEL, "17: no more than 3 a week")),
  SECOND_DOSE(
      "same_visit",
      "a second dose in one visit is for alprostadil alone",
      new Source.Assumption("no text that was read lets a second dose of a mixture follow")),
  VISIT_WINDOW(
      "same_visit",
      "a second dose in one visit follows within 60 min",
      Source.read(Citation.US_SYRINGE_LABEL, "2.1: within 1 h; at most 2 doses in 24 h"));

  private static final int MOST_SATISFACTORY_MINUTES = 60;
  private static final int LEAST_SPACING_HOURS = 24;
  private static final int MOST_IN_SEVEN_DAYS = 3;
  private static final TimeSpan WIDEST_VISIT = TimeSpan.ofHours(1);

  private final String part;
  private final String words;
  private final Source source;

  Floor(String part, String words, Source source) {
    this.part = part;
    this.words = words;
    this.source = source;
  }

  /** The part of the document that it is about, such as "spacing_hours". */
  public String part() {
    return part;
  }

  /** "there are at least 24 h between two injections". */
  public String words() {
    return words;
  }

  public Source source() {
    return source;
  }

  /**
   * The rules that a floor can stand under.
   *
   * @param components what the preparation holds
   */
  public record Rules(Set<Component> components, Limits limits, Optional<SameVisit> sameVisit) {

    public Rules {
      components = Set.copyOf(components);
    }

    /** Which floors these rules pass, in their order. */
    public List<Floor> passed() {
      return Arrays.stream(Floor.values()).filter(floor -> floor.isPassedBy(this)).toList();
    }

    /** The same rules with the floor in the place of what passes it. */
    public Rules held() {
      Rules held = this;
      for (Floor floor : passed()) {
        held = floor.holding(held);
      }
      return held;
    }

    private Rules with(Limits other) {
      return new Rules(components, other, sameVisit);
    }

    private Rules with(Optional<SameVisit> other) {
      return new Rules(components, limits, other);
    }
  }

  private boolean isPassedBy(Rules rules) {
    Limits limits = rules.limits();
    return switch (this) {
      case SATISFACTORY ->
          limits.satisfactory().value().isMoreThan(TimeSpan.ofMinutes(MOST_SATISFACTORY_MINUTES));
      case SPACING -> limits.spacing().value().isLessThan(TimeSpan.ofHours(LEAST_SPACING_HOURS));
      case IN_SEVEN_DAYS -> limits.inSevenDays().value() > MOST_IN_SEVEN_DAYS;
      case SECOND_DOSE ->
          rules.sameVisit().isPresent()
              && !rules.components().equals(Set.of(Component.ALPROSTADIL));
      case VISIT_WINDOW ->
          rules.sameVisit().filter(visit -> visit.within().isMoreThan(WIDEST_VISIT)).isPresent();
    };
  }

  private Rules held(Rules rules, CountedOption option, int number) {
    return rules.with(rules.limits().with(option, new Sourced<>(number, source)));
  }

  private Rules holding(Rules rules) {
    return switch (this) {
      case SATISFACTORY ->
          held(rules, CountedOption.SATISFACTORY_MINUTES, MOST_SATISFACTORY_MINUTES);
      case SPACING -> held(rules, CountedOption.SPACING_HOURS, LEAST_SPACING_HOURS);
      case IN_SEVEN_DAYS -> held(rules, CountedOption.IN_SEVEN_DAYS, MOST_IN_SEVEN_DAYS);
      case SECOND_DOSE -> rules.with(Optional.empty());
      case VISIT_WINDOW ->
          rules.with(rules.sameVisit().map(visit -> visit.within(WIDEST_VISIT, source)));
    };
  }
}
