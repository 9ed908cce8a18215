package rungwise.clinic.protocols;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rungwise.clinic.ClinicTime;
import rungwise.dosing.known.Component;
import rungwise.dosing.protocol.Protocol;

/** What is not the same in two protocols, in words. */
public final class ProtocolDifference {

  private ProtocolDifference() {}

  /** One sentence a rule that was changed, added or left out; none if the rules are the same. */
  public static List<String> between(Protocol before, Protocol after) {
    List<ProtocolRule> old = ProtocolRule.of(before);
    List<ProtocolRule> now = ProtocolRule.of(after);
    var lines = new ArrayList<String>();
    if (!before.components().equals(after.components())) {
      lines.add(
          "It was written for " + words(before) + ", and is written for " + words(after) + " now.");
    }
    if (!before.more().from().equals(after.more().from())) {
      lines.add("It held " + from(before) + ", and holds " + from(after) + " now.");
    }
    for (ProtocolRule rule : now) {
      like(rule, old)
          .map(was -> changed(was, rule))
          .orElseGet(() -> added(rule))
          .forEach(lines::add);
    }
    old.stream()
        .filter(rule -> like(rule, now).isEmpty())
        .map(rule -> "Left out: " + rule.what() + ", " + rule.value() + ".")
        .forEach(lines::add);
    return lines;
  }

  private static String from(Protocol protocol) {
    return protocol
        .more()
        .from()
        .map(day -> "from " + ClinicTime.words(day))
        .orElse("from its signature");
  }

  private static String words(Protocol protocol) {
    return Stream.of(Component.values())
        .filter(protocol.components()::contains)
        .map(Component::token)
        .collect(Collectors.joining(", "));
  }

  private static Optional<ProtocolRule> like(ProtocolRule rule, List<ProtocolRule> rules) {
    return rules.stream()
        .filter(one -> one.part().equals(rule.part()) && one.what().equals(rule.what()))
        .findFirst();
  }

  private static List<String> added(ProtocolRule rule) {
    return List.of("New: " + rule.what() + ", " + rule.value() + ".");
  }

  private static List<String> changed(ProtocolRule was, ProtocolRule now) {
    var lines = new ArrayList<String>();
    if (!was.value().equals(now.value())) {
      lines.add(now.what() + ": was " + was.value() + ", is " + now.value() + ".");
    }
    if (!was.source().equals(now.source())) {
      lines.add(now.what() + ": another source, " + now.source().words() + ".");
    }
    return lines;
  }
}
