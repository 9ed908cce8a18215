package rungwise.store.course;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jooq.Result;
import org.jooq.TableRecord;
import org.jspecify.annotations.Nullable;
import rungwise.dosing.decision.DecisionValues;
import rungwise.dosing.decision.DecisionValues.Kind;
import rungwise.dosing.decision.DecisionValues.Part;
import rungwise.dosing.decision.DecisionValues.Spoken;
import rungwise.dosing.decision.DecisionValues.Steps;
import rungwise.quantities.Volume;
import rungwise.store.schema.tables.records.DoseSignedDecisionRecord;
import rungwise.store.schema.tables.records.DoseSignedSpokenRecord;
import rungwise.store.words.Tokens;

/**
 * The values of signed advices, as their rows.
 *
 * @param spoken the rules that spoke, by the entry's id
 */
record DecisionRows(Map<String, Result<DoseSignedSpokenRecord>> spoken) {

  static List<TableRecord<?>> rows(DecisionValues values) {
    var rows = new ArrayList<TableRecord<?>>();
    var row = new DoseSignedDecisionRecord();
    row.setDecision(Tokens.of(values.kind()));
    row.setProposedMicrolitres(values.volume().map(Volume::microlitres).orElse(null));
    row.setNotBefore(values.notBefore().orElse(null));
    row.setChoice(values.choice());
    row.setProtocolKey(values.protocol());
    row.setEngine(values.engine());
    rows.add(row);
    int line = 0;
    for (Spoken one : values.spoken()) {
      line++;
      rows.add(row(one, line));
    }
    return rows;
  }

  private static DoseSignedSpokenRecord row(Spoken one, int line) {
    var row = new DoseSignedSpokenRecord();
    row.setLine(line);
    row.setPart(Tokens.of(one.part()));
    row.setSpokenRule(one.rule());
    row.setFromMicrolitres(one.steps().map(steps -> steps.from().microlitres()).orElse(null));
    row.setToMicrolitres(one.steps().map(steps -> steps.to().microlitres()).orElse(null));
    return row;
  }

  /** The values of an entry; empty if the row was written before they were kept. */
  Optional<DecisionValues> of(DoseSignedDecisionRecord row) {
    if (row.getEntryId() == null) {
      return Optional.empty();
    }
    return Optional.of(
        new DecisionValues(
            Tokens.read(Kind.class, row.getDecision()),
            volume(row.getProposedMicrolitres()),
            spokenOf(row.getEntryId()),
            Optional.ofNullable(row.getNotBefore()),
            row.getChoice(),
            row.getProtocolKey(),
            row.getEngine()));
  }

  private List<Spoken> spokenOf(String entry) {
    return Optional.ofNullable(spoken.get(entry)).stream()
        .flatMap(Result::stream)
        .map(
            row ->
                new Spoken(
                    Tokens.read(Part.class, row.getPart()),
                    row.getSpokenRule(),
                    volume(row.getFromMicrolitres())
                        .flatMap(
                            from -> volume(row.getToMicrolitres()).map(to -> new Steps(from, to)))))
        .toList();
  }

  private static Optional<Volume> volume(@Nullable Long microlitres) {
    return Optional.ofNullable(microlitres).map(Volume::ofMicrolitres);
  }
}
