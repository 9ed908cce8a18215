package rungwise.clinic.protocols;

import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.protocol.Composition;
import rungwise.dosing.protocol.CountedOption;
import rungwise.dosing.protocol.Floor;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.protocol.ProtocolAmount;
import rungwise.dosing.protocol.ProtocolOptions;
import rungwise.dosing.source.Source;
import rungwise.dosing.source.Sourced;
import rungwise.quantities.Mass;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/**
 * Three samples, for tests: alprostadil from 1.25 or 2.5 mcg, then 5, then by 5 up to 60 mcg; a
 * three-drug mixture by 0.1 mL up to 0.5 mL; and the first again, which asks for more before home
 * use and holds from a later day.
 */
public final class LabelReader implements ProtocolReader {

  private static final String LABEL = "the label\n";
  private static final String MIXTURE = "the mixture\n";
  private static final String STRICT = "the label and more\n";

  /** What the third sample asks the emergency plan for. */
  public static final String QUESTION = "who stays with him that night";

  /** The first day of the third sample. */
  public static final LocalDate LATER = LocalDate.of(2026, 3, 10);

  /** Signed before a floor was; version 1 of "earlier". Reading it for signing refuses it. */
  public static final String EARLIER = "the label, signed earlier";

  /** Signed before a composition was asked for; version 2 of "earlier". */
  public static final String EARLIER_MIXTURE = "the mixture, signed earlier";

  /** The label with a maximum of 80 mcg, past every text; version 1 of "higher". */
  public static final String HIGHER = "the label, higher";

  private static final int MONTHS = 6;
  public static final int GRACE_DAYS = 30;
  private static final Pattern LIMITED = Pattern.compile("limited to ([0-9]+)");
  private static final Pattern WAITING = Pattern.compile("waiting for ([1-3])");
  private static final Pattern SECOND =
      Pattern.compile("up to ([0-9.]+) mcg, ([0-9]+) hours apart(?:, from ([0-9-]+))?");
  private static final Source HERE = new Source.Assumption("for a test");

  @Override
  public Reading<Protocol> read(String document) {
    Matcher limited = LIMITED.matcher(document);
    if (limited.matches()) {
      return Reading.of(limited(Integer.parseInt(limited.group(1))));
    }
    Matcher waiting = WAITING.matcher(document);
    if (waiting.matches()) {
      return Reading.of(waiting(Integer.parseInt(waiting.group(1))));
    }
    Matcher second = SECOND.matcher(document);
    if (second.matches()) {
      return Reading.of(
          secondOfWaiting(second.group(1), Integer.parseInt(second.group(2)), second.group(3)));
    }
    return switch (document) {
      case HIGHER -> Reading.of(higher());
      case LABEL -> Reading.of(label());
      case MIXTURE -> Reading.of(mixture());
      case STRICT -> Reading.of(strict());
      default -> Reading.refused("\"" + document + "\" is not one of the three");
    };
  }

  @Override
  public Reading<EarlierProtocol> readSigned(String document) {
    return switch (document) {
      case EARLIER ->
          Reading.of(new EarlierProtocol(earlier(label(), 1), List.of(Floor.SPACING), false));
      case EARLIER_MIXTURE ->
          Reading.of(
              new EarlierProtocol(
                  earlier(mixture().with(ProtocolOptions.NONE), 2), List.of(), true));
      default -> read(document).map(one -> new EarlierProtocol(one, List.of(), false));
    };
  }

  @Override
  public List<String> samples() {
    return List.of(LABEL, MIXTURE, STRICT);
  }

  @Override
  public Map<String, Object> parts(String document) {
    return Map.of("document", document);
  }

  @Override
  public String document(Map<String, Object> parts) {
    return parts.getOrDefault("document", "").toString();
  }

  /** The document of the label with a limit for the chance of 120 minutes, in 1000. */
  public static String limitedTo(int inThousand) {
    return "limited to " + inThousand;
  }

  private static Protocol higher() {
    Protocol one = label();
    return new Protocol(
        "higher",
        1,
        "Higher",
        /* sample= */ false,
        one.components(),
        one.starts(),
        one.steps(),
        one.strengths(),
        new Sourced<>(mcg("80"), HERE),
        one.limits(),
        one.more());
  }

  private static Protocol earlier(Protocol one, int version) {
    return new Protocol(
        "earlier",
        version,
        "Earlier",
        /* sample= */ false,
        one.components(),
        one.starts(),
        one.steps(),
        one.strengths(),
        one.ceiling(),
        one.limits(),
        one.more());
  }

  private static Protocol limited(int inThousand) {
    var chances =
        new Protocol.Chances(Optional.of(new Sourced<>(inThousand, HERE)), Optional.empty());
    return labelAs("limited", "Limited", /* sample= */ false, label().more().withChances(chances));
  }

  /** The document of the label that goes up after so many partial responses in a row. */
  public static String waitingFor(int responses) {
    return "waiting for " + responses;
  }

  private static Protocol waiting(int responses) {
    var after = new Protocol.AfterPartial(responses, HERE);
    return labelAs(
        "waiting",
        "Waiting",
        /* sample= */ false,
        label().more().withAfterPartial(Optional.of(after)));
  }

  private static Protocol labelAs(String name, String title, boolean sample, ProtocolOptions more) {
    return labelAs(name, title, sample, label().limits(), more);
  }

  private static Protocol labelAs(
      String name, String title, boolean sample, Protocol.Limits limits, ProtocolOptions more) {
    Protocol label = label();
    return new Protocol(
        name,
        1,
        title,
        sample,
        label.components(),
        label.starts(),
        label.steps(),
        label.strengths(),
        label.ceiling(),
        limits,
        more);
  }

  /** The second version of the protocol that waits, with another maximum and spacing. */
  public static String secondOfWaiting(String mcg, int hours, Optional<LocalDate> from) {
    return "up to "
        + mcg
        + " mcg, "
        + hours
        + " hours apart"
        + from.map(day -> ", from " + day).orElse("");
  }

  private static Protocol secondOfWaiting(String mcg, int hours, @Nullable String from) {
    Protocol first = waiting(1);
    return new Protocol(
        first.name(),
        2,
        first.title(),
        /* sample= */ false,
        first.components(),
        first.starts(),
        first.steps(),
        first.strengths(),
        new Sourced<>(mcg(mcg), HERE),
        first.limits().with(CountedOption.SPACING_HOURS, new Sourced<>(hours, HERE)),
        first.more().withFrom(Optional.ofNullable(from).map(LocalDate::parse)));
  }

  private static Protocol label() {
    Set<AetiologyGroup> higher =
        EnumSet.of(AetiologyGroup.VASCULOGENIC, AetiologyGroup.PSYCHOGENIC, AetiologyGroup.MIXED);
    return new Protocol(
        "label",
        1,
        "Label",
        true,
        Set.of(Component.ALPROSTADIL),
        List.of(
            new Protocol.Start(higher, mcg("2.5"), HERE),
            new Protocol.Start(EnumSet.complementOf(EnumSet.copyOf(higher)), mcg("1.25"), HERE)),
        List.of(
            new Protocol.Step(mcg("1.25"), mcg("1.25"), mcg("1.25"), HERE),
            new Protocol.Step(mcg("2.5"), mcg("2.5"), mcg("5"), HERE),
            new Protocol.Step(mcg("60"), mcg("5"), mcg("10"), HERE)),
        List.of(),
        new Sourced<>(mcg("60"), HERE),
        limits()
            .with(CountedOption.LAPSE_MONTHS, new Sourced<>(MONTHS, HERE))
            .with(CountedOption.GRACE_DAYS, new Sourced<>(GRACE_DAYS, HERE)),
        ProtocolOptions.NONE.withSameVisit(
            Optional.of(
                new Protocol.SameVisit(
                    TimeSpan.ofMinutes(60), true, Optional.of(mcg("2.5")), HERE))));
  }

  private static Protocol strict() {
    Protocol label = label();
    return labelAs(
        "strict",
        "Label and more",
        /* sample= */ true,
        label.limits().with(CountedOption.READINESS_MONTHS, new Sourced<>(MONTHS, HERE)),
        label
            .more()
            .withFrom(Optional.of(LATER))
            .withEmergencyPlan(List.of(new Sourced<>(QUESTION, HERE))));
  }

  private static Protocol mixture() {
    return new Protocol(
        "mixture",
        1,
        "Mixture",
        true,
        Set.of(Component.PAPAVERINE, Component.PHENTOLAMINE, Component.ALPROSTADIL),
        List.of(new Protocol.Start(EnumSet.allOf(AetiologyGroup.class), millilitres(100), HERE)),
        List.of(new Protocol.Step(millilitres(500), millilitres(100), millilitres(100), HERE)),
        List.of(),
        new Sourced<>(millilitres(500), HERE),
        limits(),
        ProtocolOptions.NONE.withComposition(
            Optional.of(Composition.of(SamplePreparations.THREE_DRUG))));
  }

  private static Protocol.Limits limits() {
    return Protocol.Limits.of(
        HERE,
        Map.of(
            CountedOption.SATISFACTORY_MINUTES, 60,
            CountedOption.SPACING_HOURS, 24,
            CountedOption.IN_SEVEN_DAYS, 3,
            CountedOption.REVIEW_MONTHS, 3,
            CountedOption.SCREENING_MONTHS, 12,
            CountedOption.FRESH_DAYS, 30,
            CountedOption.PDE5_HOURS, 72));
  }

  private static ProtocolAmount mcg(String number) {
    return new ProtocolAmount.Content(
        Component.ALPROSTADIL, Mass.parseMicrograms(number).orThrow());
  }

  private static ProtocolAmount millilitres(long microlitres) {
    return new ProtocolAmount.OfVolume(Volume.ofMicrolitres(microlitres));
  }
}
