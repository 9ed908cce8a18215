package rungwise.dosing.protocol;

import java.util.List;
import java.util.stream.Stream;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.source.Sourced;

/** What the parts of a protocol promise each other; what reads documents has told it in words. */
final class Wholeness {

  private Wholeness() {}

  /**
   * Holds the parts against each other.
   *
   * @throws IllegalArgumentException if they do not belong together
   */
  static void require(
      String name,
      int version,
      List<Protocol.Start> starts,
      List<Protocol.Step> steps,
      ProtocolAmount most,
      ProtocolOptions more) {
    boolean alike =
        Stream.of(
                starts.stream().map(Protocol.Start::amount),
                more.careAbove().stream().map(Sourced::value),
                more.sameVisit().stream().flatMap(rule -> rule.afterPartialUpTo().stream()),
                steps.stream().map(Protocol.Step::smallest),
                steps.stream().map(Protocol.Step::largest))
            .flatMap(amounts -> amounts)
            .allMatch(most::isLike);
    if (!alike || steps.isEmpty() || version < 1 || name.isBlank()) {
      throw new IllegalArgumentException("bug: protocol " + name + " is not checked");
    }
    for (AetiologyGroup group : AetiologyGroup.values()) {
      if (starts.stream().filter(start -> start.groups().contains(group)).count() != 1) {
        throw new IllegalArgumentException("bug: protocol " + name + " starts " + group + " twice");
      }
    }
  }
}
