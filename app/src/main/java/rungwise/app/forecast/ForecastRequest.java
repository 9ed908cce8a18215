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
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import rungwise.dosing.response.Given;
import rungwise.dosing.response.Population;
import rungwise.dosing.response.Requirement;
import rungwise.dosing.response.Trial;
import rungwise.files.PopulationFile;
import rungwise.files.ShippedPopulations;
import rungwise.files.history.HistoryFile;
import rungwise.files.history.PreparationChoice;
import rungwise.quantities.Reading;
import rungwise.quantities.Volume;

/**
 * What was typed after the verb "forecast", unread.
 *
 * @param history the path of a history file
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
    Path history,
    String population,
    String volumes,
    String potency,
    String strength,
    Optional<String> delivery,
    Optional<String> lost,
    Optional<String> preparations,
    boolean isDespiteDoubts) {

  private static final Pattern DECIMAL = Pattern.compile("[0-9]{1,6}(?:\\.[0-9]{1,20})?");
  private static final double MOST_POTENCY = 1.2;
  private static final double LEAST_STRENGTH = 0.05;
  private static final double MOST_STRENGTH = 20;

  /** The forecasts, or everything that is wrong with the request and its files. */
  public Reading<ForecastAnswer> answer() throws IOException {
    Reading<PopulationFile> populationRead = readPopulation();
    Reading<PreparationChoice.Chosen> historyRead =
        readHistory(populationRead.found().map(PopulationFile::referencePreparation));
    Reading<List<Volume>> volumesRead = VolumeList.read(volumes);
    Reading<Double> potencyRead =
        readNumber("--potency", potency, Double.MIN_VALUE, MOST_POTENCY, "above 0, at most 1.2");
    Reading<Double> strengthRead =
        readNumber("--strength", strength, LEAST_STRENGTH, MOST_STRENGTH, "from 0.05 to 20");
    var faults =
        new ArrayList<>(
            Stream.of(historyRead, populationRead, volumesRead, potencyRead, strengthRead)
                .flatMap(reading -> reading.faults().stream())
                .toList());
    Reading<Optional<AskedDelivery>> deliveryRead = readDelivery(volumesRead);
    faults.addAll(deliveryRead.faults());
    if (historyRead.found().isPresent() && populationRead.found().isPresent()) {
      faults.addAll(unknownGroups(historyRead.orThrow(), populationRead.orThrow().population()));
    }
    if (!faults.isEmpty()) {
      return new Reading.Refused<>(faults);
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
            used.referencePreparation(),
            used.doubts(),
            historyRead.orThrow().leftOut(),
            historyRead.orThrow().patients().entrySet().stream()
                .map(patient -> forecast(parameters, patient, asked, deliveryRead.orThrow()))
                .toList()));
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
    return switch (HistoryFile.read(history)) {
      case Reading.Refused<HistoryFile> refused -> new Reading.Refused<>(refused.faults());
      case Reading.Read<HistoryFile> read ->
          named.found().isEmpty()
              ? new Reading.Refused<>(named.faults())
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

  /** One fault for each patient, at his first line. */
  private static List<String> unknownGroups(
      PreparationChoice.Chosen history, Population population) {
    return history.patients().values().stream()
        .map(lines -> lines.getFirst().said())
        .filter(line -> population.meanOf(line.group()).isEmpty())
        .map(
            line ->
                "line "
                    + line.line()
                    + ": group: \""
                    + line.group()
                    + "\" was given, which the population does not hold: it holds "
                    + new TreeSet<>(population.gammas().keySet()))
        .toList();
  }

  private static ForecastAnswer.Patient forecast(
      Population population,
      Map.Entry<String, List<PreparationChoice.Line>> patient,
      List<Given> asked,
      Optional<AskedDelivery> delivery) {
    List<PreparationChoice.Line> lines = patient.getValue();
    Requirement requirement =
        Requirement.of(
            population,
            lines.getFirst().said().group(),
            lines.stream().map(ForecastRequest::trial).toList());
    return new ForecastAnswer.Patient(
        patient.getKey(),
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
