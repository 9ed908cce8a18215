package rungwise.clinic.soundness;

import java.util.List;
import java.util.Optional;

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
}
