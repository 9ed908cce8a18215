package rungwise.dosing.response;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Injection;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.DurationLimits;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.PreparationId;

/**
 * A population that may be asked about the men of a clinic.
 *
 * <p>Every vial is read at its label's strength. A second dose in one visit is read as everything
 * that was injected in it.
 *
 * @param key the name and version of the population, as a stored decision remembers it
 * @param reference the preparation whose strength is 1
 */
public record ResponseModel(String key, Population population, Preparation reference) {

  /** Injections of one preparation. */
  private record Batch(Preparation preparation, List<Trial> trials) {}

  /**
   * What the model cannot read: a response that was not usable and was, or may have been, over only
   * after more than an hour. It reads how long usable ones last, and would take this one for a sign
   * that he needs more. The first of those; empty if all can be read.
   */
  public static Optional<Injection> notRead(List<Injection> counted) {
    return counted.stream()
        .filter(one -> !one.grade().isUseful())
        .filter(one -> one.soft().mayPass(DurationLimits.NO_HIGHER_DOSE.value()))
        .findFirst();
  }

  /**
   * What a man's history says of a preparation; nothing if the population knows neither his group
   * nor the preparation, or there is something that the model cannot read. A dose that is not known
   * to have gone in says nothing of what he needs and is left out.
   *
   * @param counted the injections that count, all of them of that history
   */
  public Optional<Prospect> prospect(
      AetiologyGroup group, Preparation asked, History history, List<Injection> counted) {
    if (population.meanOf(group.token()).isEmpty() || notRead(counted).isPresent()) {
      return Optional.empty();
    }
    Map<PreparationId, Batch> batches =
        batches(history, counted.stream().filter(Injection::wentIn).toList());
    List<Trial> onAsked =
        Optional.ofNullable(batches.get(asked.id())).map(Batch::trials).orElse(List.of());
    var known = new ArrayList<Trial>();
    var others = new ArrayList<OtherPreparation>();
    for (Batch batch : batches.values()) {
      switch (RelativeStrength.of(batch.preparation(), reference)) {
        case RelativeStrength.Exactly(double strength) -> known.addAll(trialsOf(batch, strength));
        case RelativeStrength.Uncertain(UncertainStrength strength) -> {
          if (!batch.preparation().id().equals(asked.id())) {
            others.add(new OtherPreparation(strength, batch.trials()));
          }
        }
        case RelativeStrength.NotKnown unknown -> {}
      }
    }
    return switch (RelativeStrength.of(asked, reference)) {
      case RelativeStrength.Exactly(double strength) ->
          Optional.of(
              new Prospect(Requirement.of(population, group.token(), known, others), strength));
      case RelativeStrength.Uncertain(UncertainStrength strength) ->
          Optional.of(
              new Prospect(
                  Requirement.of(
                      population,
                      group.token(),
                      known,
                      others,
                      new OtherPreparation(strength, onAsked)),
                  1));
      case RelativeStrength.NotKnown unknown -> Optional.empty();
    };
  }

  private static Map<PreparationId, Batch> batches(History history, List<Injection> counted) {
    var batches = new LinkedHashMap<PreparationId, Batch>();
    for (Injection injection : counted) {
      batches
          .computeIfAbsent(
              injection.preparation().id(),
              id -> new Batch(injection.preparation(), new ArrayList<>()))
          .trials()
          .add(trial(history, injection, 1));
    }
    return batches;
  }

  private static List<Trial> trialsOf(Batch batch, double strength) {
    return batch.trials().stream()
        .map(one -> new Trial(one.logDose() + Math.log(strength), one.grade(), one.lasted()))
        .toList();
  }

  /**
   * An injection with everything that was injected in its stay.
   *
   * @param strength of its preparation relative to the reference
   */
  public static Trial trial(History history, Injection injection, double strength) {
    return new Trial(
        new Given(history.cumulative(injection), 1, strength).logDose(),
        injection.grade(),
        Lasted.of(injection.grade(), injection.soft()));
  }
}
