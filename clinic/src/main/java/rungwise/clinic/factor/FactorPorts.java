package rungwise.clinic.factor;

import java.time.InstantSource;
import java.util.function.Supplier;
import rungwise.clinic.Transactions;
import rungwise.clinic.people.Accounts;
import rungwise.clinic.people.CodeSource;
import rungwise.clinic.people.PasswordHashing;

/**
 * All that the use cases about the second proof need from outside.
 *
 * @param secrets gives secrets that nobody can guess
 */
public record FactorPorts(
    Factors factors,
    Accounts accounts,
    PasswordHashing hashing,
    CodeSource codes,
    Supplier<FactorSecret> secrets,
    InstantSource clock,
    Transactions transactions) {}
