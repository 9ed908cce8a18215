package rungwise.clinic.people;

/** Port: gives one-time codes that nobody can guess. */
@FunctionalInterface
public interface CodeSource {
  OneTimeCode next();
}
