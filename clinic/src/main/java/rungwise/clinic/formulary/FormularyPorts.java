package rungwise.clinic.formulary;

import java.time.InstantSource;
import rungwise.clinic.IdSource;
import rungwise.clinic.Transactions;
import rungwise.clinic.people.Accounts;

/** All that the use cases about preparations and syringes need from outside. */
public record FormularyPorts(
    Accounts accounts,
    Preparations preparations,
    Syringes syringes,
    IdSource ids,
    InstantSource clock,
    Transactions transactions) {}
