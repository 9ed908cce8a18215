package rungwise.clinic;

import java.util.UUID;

/** Port: gives identities that nobody else has; the same ones again where a demonstration must. */
@FunctionalInterface
public interface IdSource {
  UUID next();
}
