package rungwise.clinic.course;

import rungwise.clinic.Transactions;
import rungwise.clinic.audit.Audit;
import rungwise.clinic.handout.SignedWords;
import rungwise.clinic.past.PastHistories;
import rungwise.clinic.populations.PopulationShelf;
import rungwise.clinic.protocols.ProtocolShelf;
import rungwise.clinic.room.RoomDays;
import rungwise.clinic.supply.ClinicVialShelf;

/** Where the courses of one clinic are kept, with the transactions that they are written in. */
public record CoursePorts(
    Courses courses,
    ProtocolShelf shelf,
    PopulationShelf populations,
    Audit audit,
    RoomDays roomDays,
    ClinicVialShelf clinicVials,
    SignedWords signedWords,
    PastHistories past,
    Transactions transactions) {

  /** Does work in a transaction. */
  public void run(Runnable work) {
    transactions.inTransaction(
        () -> {
          work.run();
          return true;
        });
  }

  /** Appends an entry in a transaction of its own. */
  public long append(NewEntry entry) {
    return transactions.inTransaction(() -> courses.append(entry));
  }
}
