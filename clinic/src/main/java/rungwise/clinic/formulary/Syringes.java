package rungwise.clinic.formulary;

import java.time.Instant;
import java.util.List;
import rungwise.clinic.people.AccountId;
import rungwise.dosing.syringe.Barrel;

/** Port: the types of syringe that the clinic keeps. */
public interface Syringes {

  /** Whether a type is kept from now on. */
  enum Change {
    ADDED,
    WITHDRAWN
  }

  /** The types that are kept now, in the order in which they are known. */
  List<Barrel> kept();

  void append(Barrel barrel, Change change, AccountId by, Instant at);
}
