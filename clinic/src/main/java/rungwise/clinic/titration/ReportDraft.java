package rungwise.clinic.titration;

import java.util.EnumMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.clinic.course.EntryId;

/**
 * What the report form holds, as typed. Everything may be missing.
 *
 * @param typed what stands in a part; several where several may be ticked
 * @param corrects the report that this one replaces
 * @param completes the unfinished report that this one completes
 */
public record ReportDraft(
    Map<ReportPart, List<String>> typed, Optional<EntryId> corrects, Optional<EntryId> completes) {

  public static final ReportDraft EMPTY =
      new ReportDraft(Map.of(), Optional.empty(), Optional.empty());

  public ReportDraft {
    var copied = new EnumMap<ReportPart, List<String>>(ReportPart.class);
    typed.forEach((part, values) -> copied.put(part, List.copyOf(values)));
    typed = copied;
  }

  /** What stands in a part; empty if nothing does. */
  public String text(ReportPart part) {
    return typed.getOrDefault(part, List.of()).stream().findFirst().orElse("");
  }

  /** Everything that was ticked. */
  public Set<String> all(ReportPart part) {
    return new LinkedHashSet<>(typed.getOrDefault(part, List.of()));
  }

  public boolean has(ReportPart part) {
    return !text(part).isBlank();
  }

  /** The same with exactly that in a part. */
  public ReportDraft with(ReportPart part, String... values) {
    var changed = new EnumMap<ReportPart, List<String>>(ReportPart.class);
    changed.putAll(typed);
    changed.put(part, List.of(values));
    return new ReportDraft(changed, corrects, completes);
  }

  public ReportDraft correcting(EntryId report) {
    return new ReportDraft(typed, Optional.of(report), completes);
  }

  public ReportDraft completing(EntryId unfinished) {
    return new ReportDraft(typed, corrects, Optional.of(unfinished));
  }

  /** Whether he said both his identifiers. */
  boolean isIdentified() {
    return text(ReportPart.IDENTIFIED).equals("yes");
  }

  Occurrence occurrence(ReportPart part) {
    return switch (text(part)) {
      case "FIRST" -> Occurrence.FIRST;
      case "SECOND" -> Occurrence.SECOND;
      default -> Occurrence.NOT_SAID;
    };
  }
}
