package rungwise.checks.adversary;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import rungwise.checks.adversary.law.Ledger;
import rungwise.checks.adversary.law.Minutes;
import rungwise.checks.adversary.law.Mix;
import rungwise.checks.adversary.law.Told;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.clinic.course.EntryId;
import rungwise.clinic.room.EndDraft;
import rungwise.clinic.room.StartDraft;
import rungwise.clinic.screening.ScreeningDraft;
import rungwise.clinic.supply.VialDraft;
import rungwise.clinic.teaching.ReadinessDraft;
import rungwise.clinic.titration.ReportDraft;
import rungwise.clinic.titration.ReportPart;
import rungwise.clinic.titration.SignDraft;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.history.Place;
import rungwise.dosing.known.Component;
import rungwise.dosing.screening.Condition;

/** The product's forms, filled in. Everything that a form asks for stands here and nowhere else. */
final class Desk {

  private static final List<Component> COMPONENTS =
      List.of(Component.PAPAVERINE, Component.PHENTOLAMINE, Component.ALPROSTADIL);

  private Desk() {}

  /** The number of a line: units of a hundredth of a millilitre, or the volume. */
  static String mark(long microlitres, String barrel) {
    int places = barrel.startsWith("ml") ? 3 : 1;
    return BigDecimal.valueOf(microlitres, places).stripTrailingZeros().toPlainString();
  }

  static ReportDraft report(Told.Said said, String barrel, Optional<EntryId> corrects) {
    String soft = said.soft();
    boolean isBetween = soft.equals("between");
    ReportDraft draft =
        ReportDraft.EMPTY
            .with(ReportPart.IDENTIFIED, "yes")
            .with(ReportPart.DATE, Minutes.date(said.at()))
            .with(ReportPart.TIME, Minutes.time(said.at()))
            .with(ReportPart.BARREL, barrel)
            .with(ReportPart.MARK, mark(said.drawn(), barrel))
            .with(ReportPart.GRADE, String.valueOf(said.grade()))
            .with(ReportPart.SOFT, soft)
            .with(ReportPart.EXACT_MINUTES, soft.equals("exactly") ? said.first() + "" : "")
            .with(ReportPart.LEAST_MINUTES, soft.equals("at_least") ? said.first() + "" : "")
            .with(ReportPart.FROM_MINUTES, isBetween ? said.first() + "" : "")
            .with(ReportPart.BEFORE_MINUTES, isBetween ? said.second() + "" : "")
            .with(ReportPart.CAUSES, said.asked())
            .with(ReportPart.PLACE, said.place())
            .with(ReportPart.VIAL, said.vial().isEmpty() ? ReportPart.VIAL_NOT_KNOWN : said.vial());
    return corrects
        .map(report -> draft.correcting(report).with(ReportPart.REASON, "asked again"))
        .orElse(draft);
  }

  /** Mostly the last vial; another one by mistake, or none where nobody knows afterwards. */
  static Optional<Ledger.Vial> inHand(Ledger ledger, SplittableRandom random, boolean given) {
    List<Ledger.Vial> vials = ledger.vials;
    if (vials.isEmpty() || (given && random.nextInt(6) == 0)) {
      return Optional.empty();
    }
    return random.nextInt(6) == 0
        ? Optional.of(vials.get(random.nextInt(vials.size())))
        : ledger.vial();
  }

  /** Which vial it was, as a form says it. */
  static String vial(Optional<Ledger.Vial> vial) {
    return vial.map(Ledger.Vial::entry).orElse(ReportPart.VIAL_NOT_KNOWN);
  }

  static StartDraft start(long minute, long microlitres, String barrel, boolean given) {
    return new StartDraft(
        Minutes.date(minute),
        Minutes.time(minute),
        Occurrence.NOT_SAID,
        mark(microlitres, barrel),
        "HIS_LEFT",
        "2",
        "128",
        "76",
        "72",
        given);
  }

  static EndDraft end(long minute, boolean left, int grade, String asked) {
    return new EndDraft(
        Minutes.date(minute),
        Minutes.time(minute),
        Occurrence.NOT_SAID,
        left,
        String.valueOf(grade),
        asked,
        Set.of(),
        "",
        "118",
        "70",
        "80",
        "seen");
  }

  /** What a prescriber signs; until is -1 where nothing is overridden until a day. */
  record Signing(
      long volume,
      boolean atHome,
      long basis,
      boolean proposed,
      Set<GuardRule> overridden,
      long until,
      boolean next) {}

  static SignDraft sign(Signing signing) {
    return new SignDraft(
        signing.volume(),
        signing.atHome() ? Place.HOME : Place.CLINIC,
        signing.basis(),
        signing.proposed() ? "" : "MORE_CAUTION",
        signing.overridden(),
        signing.until() < 0 ? "" : Minutes.date(signing.until()),
        "considered",
        signing.next());
  }

  /** A vial; made and opened may be -1, and days 0, where they are not said. */
  static VialDraft vial(Mix mix, long made, long lastDay, long opened, int days) {
    Map<Component, String> strengths = new EnumMap<>(Component.class);
    for (int i = 0; i < COMPONENTS.size(); i++) {
      if (mix.has(i)) {
        strengths.put(COMPONENTS.get(i), mix.number(i));
      }
    }
    return new VialDraft(
        "L-1",
        strengths,
        made < 0 ? "" : Minutes.date(made),
        Minutes.date(lastDay * Ledger.DAY),
        opened < 0 ? "" : Minutes.date(opened),
        "",
        opened < 0 || days == 0 ? "" : String.valueOf(days),
        "");
  }

  static ScreeningDraft answers(String answer) {
    return new ScreeningDraft(
        Arrays.stream(Condition.values())
            .collect(Collectors.toMap(Condition::name, condition -> answer)),
        /* stillTrue= */ false);
  }

  static ScreeningDraft answer(Condition condition, String answer) {
    return new ScreeningDraft(Map.of(condition.name(), answer), /* stillTrue= */ false);
  }

  static ScreeningDraft stillTrue() {
    return new ScreeningDraft(Map.of(), /* stillTrue= */ true);
  }

  static ReadinessDraft ready(String item, long minute) {
    return item.equals("EMERGENCY_PLAN")
        ? new ReadinessDraft(item, Minutes.date(minute), "North", "555 0100", "a taxi", "")
        : new ReadinessDraft(item, Minutes.date(minute), "", "", "", "");
  }
}
