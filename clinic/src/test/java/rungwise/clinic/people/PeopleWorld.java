package rungwise.clinic.people;

import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;

/** A clinic in memory whose clock stands until it is moved. */
final class PeopleWorld {

  static final String PASSWORD = "seven quiet green lamps";

  final InMemoryPeople stored = new InMemoryPeople();
  final CountingHashing hashing = new CountingHashing();
  private final AtomicReference<Instant> now =
      new AtomicReference<>(Instant.parse("2026-03-02T09:00:00Z"));
  private final AtomicInteger codes = new AtomicInteger();
  private final AtomicInteger ids = new AtomicInteger();
  final People people =
      new People(
          new PeoplePorts(
              stored,
              stored,
              hashing,
              (password, names) -> names.contains(password),
              this::nextCode,
              () -> new UUID(1, ids.incrementAndGet()),
              now::get,
              stored));

  private OneTimeCode nextCode() {
    var bytes = new byte[OneTimeCode.BYTES];
    bytes[0] = (byte) codes.incrementAndGet();
    return OneTimeCode.of(bytes);
  }

  void pass(Duration time) {
    now.updateAndGet(before -> before.plus(time));
  }

  Account administrator() {
    String code = people.firstStart().orElseThrow().text();
    return people.accept(code, "lea.lead", Optional.of("Lea Lead"), PASSWORD).orThrow();
  }

  Invitation invited(Account by, String signInName, Role... roles) {
    return people.invite(by.id(), signInName, "Name of " + signInName, Set.of(roles)).orThrow();
  }

  Account active(Account by, String signInName, Role... roles) {
    String code = invited(by, signInName, roles).code().text();
    return people.accept(code, signInName, Optional.empty(), PASSWORD).orThrow();
  }
}
