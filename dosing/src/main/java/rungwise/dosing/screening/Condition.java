package rungwise.dosing.screening;

import java.util.Arrays;
import java.util.Optional;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.source.Citation;
import rungwise.dosing.source.Seen;
import rungwise.dosing.source.Source;

/**
 * Every condition that is asked about: its words, what it means for any preparation and for one
 * with phentolamine, what to do, and its source, in one table.
 *
 * <p>Where two sources class a heart condition differently, the stricter one stands here.
 */
public enum Condition {
  SICKLE_CELL(
      Topic.BLOOD,
      "Sickle cell disease or trait",
      Finding.CONTRAINDICATION,
      "An erection that does not go down is likely.",
      core("predisposition to priapism")),
  MYELOMA_OR_LEUKAEMIA(
      Topic.BLOOD,
      "Multiple myeloma or leukaemia",
      Finding.CONTRAINDICATION,
      "An erection that does not go down is likely.",
      core("predisposition to priapism")),
  BLEEDING_DISORDER(
      Topic.BLOOD,
      "A bleeding disorder",
      Finding.CONTRAINDICATION,
      "Bleeding into the shaft.",
      Source.read(Citation.EAU_SEXUAL_HEALTH, "intracavernous injections, contraindications")),
  LONG_ERECTION_BEFORE(
      Topic.BLOOD,
      "An erection of 4 hours or more at any time before",
      Finding.DECISION,
      "Find out why and how it ended; a lower start or another treatment.",
      Source.read(Citation.EAU_SEXUAL_HEALTH, "contraindications: risk of priapism")),

  CURVATURE_OR_SCARRING(
      Topic.PENIS,
      "Curvature, angulation, scarring (fibrosis) or Peyronie's disease",
      Finding.CONTRAINDICATION,
      "Stop; it may be resumed if it subsides.",
      core("contraindications")),
  PENILE_IMPLANT(
      Topic.PENIS,
      "A penile implant",
      Finding.CONTRAINDICATION,
      "Injection damages it.",
      core("contraindications")),
  VENOUS_LEAK(
      Topic.PENIS,
      "A known venous leak",
      Finding.DECISION,
      "The drug reaches the circulation: blood pressure may fall.",
      Source.read(Citation.US_SYRINGE_LABEL, "5: avoid with known cavernosal venous leak")),

  SEX_INADVISABLE(
      Topic.HEART,
      "A doctor has advised against sexual activity",
      Finding.CONTRAINDICATION,
      "No treatment that makes it possible.",
      core("contraindications")),
  UNSTABLE_ANGINA(
      Topic.HEART,
      "Unstable angina",
      CardiacRisk.HIGH,
      Finding.CONTRAINDICATION,
      CardiacRisk.SOURCE),
  UNCONTROLLED_PRESSURE(
      Topic.HEART,
      "Uncontrolled blood pressure",
      CardiacRisk.HIGH,
      Finding.CONTRAINDICATION,
      CardiacRisk.SOURCE),
  INFARCTION_UNDER_2_WEEKS(
      Topic.HEART,
      "Myocardial infarction less than 2 weeks ago",
      CardiacRisk.HIGH,
      Finding.CONTRAINDICATION,
      CardiacRisk.SOURCE),
  HIGH_RISK_ARRHYTHMIA(
      Topic.HEART,
      "A high-risk arrhythmia",
      CardiacRisk.HIGH,
      Finding.CONTRAINDICATION,
      CardiacRisk.SOURCE),
  SEVERE_CARDIOMYOPATHY(
      Topic.HEART,
      "Severe cardiomyopathy",
      CardiacRisk.HIGH,
      Finding.CONTRAINDICATION,
      CardiacRisk.SOURCE),
  HEART_FAILURE_3_OR_4(
      Topic.HEART,
      "Heart failure, NYHA class III or IV",
      CardiacRisk.HIGH,
      Finding.CONTRAINDICATION,
      CardiacRisk.SOURCE),
  HEART_FAILURE_2(
      Topic.HEART,
      "Heart failure, NYHA class II",
      CardiacRisk.INTERMEDIATE,
      Finding.DECISION,
      CardiacRisk.SOURCE),
  INFARCTION_2_TO_6_WEEKS(
      Topic.HEART,
      "Myocardial infarction 2 to 6 weeks ago",
      CardiacRisk.INTERMEDIATE,
      Finding.DECISION,
      CardiacRisk.SOURCE),
  STROKE_OR_ARTERIAL_DISEASE(
      Topic.HEART,
      "Stroke, or arterial disease of the legs",
      CardiacRisk.INTERMEDIATE,
      Finding.DECISION,
      CardiacRisk.SOURCE),
  THREE_RISK_FACTORS(
      Topic.HEART,
      "Three or more coronary risk factors",
      CardiacRisk.INTERMEDIATE,
      Finding.DECISION,
      CardiacRisk.SOURCE),
  PAST_INFARCTION(
      Topic.HEART,
      "Myocardial infarction more than 6 weeks ago",
      CardiacRisk.LOW,
      Finding.DECISION,
      phentolamine()),
  STABLE_ANGINA(Topic.HEART, "Stable angina", CardiacRisk.LOW, Finding.DECISION, phentolamine()),
  CORONARY_DISEASE(
      Topic.HEART,
      "Other evidence of coronary artery disease, treated or not (stent, bypass)",
      CardiacRisk.LOW,
      Finding.DECISION,
      phentolamine()),

  HYPERSENSITIVITY(
      Topic.MEDICINES,
      "Hypersensitivity to a component",
      Finding.CONTRAINDICATION,
      "Choose a preparation without it.",
      core("contraindications")),
  MAO_INHIBITOR(
      Topic.MEDICINES,
      "An MAO inhibitor",
      Finding.DECISION,
      "Phenylephrine, the usual rescue, may cause a hypertensive crisis: plan the rescue before"
          + " any injection at home.",
      new Source.Published(Citation.PHENYLEPHRINE_LABEL, "interactions", Seen.FROM_MEMORY)),
  ANTICOAGULANT(
      Topic.MEDICINES,
      "An anticoagulant",
      Finding.CAUTION,
      "Compress the place for 5 minutes.",
      Source.read(Citation.US_SYRINGE_LABEL, "5: compress 5 minutes")),
  PDE5_INHIBITOR(
      Topic.MEDICINES,
      "A PDE5 inhibitor",
      Finding.CAUTION,
      "Not with an injection: no published figure says how long to wait, so the clinic's own"
          + " hours stand in the protocol.",
      new Source.CommonPractice("ask about recent use; no published figure for the hours")),
  ALPHA_BLOCKER(
      Topic.MEDICINES,
      "An alpha-blocker",
      Finding.CAUTION,
      "Blood pressure may fall, with phentolamine most: measure it before and after.",
      new Source.CommonPractice("additive fall of blood pressure")),
  NITRATE_OR_PRESSURE_MEDICINE(
      Topic.MEDICINES,
      "A nitrate or another medicine for blood pressure",
      Finding.CAUTION,
      "Blood pressure may fall, with phentolamine most: measure it before and after.",
      new Source.CommonPractice("additive fall of blood pressure")),
  TRAZODONE(
      Topic.MEDICINES,
      "Trazodone",
      Finding.CAUTION,
      "It can cause long erections by itself: start low, ask about every duration.",
      new Source.CommonPractice("a medicine known for long erections")),
  ANTIPSYCHOTIC(
      Topic.MEDICINES,
      "An antipsychotic",
      Finding.CAUTION,
      "It can cause long erections by itself: start low, ask about every duration.",
      new Source.CommonPractice("a medicine known for long erections"));

  private final Topic topic;
  private final String words;
  private final Finding finding;
  private final Finding withPhentolamine;
  private final Optional<CardiacRisk> risk;
  private final String action;
  private final Source source;

  Condition(Topic topic, String words, Finding finding, String action, Source source) {
    this.topic = topic;
    this.words = words;
    this.finding = finding;
    this.withPhentolamine = finding;
    this.risk = Optional.empty();
    this.action = action;
    this.source = source;
  }

  /** A heart condition; a low class asks for a decision only where phentolamine is given. */
  Condition(Topic topic, String words, CardiacRisk risk, Finding withPhentolamine, Source source) {
    this.topic = topic;
    this.words = words;
    this.finding = risk == CardiacRisk.LOW ? Finding.NOTHING : withPhentolamine;
    this.withPhentolamine = withPhentolamine;
    this.risk = Optional.of(risk);
    this.action =
        risk == CardiacRisk.LOW
            ? "Cardiac class low, yet the label of phentolamine forbids it with coronary disease."
            : "Cardiac class " + risk.words() + ": " + risk.action() + ".";
    this.source = source;
  }

  private static Source core(String place) {
    return Source.read(Citation.EU_CORE_SAFETY_2012, place);
  }

  private static Source phentolamine() {
    return Source.remembered(Citation.US_PHENTOLAMINE_LABEL, "contraindications");
  }

  public Topic topic() {
    return topic;
  }

  /** What is asked: "Sickle cell disease or trait". */
  public String words() {
    return words;
  }

  /** What to do if the answer is yes, or why it is asked. */
  public String action() {
    return action;
  }

  public Source source() {
    return source;
  }

  /** The class of a heart condition. */
  public Optional<CardiacRisk> risk() {
    return risk;
  }

  /** What it means for a man who is to get that preparation. */
  public Finding findingFor(Preparation preparation) {
    return preparation.holds(Component.PHENTOLAMINE) ? withPhentolamine : finding;
  }

  /** Whether it forbids a dose of any preparation, or waits for a decision. */
  public boolean mayForbid() {
    return finding.mustBeKnown() || withPhentolamine.mustBeKnown();
  }

  /** The condition of a name, in capitals as it is written here. */
  public static Optional<Condition> of(String name) {
    return Arrays.stream(values()).filter(one -> one.name().equals(name)).findFirst();
  }
}
