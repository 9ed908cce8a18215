package rungwise.dosing.protocol;

import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.Concentration;
import rungwise.quantities.Mass;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/**
 * A clinic's versioned titration rules.
 *
 * @param name names the protocol across its versions
 * @param version 1 or more
 * @param sample whether it is a sample, which a clinic copies and signs before it is used
 * @param components the preparation it is for holds these and nothing else
 * @param starts the first amount by aetiology group; every group has exactly one
 * @param steps from small to large: how far one step may go from an amount
 * @param strengths strengths at which small amounts are not offered
 * @param ceiling the amount never to be passed
 * @param more what a protocol may leave out
 */
public record Protocol(
    String name,
    int version,
    String title,
    boolean sample,
    Set<Component> components,
    List<Start> starts,
    List<Step> steps,
    List<StrengthRule> strengths,
    Sourced<ProtocolAmount> ceiling,
    Limits limits,
    ProtocolOptions more) {

  /** The most of one component that one injection may hold. */
  public record ComponentLimit(Component component, Mass most, Source source) {

    /** Whether a mass is more. */
    public boolean isLessThan(Mass mass) {
      return mass.isMoreThan(most);
    }

    /** Whether a volume of a preparation holds more. */
    public boolean isPassedBy(Preparation preparation, Volume volume) {
      return preparation
          .ingredient(component)
          .filter(ingredient -> isLessThan(ingredient.in(volume)))
          .isPresent();
    }

    @Override
    public String toString() {
      return most.in(component.unit()) + " of " + component.fullName();
    }
  }

  /**
   * What a protocol asks for before home use.
   *
   * @param readinessMonths the most months for which what was shown or agreed holds; empty means
   *     that it does not expire
   * @param plan what the emergency plan must say beside hospital, number and transport, in words
   */
  public record Home(Optional<Sourced<Integer>> readinessMonths, List<Sourced<String>> plan) {

    public static final Home NOTHING_MORE = new Home(Optional.empty(), List.of());

    public Home {
      plan = List.copyOf(plan);
    }
  }

  /**
   * The most chance of a useful response that lasts too long, in 1000.
   *
   * @param of120Minutes that it lasts 120 minutes or longer
   * @param of240Minutes that it lasts 240 minutes or longer
   */
  public record Chances(
      Optional<Sourced<Integer>> of120Minutes, Optional<Sourced<Integer>> of240Minutes) {

    public static final Chances NOT_ASKED = new Chances(Optional.empty(), Optional.empty());

    public boolean isAsked() {
      return of120Minutes.isPresent() || of240Minutes.isPresent();
    }
  }

  /**
   * How a partial response is answered: grade 2, over in time, with nothing wrong.
   *
   * @param responses after how many of them in a row at one dose a step up is proposed, 1 to 3
   */
  public record AfterPartial(int responses, Source source) {

    /** However a protocol is written, the same dose does not go on for ever. */
    public static final int MOST = 3;

    public AfterPartial {
      if (responses < 1 || responses > MOST) {
        throw new IllegalArgumentException("bug: a step up after " + responses + " responses");
      }
    }
  }

  /** The first amount for some groups. */
  public record Start(Set<AetiologyGroup> groups, ProtocolAmount amount, Source source) {
    public Start {
      groups = Set.copyOf(groups);
    }
  }

  /**
   * How far one step goes.
   *
   * @param upTo the step applies to amounts up to and with this one
   * @param smallest what is added, after no response and after a partial one: one rung
   * @param largest what the source would allow at most, such as after no response; it is shown and
   *     never taken, because no proposal goes further than one rung
   */
  public record Step(
      ProtocolAmount upTo, ProtocolAmount smallest, ProtocolAmount largest, Source source) {}

  /** An amount below which a strength is not offered, because it cannot be measured well. */
  public record StrengthRule(Concentration strength, ProtocolAmount notBelow, Source source) {}

  /**
   * When a second dose may follow in the same visit, in the clinic only.
   *
   * @param within the longest time from the first injection to the second
   * @param afterNone whether it may follow where nothing happened
   * @param afterPartialUpTo it may follow a partial response, soft again, to at most this amount
   */
  public record SameVisit(
      TimeSpan within,
      boolean afterNone,
      Optional<ProtocolAmount> afterPartialUpTo,
      Source source) {

    SameVisit within(TimeSpan other, Source otherSource) {
      return new SameVisit(other, afterNone, afterPartialUpTo, otherSource);
    }
  }

  /**
   * What it says by whole numbers, each in the unit of its option.
   *
   * @param said every needed one, and those of the others that it does not leave out
   */
  public record Limits(Map<CountedOption, Sourced<Integer>> said) {

    public Limits {
      var all = new EnumMap<CountedOption, Sourced<Integer>>(CountedOption.class);
      all.putAll(said);
      said = Collections.unmodifiableMap(all);
      for (CountedOption option : CountedOption.values()) {
        if (option.isNeeded() && !said.containsKey(option)) {
          throw new IllegalArgumentException("bug: no " + option.part());
        }
      }
    }

    /** Numbers of one source. */
    public static Limits of(Source source, Map<CountedOption, Integer> numbers) {
      var said = new EnumMap<CountedOption, Sourced<Integer>>(CountedOption.class);
      numbers.forEach((option, number) -> said.put(option, new Sourced<>(number, source)));
      return new Limits(said);
    }

    /** The number that holds, said or not; empty where nothing holds then. */
    public Optional<Sourced<Integer>> found(CountedOption option) {
      return Optional.ofNullable(said.get(option)).or(option::instead);
    }

    /** The number of an option that has one, said or not. */
    public Sourced<Integer> of(CountedOption option) {
      return found(option).orElseThrow();
    }

    /** The same with another number. */
    public Limits with(CountedOption option, Sourced<Integer> other) {
      var all = new EnumMap<CountedOption, Sourced<Integer>>(CountedOption.class);
      all.putAll(said);
      all.put(option, other);
      return new Limits(all);
    }

    /** A useful erection up to and with this is what is wanted. */
    public Sourced<TimeSpan> satisfactory() {
      Sourced<Integer> minutes = of(CountedOption.SATISFACTORY_MINUTES);
      return new Sourced<>(TimeSpan.ofMinutes(minutes.value()), minutes.source());
    }

    /** The smallest time between two injections. */
    public Sourced<TimeSpan> spacing() {
      Sourced<Integer> hours = of(CountedOption.SPACING_HOURS);
      return new Sourced<>(TimeSpan.ofHours(hours.value()), hours.source());
    }

    /** The most injections in any 168 hours. */
    public Sourced<Integer> inSevenDays() {
      return of(CountedOption.IN_SEVEN_DAYS);
    }

    /** The most months between two examinations. */
    public Sourced<Integer> reviewMonths() {
      return of(CountedOption.REVIEW_MONTHS);
    }

    /** The most months for which an answer of the screening holds. */
    public Sourced<Integer> screeningMonths() {
      return of(CountedOption.SCREENING_MONTHS);
    }

    /** For how many days from its making a solution counts as fresh. */
    public Sourced<Integer> freshDays() {
      return of(CountedOption.FRESH_DAYS);
    }

    /** The clinic's own hours between a PDE5 inhibitor and an injection. */
    public Sourced<Integer> pde5Hours() {
      return of(CountedOption.PDE5_HOURS);
    }

    /** After how many months without an injection a dose is given in the clinic again. */
    public Sourced<Integer> lapseMonths() {
      return of(CountedOption.LAPSE_MONTHS);
    }

    /** For how many days home use may go on after an examination or an answer was due. */
    public Sourced<Integer> graceDays() {
      return of(CountedOption.GRACE_DAYS);
    }
  }

  /** The same rules, but for what a protocol may leave out. */
  public Protocol with(ProtocolOptions other) {
    return new Protocol(
        name, version, title, sample, components, starts, steps, strengths, ceiling, limits, other);
  }

  /** The same rules with other limits for the response model. */
  public Protocol with(Chances other) {
    return with(more.withChances(other));
  }

  public Protocol {
    components = Set.copyOf(components);
    starts = List.copyOf(starts);
    steps = List.copyOf(steps);
    strengths = List.copyOf(strengths);
    Wholeness.require(name, version, starts, steps, ceiling.value(), more);
    List<Floor> passed = new Floor.Rules(components, limits, more.sameVisit()).passed();
    if (!passed.isEmpty()) {
      throw new IllegalArgumentException("bug: protocol " + name + " passes " + passed);
    }
  }

  public Optional<Sourced<ProtocolAmount>> careAbove() {
    return more.careAbove();
  }

  public Optional<SameVisit> sameVisit() {
    return more.sameVisit();
  }

  public Chances chances() {
    return more.chances();
  }

  /** After how many partial responses in a row at one dose a step up is proposed: 1 to 3. */
  public int partialResponsesBeforeStep() {
    return more.afterPartial().map(AfterPartial::responses).orElse(1);
  }

  /** The most of single components, whatever the volume. */
  public List<ComponentLimit> componentLimits() {
    return more.componentLimits();
  }

  /** What is asked for before home use, beyond what every clinic needs. */
  public Home home() {
    return new Home(limits.found(CountedOption.READINESS_MONTHS), more.emergencyPlan());
  }

  /** The first amount for a group. */
  public Start startFor(AetiologyGroup group) {
    return starts.stream()
        .filter(start -> start.groups().contains(group))
        .findFirst()
        .orElseThrow();
  }

  /** A group whose first amount is the lowest of all. */
  public AetiologyGroup groupWithLowestStart() {
    AetiologyGroup lowest = AetiologyGroup.UNKNOWN;
    for (AetiologyGroup group : AetiologyGroup.values()) {
      if (startFor(lowest).amount().isMoreThan(startFor(group).amount())) {
        lowest = group;
      }
    }
    return lowest;
  }

  /** The step from an amount; none from the last one on. */
  public Optional<Step> stepFrom(ProtocolAmount amount) {
    for (Step step : steps) {
      if (!amount.isMoreThan(step.upTo())) {
        return Optional.of(step);
      }
    }
    return Optional.empty();
  }

  /** The step from a volume of a preparation; none from the last one on. */
  public Optional<Step> stepFrom(Preparation preparation, Volume volume) {
    return switch (ceiling.value()) {
      case ProtocolAmount.OfVolume most -> stepFrom(new ProtocolAmount.OfVolume(volume));
      case ProtocolAmount.Content(Component component, Mass most) ->
          preparation
              .ingredient(component)
              .map(one -> new ProtocolAmount.Content(component, one.in(volume)))
              .flatMap(this::stepFrom);
    };
  }

  /** The rule for a preparation's strength, where the protocol has one. */
  public Optional<StrengthRule> strengthRuleFor(Preparation preparation) {
    return strengths.stream()
        .filter(
            rule ->
                preparation.ingredients().stream()
                    .anyMatch(ingredient -> ingredient.strength().equals(rule.strength())))
        .findFirst();
  }

  /** Whether its amounts are volumes, which mean nothing without the composition. */
  public boolean isInVolumes() {
    return ceiling.value() instanceof ProtocolAmount.OfVolume;
  }

  /** What one mL holds of what it is written for, where it says so. */
  public Optional<Composition> composition() {
    return more.composition();
  }

  /** "papaverine hydrochloride 30 mg, ... per mL", or the components where it counts in mass. */
  public String writtenFor() {
    String names =
        components.stream().sorted().map(Component::fullName).collect(Collectors.joining(", "));
    return composition()
        .map(Composition::toString)
        .orElse(isInVolumes() ? names + ", of no strength that it names" : names);
  }

  /** The same rules in volumes, as if they had been written for a preparation. */
  public Protocol asWrittenFor(Preparation preparation) {
    return with(more.withComposition(Optional.of(Composition.of(preparation))));
  }

  /** Whether this protocol is written for what the preparation holds. */
  public boolean isFor(Preparation preparation) {
    return preparation.ingredients().size() == components.size()
        && preparation.ingredients().stream()
            .allMatch(ingredient -> components.contains(ingredient.component()))
        && (!isInVolumes() || composition().filter(one -> one.isOf(preparation)).isPresent());
  }

  /** Whether its maximum or a limit of a component is lower than in an earlier version. */
  public boolean lowersLimitOf(Protocol earlier) {
    ProtocolAmount before = earlier.ceiling().value();
    ProtocolAmount now = ceiling.value();
    boolean isLowerLimit =
        componentLimits().stream()
            .anyMatch(
                limit ->
                    earlier.componentLimits().stream()
                        .filter(old -> old.component() == limit.component())
                        .noneMatch(old -> !old.most().isMoreThan(limit.most())));
    return isLowerLimit || !now.isLike(before) || before.isMoreThan(now);
  }

  /** "us-vial-syringe-label version 1": what a stored decision remembers of it. */
  public String key() {
    return name + " version " + version;
  }
}
