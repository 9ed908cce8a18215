package rungwise.dosing.history;

import java.time.Instant;
import java.util.Optional;

/**
 * Somebody said what may mean 4 hours or still firm, and the report is not complete yet.
 *
 * @param told when it was said
 * @param injectedAt when he injected, if that was said too
 */
public record Unfinished(Instant told, Optional<Instant> injectedAt) {}
