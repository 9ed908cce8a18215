package rungwise.store;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jooq.exception.DataAccessException;
import rungwise.clinic.soundness.Flaw;
import rungwise.store.database.Database;
import rungwise.store.journal.BrokenEntry;
import rungwise.store.journal.Inspected;
import rungwise.store.journal.Journal;

/**
 * Looks again and again at what every course rests on, while the store is open. A course looks at
 * its own entries whenever it is read; what is found here stops every course.
 */
public final class RecordWatch {

  private final Database database;
  private final Journal journal;
  private volatile List<Flaw> foundation = List.of();
  private volatile List<Flaw> chain = List.of();
  private volatile Optional<BrokenEntry> firstBroken = Optional.empty();

  RecordWatch(Database database, Journal journal) {
    this.database = database;
    this.journal = journal;
  }

  /** What was wrong at the last look; empty if nothing. */
  public List<Flaw> flaws() {
    return Stream.of(journal.flawOfEnd().stream().toList(), foundation, chain)
        .flatMap(List::stream)
        .distinct()
        .toList();
  }

  /** Whether the end of the record could not be kept lately, so that a loss would not be told. */
  public boolean isEndBehind() {
    return journal.isEndBehind();
  }

  /** Looks at people, preparations, syringes, protocols and the like: some milliseconds. */
  public void lookAtFoundation() {
    foundation = journal.flawsOfFoundation();
  }

  /**
   * Walks over the whole record. What it finds of one course, or of who looked at a page, stops
   * nothing here.
   *
   * @return the first entry that is not as it was sealed
   */
  public Optional<BrokenEntry> lookAtAll() {
    firstBroken = walk();
    return firstBroken;
  }

  /** What the last walk over the whole record found; empty if nothing, or if there was none yet. */
  public Optional<BrokenEntry> firstBroken() {
    return firstBroken;
  }

  /** Whether a failure says by itself that the file is damaged, or holds a value that is none. */
  public boolean isDamage(Throwable failure) {
    return Database.isDamage(failure);
  }

  private Optional<BrokenEntry> walk() {
    return switch (journal.inspect(Optional.empty())) {
      case Inspected.Whole whole -> {
        Optional<String> damage = damage();
        chain = damage.stream().map(what -> new Flaw(Flaw.What.FILE, whole.entries())).toList();
        yield damage.map(what -> new BrokenEntry(whole.entries(), "The file is damaged: " + what));
      }
      case Inspected.Broken broken -> {
        chain = chainOf(broken.first());
        yield Optional.of(broken.first());
      }
    };
  }

  private Optional<String> damage() {
    try {
      return database.damage();
    } catch (DataAccessException unreadable) {
      return Optional.of("it cannot be read to its end");
    }
  }

  private List<Flaw> chainOf(BrokenEntry found) {
    try {
      return journal.flawsOfChain(found);
    } catch (DataAccessException unreadable) {
      return List.of(new Flaw(Flaw.What.CHAIN, found.seq()));
    }
  }
}
