package rungwise.app.forecast;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import rungwise.app.history.HistorySource;
import rungwise.dosing.response.Given;
import rungwise.dosing.response.Population;
import rungwise.dosing.response.Requirement;
import rungwise.dosing.response.Trial;
import rungwise.files.PopulationFile;
import rungwise.files.ShippedPopulations;
import rungwise.files.history.HistoryFile;
import rungwise.files.history.HistoryLine;
import rungwise.files.history.PreparationChoice;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/**
 * What was typed after the verb "forecast", unread.
 *
 * @param history whose forecasts are wanted, where there is one
 * @param group of a man without injections, where he is asked for instead
 * @param population the path of a population file, or the name of one that comes with the program
 * @param volumes the volumes that are asked for
 * @param potency of the vial that is asked for
 * @param strength of the preparation that is asked for, relative to the population's
 * @param delivery the token of a syringe, if the error of delivery is to be integrated over
 * @param lost the largest part of the strength that may be gone; only together with a syringe
 * @param preparations the names in the file of which lines are read, where they were chosen
 * @param isDespiteDoubts whether a population may be used that its own maker doubts
 */
public record ForecastRequest(
    Optional<HistorySource> history,
    Optional<String> group,
    String population,
    String volumes,
    String potency,
    String strength,
    Optional<String> delivery,
    Optional<String> lost,
    Optional<String> preparations,
    boolean isDespiteDoubts) {

  private static final Pattern DECIMAL = Pattern.compile("[0-9]{1,6}(?:\\.[0-9]{1,20})?");
  private static final String VERSION = "version";
  private static final double MOST_POTENCY = 1.2;
  private static final double LEAST_STRENGTH = 0.05;
  private static final double MOST_STRENGTH = 20;

  /** The forecasts, or everything that is wrong with the request and its files. */
  public Reading<ForecastAnswer> answer() throws IOException {
    Reading<PopulationFile> populationRead = readPopulation();
    Reading<Asked> askedRead = readAsked(populationRead.found());
    Reading<List<Volume>> volumesRead = VolumeList.read(volumes);
    Reading<Double> potencyRead =
        readNumber("--potency", potency, Double.MIN_VALUE, MOST_POTENCY, "above 0, at most 1.2");
    Reading<Double> strengthRead =
        readNumber("--strength", strength, LEAST_STRENGTH, MOST_STRENGTH, "from 0.05 to 20");
    var faults =
        new ArrayList<>(
            Stream.of(askedRead, populationRead, volumesRead, potencyRead, strengthRead)
                .flatMap(reading -> reading.placed().stream())
                .toList());
    Reading<Optional<AskedDelivery>> deliveryRead = readDelivery(volumesRead);
    faults.addAll(deliveryRead.placed());
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(List.copyOf(faults));
    }
    PopulationFile used = populationRead.orThrow();
    Population parameters = used.population();
    List<Given> asked =
        volumesRead.orThrow().stream()
            .map(volume -> new Given(volume, potencyRead.orThrow(), strengthRead.orThrow()))
            .toList();
    return Reading.of(
        new ForecastAnswer(
            population,
            version(used),
            used.referencePreparation(),
            used.doubts(),
            askedRead.orThrow().leftOut(),
            askedRead.orThrow().men().stream()
                .map(man -> forecast(parameters, man, asked, deliveryRead.orThrow()))
                .toList()));
  }

  /** What the file says of its own version. */
  private static OptionalInt version(PopulationFile file) {
    return file.others().get(VERSION) instanceof Number number
        ? OptionalInt.of(number.intValue())
        : OptionalInt.empty();
  }

  /**
   * Whose forecasts are wanted.
   *
   * @param leftOut how many lines are of a preparation that was not chosen
   */
  private record Asked(List<OneMan> men, int leftOut) {}

  /**
   * One man.
   *
   * @param name what the file calls him; nothing for a man without injections
   * @param place where his group was given, for a fault
   */
  private record OneMan(Optional<String> name, String group, List<Trial> trials, String place) {

    static OneMan of(Map.Entry<String, List<PreparationChoice.Line>> patient) {
      HistoryLine first = patient.getValue().getFirst().said();
      return new OneMan(
          Optional.of(patient.getKey()),
          first.group(),
          patient.getValue().stream().map(ForecastRequest::trial).toList(),
          "line " + first.line() + ": group");
    }
  }

  private Reading<Asked> readAsked(Optional<PopulationFile> file) throws IOException {
    Reading<Asked> reading =
        group.isPresent()
            ? Reading.of(
                new Asked(
                    List.of(new OneMan(Optional.empty(), group.get(), List.of(), "--group")), 0))
            : readHistory(file.map(PopulationFile::referencePreparation))
                .map(
                    chosen ->
                        new Asked(
                            chosen.patients().entrySet().stream().map(OneMan::of).toList(),
                            chosen.leftOut()));
    List<String> unknown =
        reading.found().isPresent() && file.isPresent()
            ? unknownGroups(reading.orThrow().men(), file.get().population())
            : List.of();
    return unknown.isEmpty() ? reading : new Reading.Refused<>(unknown);
  }

  private Reading<Optional<AskedDelivery>> readDelivery(Reading<List<Volume>> volumesRead) {
    if (delivery.isEmpty()) {
      return lost.isEmpty()
          ? Reading.of(Optional.empty())
          : Reading.refused("--lost was given without a syringe: give --delivery too");
    }
    return AskedDelivery.read(
            delivery.get(), lost.orElse("0"), volumesRead.found().orElse(List.of()))
        .map(Optional::of);
  }

  private Reading<PreparationChoice.Chosen> readHistory(Optional<String> reference)
      throws IOException {
    Reading<List<String>> named =
        preparations
            .map(text -> PreparationChoice.read("--preparation", text))
            .orElse(Reading.of(List.of()));
    return switch (history.orElseThrow().history()) {
      case Reading.Refused<HistoryFile> refused -> new Reading.Refused<>(refused.placed());
      case Reading.Read<HistoryFile> read ->
          named.found().isEmpty()
              ? new Reading.Refused<>(named.placed())
              : new PreparationChoice(named.orThrow(), reference).of(read.value());
    };
  }

  private Reading<PopulationFile> readPopulation() throws IOException {
    return switch (readDocument()) {
      case Reading.Refused<PopulationFile> refused -> refused;
      case Reading.Read<PopulationFile> read
          when !isDespiteDoubts && !read.value().doubts().isEmpty() ->
          new Reading.Refused<>(
              Stream.concat(
                      Stream.of(
                          population
                              + ": whoever made this population doubts it: make it from more"
                              + " courses, or forecast with --despite-doubts"),
                      read.value().doubts().stream().map(doubt -> population + ": " + doubt))
                  .toList());
      case Reading.Read<PopulationFile> read -> read;
    };
  }

  private Reading<PopulationFile> readDocument() throws IOException {
    var shipped = ShippedPopulations.document(population);
    if (shipped.isPresent()) {
      return PopulationFile.read(shipped.get());
    }
    try {
      String text = Files.readString(Path.of(population), StandardCharsets.UTF_8);
      Reading<PopulationFile> reading = PopulationFile.read(text);
      return reading.found().isPresent()
          ? reading
          : new Reading.Refused<>(
              reading.faults().stream().map(fault -> population + ": " + fault).toList());
    } catch (NoSuchFileException missing) {
      return Reading.refused(
          "There is no population file "
              + population
              + ": give a path, or one of "
              + ShippedPopulations.names());
    } catch (java.nio.charset.CharacterCodingException notText) {
      return Reading.refused(population + ": this is not UTF-8 text: save the file as UTF-8");
    }
  }

  private static Reading<Double> readNumber(
      String option, String text, double least, double most, String accepted) {
    if (DECIMAL.matcher(text).matches()) {
      double number = Double.parseDouble(text);
      if (number >= least && number <= most) {
        return Reading.of(number);
      }
    }
    return Reading.refused(
        option + ": \"" + text + "\" was given: write a number " + accepted + ", such as 1");
  }

  /** One fault for each man whose group the population does not hold. */
  private static List<String> unknownGroups(List<OneMan> men, Population population) {
    return men.stream()
        .filter(man -> population.meanOf(man.group()).isEmpty())
        .map(
            man ->
                man.place()
                    + ": \""
                    + man.group()
                    + "\" was given, which the population does not hold: it holds "
                    + new TreeSet<>(population.gammas().keySet()))
        .toList();
  }

  private static ForecastAnswer.Patient forecast(
      Population population, OneMan man, List<Given> asked, Optional<AskedDelivery> delivery) {
    Requirement requirement = Requirement.of(population, man.group(), man.trials());
    return new ForecastAnswer.Patient(
        man.name(),
        man.group(),
        man.trials().size(),
        requirement.mean(),
        requirement.standardDeviation(),
        asked.stream().map(given -> line(requirement, given, delivery)).toList());
  }

  private static ForecastAnswer.Line line(
      Requirement requirement, Given given, Optional<AskedDelivery> delivery) {
    double logDose = given.logDose();
    return new ForecastAnswer.Line(
        given.volume(),
        requirement.forecast(logDose),
        requirement.range(logDose),
        requirement.medianMinutesIfUseful(logDose),
        delivery
            .map(one -> one.of(given.volume()))
            .map(
                budget ->
                    new ForecastAnswer.Delivered(budget, budget.forecast(requirement, logDose))));
  }

  private static Trial trial(PreparationChoice.Line line) {
    return new Trial(line.given().logDose(), line.said().grade(), line.said().lasted());
  }
}
