package rungwise.clinic.people;

import java.time.InstantSource;
import java.util.Set;
import java.util.function.BiPredicate;
import rungwise.clinic.IdSource;
import rungwise.clinic.Transactions;

/**
 * All that the use cases about people need from outside.
 *
 * @param guessed whether a password would be guessed by who tries these names, of its owner and of
 *     the clinic, before everything else
 */
public record PeoplePorts(
    Accounts accounts,
    Credentials credentials,
    PasswordHashing hashing,
    BiPredicate<String, Set<String>> guessed,
    CodeSource codes,
    IdSource ids,
    InstantSource clock,
    Transactions transactions) {}
