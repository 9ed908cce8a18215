package rungwise.clinic.people;

import java.time.InstantSource;
import rungwise.clinic.IdSource;
import rungwise.clinic.Transactions;

/** All that the use cases about people need from outside. */
public record PeoplePorts(
    Accounts accounts,
    Credentials credentials,
    PasswordHashing hashing,
    CodeSource codes,
    IdSource ids,
    InstantSource clock,
    Transactions transactions) {}
