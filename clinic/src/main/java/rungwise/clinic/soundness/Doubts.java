package rungwise.clinic.soundness;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Port: what those who watch over the whole record know of it now. */
public interface Doubts {

  /** What is wrong with what every course rests on; it stops every course. */
  List<Flaw> shared();

  /**
   * The first entry that the last walk over the whole record found not to be as it was written, in
   * a sentence; it may be one that stops nothing, such as a look at a page.
   */
  Optional<String> firstBroken();

  /**
   * Whether the record is to blame for a failure that nothing else explains: the failure says so
   * itself, or a look that is made now finds a fault.
   */
  boolean isToBlame(Throwable failure);

  /** Has the whole record looked at again, beside what pages do. */
  void lookAgain();

  /** What every page says of it, a sentence each; empty if nothing is known to be wrong. */
  default List<String> notice() {
    List<Flaw> shared = shared();
    if (!shared.isEmpty()) {
      return List.of(
          "Wrong is: "
              + shared.stream().map(Flaw::words).distinct().collect(Collectors.joining("; "))
              + ".",
          "Rely on no dose, protocol, preparation or name that a page shows. Reports and calls are"
              + " taken as always.");
    }
    return firstBroken().stream()
        .flatMap(
            first ->
                Stream.of(
                    first,
                    "The course that it is of says so. A list or a count may leave somebody out."))
        .toList();
  }
}
