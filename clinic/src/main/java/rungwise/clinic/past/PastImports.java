package rungwise.clinic.past;

import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.IntConsumer;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import rungwise.clinic.IdSource;
import rungwise.clinic.Transactions;
import rungwise.dosing.known.PreparationId;
import rungwise.dosing.syringe.Barrels;
import rungwise.quantities.Reading;

/** The use cases that bring in histories, and take an import back. */
public final class PastImports {

  private static final int LONGEST_NUMBER = 40;
  private static final int LONGEST_REASON = 2000;

  private final PastHistories histories;
  private final Predicate<PreparationId> isKnown;
  private final Transactions transactions;
  private final IdSource ids;
  private final InstantSource clock;

  /**
   * The use cases over these ports.
   *
   * @param isKnown whether the clinic has, or had, a preparation of this id
   */
  public PastImports(
      PastHistories histories,
      Predicate<PreparationId> isKnown,
      Transactions transactions,
      IdSource ids,
      InstantSource clock) {
    this.histories = histories;
    this.isKnown = isKnown;
    this.transactions = transactions;
    this.ids = ids;
    this.clock = clock;
  }

  /** What would be brought in, and every fault; a patient with a fault is set aside whole. */
  public ImportPlan plan(List<PastHistory> given) {
    Instant now = clock.instant();
    Set<String> there =
        histories.all().stream()
            .map(kept -> kept.history().recordKey())
            .collect(Collectors.toCollection(HashSet::new));
    var ready = new ArrayList<PastHistory>();
    var faults = new ArrayList<String>();
    for (PastHistory history : given) {
      int before = faults.size();
      if (history.patient().length() > LONGEST_NUMBER) {
        faults.add(
            at(history)
                + "patient: no record number is longer than "
                + LONGEST_NUMBER
                + " letters");
      }
      if (!there.add(history.recordKey())) {
        faults.add(
            at(history)
                + "patient: a history of this record number was brought in before: undo that import"
                + " first");
      }
      history.injections().forEach(one -> check(one, now, faults));
      if (faults.size() == before) {
        ready.add(history);
      }
    }
    return new ImportPlan(ready, faults, given.size() - ready.size());
  }

  private static String at(PastHistory history) {
    return "line " + history.injections().getFirst().line() + ": ";
  }

  private void check(PastInjection one, Instant now, List<String> faults) {
    String line = "line " + one.line() + ": ";
    one.setting()
        .filter(setting -> setting.at().isAfter(now))
        .ifPresent(setting -> faults.add(line + "time: this is in the future: correct it"));
    one.preparation()
        .filter(id -> !isKnown.test(id))
        .ifPresent(
            id ->
                faults.add(
                    line
                        + "preparation: \""
                        + id
                        + "\" is not one of the clinic's: enter it there first, or leave the"
                        + " column empty"));
    one.setting()
        .filter(setting -> Barrels.of(setting.barrel()).isEmpty())
        .ifPresent(
            setting ->
                faults.add(
                    line + "barrel: there is no such syringe: write its token, such as u100-1"));
  }

  /**
   * Brings in what was planned: all of it, or nothing.
   *
   * @param source what the file was called
   * @param progress is told how many patients are done
   * @return the id by which the import can be undone
   */
  public String commit(ImportPlan plan, String source, IntConsumer progress) {
    String id = ids.next().toString();
    return transactions.inTransaction(
        () -> {
          int done = 0;
          for (PastHistory history : plan.ready()) {
            histories.append(id, source, history, clock.instant());
            done++;
            progress.accept(done);
          }
          return id;
        });
  }

  /** Takes an import back by an addendum to each of its histories; the number of patients. */
  public Reading<Integer> undo(String importId, String reason) {
    String why = reason.strip();
    if (why.isEmpty() || why.length() > LONGEST_REASON) {
      return Reading.refused(
          "Write why the import is undone, in at most "
              + LONGEST_REASON
              + " letters: it stays on record.");
    }
    return transactions.inTransaction(
        () -> {
          int count = histories.withdraw(importId, clock.instant(), why);
          return count == 0
              ? Reading.refused(
                  "No history of an import \"" + importId + "\" counts: nothing was changed.")
              : Reading.of(count);
        });
  }
}
