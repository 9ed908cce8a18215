package rungwise.checks.topics;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import rungwise.dosing.Dosing;
import rungwise.dosing.decision.Decision;
import rungwise.dosing.guard.CourseGuards;
import rungwise.dosing.guard.DoseGuards;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.Verdict;
import rungwise.dosing.history.Circumstances;
import rungwise.dosing.history.History;
import rungwise.dosing.history.Question;
import rungwise.dosing.history.Readiness;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;
import rungwise.dosing.ladder.LadderProposal;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.protocol.ProtocolAmount;
import rungwise.dosing.screening.CardiacRisk;
import rungwise.dosing.screening.Condition;
import rungwise.dosing.screening.ErectileScore;
import rungwise.dosing.screening.Finding;
import rungwise.dosing.screening.HeartFailure;
import rungwise.dosing.screening.Screening;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Volume;

/** What a condition, a medicine or a score means for a man. */
final class ScreeningTopics {

  private static final Instant NOW = Instant.parse("2026-01-05T00:00:00Z");
  private static final Preparation VIAL = SamplePreparations.ALPROSTADIL_20;
  private static final Volume MICROLITRE = Volume.ofMicrolitres(1);
  private static final int MANY_FACTORS = 3;

  private ScreeningTopics() {}

  static void addTo(TopicTable table) {
    table
        .on("contraindication", ScreeningTopics::condition)
        .on("caution", ScreeningTopics::condition)
        .on("stop rule", ScreeningTopics::stopRule)
        .on("cardiac risk class", ScreeningTopics::cardiacRisk)
        .on("cardiac action", ScreeningTopics::cardiacAction)
        .on("PDE5 and injection", ScreeningTopics::pde5)
        .on("rescue interaction", ScreeningTopics::rescue)
        .on("alprostadil caution", ScreeningTopics::careAbove)
        .on("IIEF-5 band", ScreeningTopics::band)
        .on("D.score", "iief5_band", ScreeningTopics::bandWithHyphens);
  }

  private static Optional<Condition> conditionOf(String token) {
    return switch (token) {
      case "sickle_cell_anaemia", "sickle_cell_trait" -> Optional.of(Condition.SICKLE_CELL);
      case "multiple_myeloma", "leukaemia" -> Optional.of(Condition.MYELOMA_OR_LEUKAEMIA);
      case "penile_implant" -> Optional.of(Condition.PENILE_IMPLANT);
      case "sexual_activity_inadvisable" -> Optional.of(Condition.SEX_INADVISABLE);
      case "penile_angulation", "cavernosal_fibrosis", "peyronie" ->
          Optional.of(Condition.CURVATURE_OR_SCARRING);
      case "hypersensitivity" -> Optional.of(Condition.HYPERSENSITIVITY);
      case "bleeding_disorder" -> Optional.of(Condition.BLEEDING_DISORDER);
      case "venous_leak", "cavernosal_venous_leak" -> Optional.of(Condition.VENOUS_LEAK);
      case "warfarin", "heparin" -> Optional.of(Condition.ANTICOAGULANT);
      default -> Optional.empty();
    };
  }

  private static Question asked(Screening screening, Protocol protocol, Preparation preparation) {
    var ladder =
        LadderProposal.of(protocol, preparation, Barrels.U100_1, AetiologyGroup.VASCULOGENIC)
            .orThrow()
            .ladder();
    return new Question(
        AetiologyGroup.VASCULOGENIC,
        screening,
        Set.of(Readiness.values()),
        protocol,
        ladder,
        History.EMPTY,
        Optional.empty(),
        Circumstances.NONE,
        NOW);
  }

  private static Screening with(Condition condition) {
    return Screening.all(rungwise.dosing.screening.Answer.NO, NOW)
        .with(condition, rungwise.dosing.screening.Answer.YES, NOW);
  }

  private static Optional<Verdict> verdictOn(Condition condition) {
    return CourseGuards.ask(asked(with(condition), SampleProtocol.usVialAndSyringe(), VIAL))
        .stream()
        .findFirst();
  }

  private static Answer condition(Input input) {
    input.note("jurisdiction");
    if (!input.text("agent").startsWith("alprostadil")) {
      throw new InputFault("no row is answered for " + input.text("agent"));
    }
    if (input.text("condition").equals("combined_with_other_vasoactive_ICI_agent")) {
      return Answer.words(
          Readiness.neededFor(SamplePreparations.THREE_DRUG).contains(Readiness.OFF_LABEL_CONSENT)
              ? "not_recommended_by_label"
              : "on_label");
    }
    Condition condition = input.one("condition", ScreeningTopics::conditionOf);
    return Answer.words(verdictOn(condition).map(one -> word(one, condition)).orElse("nothing"));
  }

  private static String word(Verdict verdict, Condition condition) {
    return switch (verdict.rule()) {
      case CONTRAINDICATED -> "contraindicated";
      case DECISION_MISSING -> "avoid";
      case CAUTION ->
          condition.action().contains("5 minutes") ? "caution_bleeding_compress_5_min" : "caution";
      default -> verdict.rule().name();
    };
  }

  private static Answer stopRule(Input input) {
    input.one(
        "finding",
        token ->
            token.equals("penile_angulation_or_fibrosis_on_review")
                ? Optional.of(Condition.CURVATURE_OR_SCARRING)
                : Optional.empty());
    Question question =
        asked(with(Condition.CURVATURE_OR_SCARRING), SampleProtocol.usVialAndSyringe(), VIAL);
    Decision decision = Dosing.advise(question).decision();
    return Answer.words(decision instanceof Decision.Stop ? "stop_treatment" : "go_on");
  }

  private static Answer cardiacRisk(Input input) {
    CardiacRisk risk = CardiacRisk.LOW;
    for (CardiacRisk one : risks(input)) {
      risk = one.compareTo(risk) > 0 ? one : risk;
    }
    return Answer.words(risk.words());
  }

  /** The class of each thing that the row says of him. */
  private static List<CardiacRisk> risks(Input input) {
    Optional<CardiacRisk> infarction =
        input.find("mi_days_ago").map(Integer::parseInt).map(CardiacRisk::afterInfarction);
    Optional<CardiacRisk> failure =
        input.find("nyha").map(Integer::parseInt).map(nyha -> failure(input, nyha));
    Optional<CardiacRisk> factors =
        input
            .find("cad_risk_factors")
            .map(Integer::parseInt)
            .filter(count -> count >= MANY_FACTORS)
            .flatMap(count -> Condition.THREE_RISK_FACTORS.risk());
    Optional<CardiacRisk> angina =
        input.find("angina").map(word -> anginaOf(word)).flatMap(Condition::risk);
    Optional<CardiacRisk> arrhythmia =
        input
            .find("arrhythmia")
            .filter("high_risk"::equals)
            .flatMap(word -> Condition.HIGH_RISK_ARRHYTHMIA.risk());
    Optional<CardiacRisk> pressure =
        input
            .find("hypertension")
            .filter("uncontrolled"::equals)
            .flatMap(word -> Condition.UNCONTROLLED_PRESSURE.risk());
    Optional<CardiacRisk> revascularised =
        input.find("revascularised").flatMap(word -> Condition.CORONARY_DISEASE.risk());
    return Stream.of(infarction, failure, factors, angina, arrhythmia, pressure, revascularised)
        .flatMap(Optional::stream)
        .toList();
  }

  private static Condition anginaOf(String word) {
    return word.equals("unstable") ? Condition.UNSTABLE_ANGINA : Condition.STABLE_ANGINA;
  }

  private static CardiacRisk failure(Input input, int nyha) {
    return input
        .find("scheme")
        .map(
            scheme ->
                switch (scheme) {
                  case "EAU2013" -> HeartFailure.EAU_2013;
                  case "NatRev2016" -> HeartFailure.NATURE_REVIEWS_2016;
                  default -> throw new InputFault("no table is called " + scheme);
                })
        .map(table -> table.riskOf(nyha))
        .orElseGet(() -> HeartFailure.stricter(nyha));
  }

  private static Answer cardiacAction(Input input) {
    CardiacRisk risk =
        input.one(
            "class",
            token ->
                Arrays.stream(CardiacRisk.values())
                    .filter(one -> one.words().equals(token))
                    .findFirst());
    return Answer.words(
        switch (risk) {
          case LOW -> "proceed";
          case INTERMEDIATE -> "test_first";
          case HIGH ->
              Condition.UNSTABLE_ANGINA.findingFor(VIAL) == Finding.CONTRAINDICATION
                  ? "defer_sexual_activity_and_ICI_until_stabilised"
                  : "go_on";
        });
  }

  private static Answer pde5(Input input) {
    input.note("visit");
    boolean taken = input.text("pde5_taken_within_24h").equals("true");
    boolean warns =
        taken
            && verdictOn(Condition.PDE5_INHIBITOR)
                .filter(verdict -> verdict.rule() == GuardRule.CAUTION)
                .isPresent();
    return Answer.words(warns ? "warn_or_defer" : "nothing");
  }

  private static Answer rescue(Input input) {
    input.one(
        "rescue", token -> token.equals("phenylephrine") ? Optional.of(token) : Optional.empty());
    input.one("patient_on", token -> token.equals("MAOI") ? Optional.of(token) : Optional.empty());
    return Answer.words(
        verdictOn(Condition.MAO_INHIBITOR)
            .filter(Verdict::isHardStop)
            .map(verdict -> "avoid_or_extreme_caution")
            .orElse("nothing"));
  }

  private static Answer careAbove(Input input) {
    ProtocolAmount dose = SampleProtocol.alprostadil(input, "dose_mcg");
    boolean isAtRisk = input.text("cardiovascular_risk_factors").equals("true");
    Screening screening =
        isAtRisk
            ? with(Condition.THREE_RISK_FACTORS)
            : Screening.all(rungwise.dosing.screening.Answer.NO, NOW);
    String country = input.text("jurisdiction");
    return SampleProtocol.of(country)
        .<Answer>map(
            protocol -> {
              Volume volume =
                  dose.in(SamplePreparations.ALPROSTADIL_40).orElseThrow().roundDownTo(MICROLITRE);
              Question question =
                  asked(screening, startingAtFive(protocol), SamplePreparations.ALPROSTADIL_40);
              boolean isHeld =
                  DoseGuards.ask(question, volume).stream()
                      .anyMatch(verdict -> verdict.rule() == GuardRule.CARE_ABOVE);
              return Answer.words(isHeld ? "caution_over_20" : "no_caution");
            })
        .orElseGet(() -> SampleProtocol.none(country));
  }

  /** The stronger vial cannot measure the lowest start; the guard does not depend on it. */
  private static Protocol startingAtFive(Protocol protocol) {
    Protocol.Start first = protocol.starts().getFirst();
    ProtocolAmount higher =
        protocol.steps().getFirst().upTo().plus(protocol.steps().getLast().largest());
    return new Protocol(
        protocol.name(),
        protocol.version(),
        protocol.title(),
        protocol.sample(),
        protocol.components(),
        List.of(new Protocol.Start(Set.of(AetiologyGroup.values()), higher, first.source())),
        protocol.steps(),
        List.of(),
        protocol.ceiling(),
        protocol.limits(),
        protocol.more());
  }

  private static Answer band(Input input) {
    BigDecimal total = input.decimal("score");
    return Answer.words(
        ErectileScore.of(total.intValueExact())
            .map(score -> token(score.band()))
            .orElse("invalid"));
  }

  /** The same bands, as the other file writes them: "mild-moderate". */
  private static Answer bandWithHyphens(Input input) {
    input.note("op");
    int total = input.decimal("score").intValueExact();
    return Answer.words(
        ErectileScore.of(total)
            .map(score -> token(score.band()).replace("_to_", "-").replace('_', '-'))
            .orElse("invalid"));
  }

  private static String token(ErectileScore.Band band) {
    return band == ErectileScore.Band.BELOW_THE_BANDS
        ? "unclassified_low"
        : band.name().toLowerCase(Locale.ROOT);
  }
}
