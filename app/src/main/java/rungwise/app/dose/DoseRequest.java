package rungwise.app.dose;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rungwise.clinic.dose.DoseAnswer;
import rungwise.clinic.dose.TypedComposition;
import rungwise.clinic.dose.Wanted;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.syringe.Barrel;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.MarkNumber;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/**
 * What was typed after the verb "dose", unread.
 *
 * @param preparation the token of a sample preparation
 * @param composition a preparation written out, instead of a token
 * @param barrel the token of a syringe
 * @param volume a volume in mL
 * @param mark the number of a unit line, instead of a volume
 * @param content a component and a mass, instead of a volume
 */
public record DoseRequest(
    Optional<String> preparation,
    Optional<String> composition,
    Optional<String> barrel,
    Optional<String> volume,
    Optional<String> mark,
    Optional<String> content) {

  /** The dose that was asked for, or everything that is wrong with the request. */
  public Reading<DoseAnswer> answer() {
    Reading<Preparation> preparationRead = readPreparation();
    Reading<Barrel> barrelRead = readBarrel();
    Reading<Wanted> wantedRead = readWanted();
    List<String> faults =
        Stream.of(preparationRead, barrelRead, wantedRead)
            .flatMap(reading -> reading.faults().stream())
            .toList();
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
    }
    var notices =
        Stream.of(preparationRead, barrelRead, wantedRead)
            .flatMap(reading -> reading.notices().stream())
            .toList();
    return wantedRead
        .orThrow()
        .of(preparationRead.orThrow(), barrelRead.orThrow(), notices)
        .reading();
  }

  private Reading<Preparation> readPreparation() {
    if (preparation.isPresent() == composition.isPresent()) {
      return Reading.refused(
          (preparation.isPresent()
                  ? "Both --preparation and --composition were given: give one of them."
                  : "No preparation was given: give --preparation or --composition.")
              + " --preparation takes one of "
              + tokens());
    }
    if (composition.isPresent()) {
      return TypedComposition.read(composition.get());
    }
    String token = preparation.orElseThrow();
    return SamplePreparations.of(token)
        .map(Reading::of)
        .orElseGet(
            () ->
                Reading.refused(
                    "\""
                        + token
                        + "\" is not a preparation known here: give one of "
                        + tokens()
                        + ", or write it out with --composition"));
  }

  private static String tokens() {
    return SamplePreparations.all().stream()
        .map(one -> one.id() + " (" + one.composition() + ")")
        .collect(Collectors.joining(", "));
  }

  private Reading<Barrel> readBarrel() {
    if (barrel.isEmpty()) {
      return Reading.refused("No syringe was given: give --barrel with one of " + barrels());
    }
    String token = barrel.get();
    Optional<Barrel> known = Barrels.of(token);
    if (known.isEmpty()) {
      return Reading.refused(
          "\"" + token + "\" is not a syringe known here: give one of " + barrels());
    }
    if (known.get().marking().graduationVolume().isEmpty()) {
      return Reading.refused(
          "No line of a " + known.get() + " is known here: give one of " + barrels());
    }
    return Reading.of(known.get());
  }

  private static String barrels() {
    return Barrels.all().stream()
        .filter(one -> one.marking().graduationVolume().isPresent())
        .map(one -> one.token() + " (" + one + ")")
        .collect(Collectors.joining(", "));
  }

  private Reading<Wanted> readWanted() {
    List<String> given =
        Stream.of(
                volume.map(at -> "--volume"),
                mark.map(at -> "--mark"),
                content.map(at -> "--content"))
            .flatMap(Optional::stream)
            .toList();
    if (given.size() != 1) {
      String what =
          given.isEmpty()
              ? "No dose was given"
              : String.join(" and ", given) + " were given together";
      return Reading.refused(
          what
              + ": give one of --volume (such as 0.2mL), --mark (such as 20) or --content (such as"
              + " alprostadil=2.5mcg).");
    }
    return volume
        .map(text -> Volume.parseMillilitres(text).<Wanted>map(Wanted.ByVolume::new))
        .or(() -> mark.map(text -> MarkNumber.parse(text).map(Wanted.ByMark::new)))
        .or(() -> content.map(Wanted.ByContent::read))
        .orElseThrow();
  }
}
