package rungwise.app.history;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import rungwise.files.JsonObject;
import rungwise.quantities.Fault;

/**
 * What is wrong with something that was given: a reader sees the first and how many there are of
 * each kind, a program all of them.
 *
 * @param faults in the order in which they were found
 */
public record FaultList(List<Fault> faults) {

  /** So many a reader looks through: an assumption. */
  static final int MOST_SHOWN = 20;

  private static final String OF_WHOLE = "the whole";

  public FaultList {
    faults = List.copyOf(faults);
  }

  /** The first ones, and how many there are by the column that they are about. */
  public List<String> words() {
    var lines = new ArrayList<String>();
    faults.stream().limit(MOST_SHOWN).map(Fault::text).forEach(lines::add);
    if (faults.size() > MOST_SHOWN) {
      lines.add(
          "These are "
              + MOST_SHOWN
              + " of "
              + faults.size()
              + " faults, by column: "
              + counts().entrySet().stream()
                  .map(kind -> kind.getKey() + " " + kind.getValue())
                  .collect(Collectors.joining(", "))
              + ". --json lists each.");
    }
    return lines;
  }

  private Map<String, Integer> counts() {
    var counts = new TreeMap<String, Integer>();
    faults.forEach(fault -> counts.merge(kind(fault), 1, Integer::sum));
    return counts;
  }

  private static String kind(Fault fault) {
    return fault.field().isEmpty() ? OF_WHOLE : fault.field();
  }

  /** The object with all of them, and how many there are by column; see docs/schemas. */
  public JsonObject in(JsonObject object) {
    JsonObject byColumn = JsonObject.empty();
    for (Map.Entry<String, Integer> kind : counts().entrySet()) {
      byColumn = byColumn.with(kind.getKey(), (double) kind.getValue());
    }
    return object
        .withTexts("faults", faults.stream().map(Fault::text).toList())
        .with("faults_by_column", byColumn);
  }

  /** Tells a reader, and a program if one asks. */
  public void tell(boolean isJson, PrintWriter out, PrintWriter err) {
    words().forEach(err::println);
    err.flush();
    if (isJson) {
      out.println(in(JsonObject.empty()));
      out.flush();
    }
  }
}
