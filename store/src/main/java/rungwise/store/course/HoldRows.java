package rungwise.store.course;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jooq.Result;
import org.jooq.TableRecord;
import rungwise.dosing.guard.GuardRule;
import rungwise.dosing.guard.OverriddenHold;
import rungwise.dosing.history.Fact;
import rungwise.store.schema.tables.records.DoseSignedHoldFactRecord;
import rungwise.store.schema.tables.records.DoseSignedHoldRecord;
import rungwise.store.words.Tokens;

/**
 * The holds that signatures overrode, as their rows.
 *
 * @param before the rules of those that were written before their facts were kept, by the entry's
 *     id
 * @param holds the others, by the entry's id
 * @param facts what they had read, by the entry's id
 */
record HoldRows(
    Map<String, List<String>> before,
    Map<String, Result<DoseSignedHoldRecord>> holds,
    Map<String, Result<DoseSignedHoldFactRecord>> facts) {

  static List<TableRecord<?>> rows(Set<OverriddenHold> overridden) {
    var holds = new ArrayList<TableRecord<?>>();
    var facts = new ArrayList<TableRecord<?>>();
    Comparator<OverriddenHold> order = Comparator.comparing(OverriddenHold::rule);
    for (OverriddenHold one :
        overridden.stream().sorted(order.thenComparing(OverriddenHold::toString)).toList()) {
      int line = holds.size() + 1;
      var row = new DoseSignedHoldRecord();
      row.setLine(line);
      row.setGuardRule(Tokens.of(one.rule()));
      row.setUntilAt(one.until().orElse(null));
      holds.add(row);
      one.facts().forEach(fact -> facts.add(row(fact, line, facts.size() + 1)));
    }
    return Stream.concat(holds.stream(), facts.stream()).toList();
  }

  private static DoseSignedHoldFactRecord row(Fact fact, int hold, int line) {
    var row = new DoseSignedHoldFactRecord();
    row.setLine(line);
    row.setHold(hold);
    row.setWhat(fact.what());
    switch (fact) {
      case Fact.Said said -> row.setSaid(said.value());
      case Fact.Happened happened -> row.setHappenedAt(happened.at());
      case Fact.Which which -> row.setWhich(which.id());
    }
    return row;
  }

  /** What the signature of an entry overrode. */
  Set<OverriddenHold> of(String entry) {
    Stream<OverriddenHold> old =
        before.getOrDefault(entry, List.of()).stream()
            .map(rule -> new OverriddenHold(ruleOf(rule), List.of(), Optional.empty()));
    Stream<OverriddenHold> own =
        Optional.ofNullable(holds.get(entry)).stream()
            .flatMap(Result::stream)
            .map(
                row ->
                    new OverriddenHold(
                        ruleOf(row.getGuardRule()),
                        factsOf(entry, row.getLine()),
                        Optional.ofNullable(row.getUntilAt())));
    return Stream.concat(old, own).collect(Collectors.toUnmodifiableSet());
  }

  private static GuardRule ruleOf(String token) {
    return Tokens.read(GuardRule.class, token);
  }

  private List<Fact> factsOf(String entry, int hold) {
    return Optional.ofNullable(facts.get(entry)).stream()
        .flatMap(Result::stream)
        .filter(row -> row.getHold() == hold)
        .map(HoldRows::fact)
        .toList();
  }

  private static Fact fact(DoseSignedHoldFactRecord row) {
    String what = row.getWhat();
    if (row.getHappenedAt() != null) {
      return new Fact.Happened(what, row.getHappenedAt());
    }
    return row.getWhich() != null
        ? new Fact.Which(what, row.getWhich())
        : new Fact.Said(what, row.getSaid());
  }
}
