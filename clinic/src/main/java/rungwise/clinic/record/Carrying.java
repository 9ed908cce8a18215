package rungwise.clinic.record;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Consumer;
import java.util.stream.Stream;
import rungwise.clinic.Transactions;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.record.RecordedEntry.FactRow;

/** The use cases that carry a record out of one store and into another, empty one. */
public final class Carrying {

  /** What a course needs to be read that is not in it: what the clinic keeps and has signed. */
  private static final Set<String> SETTING =
      Set.of(
          "preparation",
          "preparation_ingredient",
          "preparation_withdrawn",
          "syringe",
          "protocol_signed",
          "population_signed",
          "population_signed_preparation",
          "population_withdrawn");

  /** A vial of the clinic's says what the vials of a man say, in an entry of no course. */
  private static final String VIAL = "clinic_vial";

  private static final Set<String> ACCOUNTS = Set.of("account", "account_standing");
  private static final String ACCOUNT_ID = "account_id";
  private static final String BASIS = "basis";

  private final Records records;
  private final Transactions transactions;

  public Carrying(Records records, Transactions transactions) {
    this.records = records;
    this.transactions = transactions;
  }

  /** Gives every entry of the record in order. */
  public void whole(Consumer<RecordedEntry> each) {
    records.forEach(each);
  }

  /**
   * Gives the entries of one course in order, with what is needed to read it: the clinic's
   * preparations, syringes, vials, protocols and populations, and the accounts of all who wrote any
   * of it. They are numbered anew from 1.
   *
   * @return how many there are; 0 if there is no such course
   */
  public long course(CourseId course, Consumer<RecordedEntry> each) {
    Set<String> writers = new HashSet<>();
    var isThere = new boolean[1];
    records.forEach(
        entry -> {
          boolean isOfCourse = entry.course().filter(course.text()::equals).isPresent();
          isThere[0] |= isOfCourse;
          if (isOfCourse || isSetting(entry)) {
            writersOf(entry).forEach(writers::add);
          }
        });
    if (!isThere[0]) {
      return 0;
    }
    addWhoMadeThem(writers);
    var numbers = new TreeMap<Long, Long>();
    records.forEach(
        entry -> {
          boolean isIn =
              entry.course().filter(course.text()::equals).isPresent()
                  || isSetting(entry)
                  || isAccountOf(entry, writers);
          if (isIn) {
            numbers.put(entry.number(), numbers.size() + 1L);
            each.accept(entry.numbered(numbers.get(entry.number()), renumbered(entry, numbers)));
          }
        });
    return numbers.size();
  }

  /** An account was made by another one, which was made by another one. */
  private void addWhoMadeThem(Set<String> writers) {
    int before;
    do {
      before = writers.size();
      records.forEach(
          entry -> {
            if (isAccountOf(entry, Set.copyOf(writers))) {
              writersOf(entry).forEach(writers::add);
            }
          });
    } while (writers.size() > before);
  }

  private static Stream<String> writersOf(RecordedEntry entry) {
    return Stream.concat(Stream.of(entry.by()), entry.onBehalfOf().stream())
        .filter(by -> !by.equals(AccountId.PROGRAM.text()));
  }

  private static boolean isSetting(RecordedEntry entry) {
    return entry.kind().startsWith(VIAL)
        || entry.facts().stream().anyMatch(fact -> SETTING.contains(fact.name()));
  }

  private static boolean isAccountOf(RecordedEntry entry, Set<String> accounts) {
    return entry.facts().stream()
        .filter(fact -> ACCOUNTS.contains(fact.name()))
        .anyMatch(fact -> accounts.contains(String.valueOf(fact.values().get(ACCOUNT_ID))));
  }

  /** A signed dose names the number up to which its advice had read. */
  private static List<FactRow> renumbered(RecordedEntry entry, NavigableMap<Long, Long> numbers) {
    var facts = new ArrayList<FactRow>();
    for (FactRow fact : entry.facts()) {
      if (fact.values().get(BASIS) instanceof Long basis) {
        Map<String, Object> values = new LinkedHashMap<>(fact.values());
        values.put(
            BASIS,
            Optional.ofNullable(numbers.floorEntry(basis)).map(Map.Entry::getValue).orElse(0L));
        facts.add(new FactRow(fact.name(), values));
      } else {
        facts.add(fact);
      }
    }
    return facts;
  }

  /**
   * Takes entries into a record in which nothing was ever written: all of them, or none.
   *
   * @return how many there are
   * @throws RecordFault if the record is not empty, or an entry cannot be taken
   */
  public long takeIn(Iterable<RecordedEntry> entries) {
    return transactions.inTransaction(
        () -> {
          if (!records.isEmpty()) {
            throw new RecordFault(
                "the record is not empty: a record file is read into an empty data folder only");
          }
          long count = 0;
          for (RecordedEntry entry : entries) {
            count++;
            if (entry.number() != count) {
              throw new RecordFault("entry " + entry.number() + ": its number should be " + count);
            }
            records.append(entry);
          }
          records.readAll();
          return count;
        });
  }
}
