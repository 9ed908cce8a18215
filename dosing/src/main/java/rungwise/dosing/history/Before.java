package rungwise.dosing.history;

import java.util.List;
import rungwise.quantities.Volume;

/**
 * What is known of the time before this record began, beside injections that say when they were.
 *
 * @param undated injections of which it is not known when they were; each stands at the latest
 *     instant at which it can have been
 * @param unmapped long ones of which it is not known what was injected, and that no prescriber has
 *     reviewed
 * @param isOpen whether he was injected and nobody has asked since when the last time was
 */
public record Before(List<Injection> undated, List<Unmapped> unmapped, boolean isOpen) {

  public static final Before NOTHING = new Before(List.of(), List.of(), /* isOpen= */ false);

  public Before {
    undated = List.copyOf(undated);
    unmapped = List.copyOf(unmapped);
  }

  /**
   * An erection that lasted, or may have lasted, 2 hours or more after nobody knows what.
   *
   * @param drawn the volume of it
   */
  public record Unmapped(Volume drawn, Grade grade, SoftAfter soft) {

    /** "fully firm, soft after 150 min". */
    public String responseWords() {
      return grade.words() + ", " + soft.words();
    }
  }
}
