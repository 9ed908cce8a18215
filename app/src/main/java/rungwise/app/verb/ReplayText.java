package rungwise.app.verb;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import rungwise.clinic.titration.Replay;
import rungwise.dosing.decision.Difference;
import rungwise.files.JsonObject;

/** What it gave to ask every signed dose again, for a person and for a program. */
final class ReplayText {

  private final List<Replay> all;
  private final List<Replay> differing;

  ReplayText(List<Replay> all) {
    this.all = List.copyOf(all);
    this.differing = all.stream().filter(one -> !one.differences().isEmpty()).toList();
  }

  /** Whether this very version of the engine says something else than it said. */
  boolean hasFault() {
    return differing.stream().anyMatch(one -> !one.isOfAnotherVersion());
  }

  String words() {
    var lines = new ArrayList<String>();
    long byVersion = differing.stream().filter(Replay::isOfAnotherVersion).count();
    lines.add(
        "Signed doses asked again: "
            + all.size()
            + ". The same: "
            + (all.size() - differing.size())
            + ". Other by version: "
            + byVersion
            + ". Other though the version is the same: "
            + (differing.size() - byVersion)
            + ".");
    counts().forEach((kind, count) -> lines.add("  " + token(kind) + ": " + count));
    differing.forEach(one -> lines.addAll(words(one)));
    return String.join(System.lineSeparator(), lines);
  }

  private static List<String> words(Replay one) {
    var lines = new ArrayList<String>();
    lines.add(
        "Entry "
            + one.entry()
            + ", signed by engine "
            + one.stored().engine().orElse("not known")
            + ", asked again of engine "
            + one.again().engine()
            + (one.isOfAnotherVersion() ? ":" : ", the same version:"));
    one.differences().stream()
        .filter(difference -> difference.kind() != Difference.Kind.WORDS)
        .map(
            difference ->
                "  "
                    + token(difference.kind())
                    + ": "
                    + difference.kept()
                    + "; now "
                    + difference.now())
        .forEach(lines::add);
    if (lines.size() == 1) {
      lines.add("  only the words differ");
    }
    return lines;
  }

  private Map<Difference.Kind, Long> counts() {
    return differing.stream()
        .flatMap(one -> one.differences().stream())
        .collect(
            Collectors.groupingBy(
                Difference::kind,
                () -> new EnumMap<>(Difference.Kind.class),
                Collectors.counting()));
  }

  private static String token(Difference.Kind kind) {
    return kind.name().toLowerCase(Locale.ROOT);
  }

  /** One object; a double holds every count that a record can have. */
  JsonObject json() {
    return JsonObject.empty()
        .with("asked", (double) all.size())
        .with("same", (double) (all.size() - differing.size()))
        .withObjects("differing", differing.stream().map(ReplayText::json).toList());
  }

  private static JsonObject json(Replay one) {
    JsonObject object =
        JsonObject.empty()
            .with("entry", (double) one.entry())
            .with("engine_now", one.again().engine())
            .with("by_version", one.isOfAnotherVersion());
    JsonObject engine =
        one.stored()
            .engine()
            .map(kept -> object.with("engine", kept))
            .orElseGet(() -> object.withNothing("engine"));
    return engine.withObjects(
        "differences",
        one.differences().stream()
            .map(
                difference ->
                    JsonObject.empty()
                        .with("kind", token(difference.kind()))
                        .with("kept", difference.kept())
                        .with("now", difference.now()))
            .toList());
  }
}
