package rungwise.clinic.titration;

import java.util.Arrays;
import java.util.Optional;
import rungwise.clinic.ClinicTime;

/** The parts of the report form. A fault belongs to one of them. */
public enum ReportPart {
  /** Of no one part: the whole form. */
  FORM(""),
  IDENTIFIED("identified"),
  /** "last_night", "today" or "other". */
  DAY("day"),
  /** For another day only. */
  DATE(ClinicTime.DATE_FIELD),
  TIME(ClinicTime.TIME_FIELD),
  /** Which of two equal times of day. */
  OCCURRENCE(ClinicTime.OCCURRENCE_FIELD),
  /** The syringe really used; empty for the one of the plan. */
  BARREL("barrel"),
  /** The number of the line really drawn; on a syringe marked in mL the volume. */
  MARK("mark"),
  /** "0" to "4". */
  GRADE("grade"),
  /** A token of {@link EndAnswer}. */
  SOFT("soft"),
  EXACT_MINUTES("exactMinutes"),
  /** The clock time at which he was soft. */
  SOFT_AT("softAt"),
  SOFT_OCCURRENCE("softOccurrence"),
  /** The clock time at which he was firm or fuller still; empty for now. */
  SEEN_AT("seenAt"),
  LEAST_MINUTES("leastMinutes"),
  FROM_MINUTES("fromMinutes"),
  BEFORE_MINUTES("beforeMinutes"),
  /** A token of the simple causes. */
  CAUSES("causes"),
  /** "clinic", "home", or empty for at home. */
  PLACE("place"),
  ONSET("onset"),
  USABLE("usable"),
  /** A name of a side. */
  SIDE("side"),
  /** "1" to "12". */
  HOUR("hour"),
  /** "0" to "10". */
  PAIN("pain"),
  /** "yes", "no" or "not known", as are aroused and the second dose. */
  BRUISE("bruise"),
  AROUSED("aroused"),
  /** Names of what went wrong. */
  WRONG("wrong"),
  /** The entry of the vial that it was drawn from, or that it is not known. */
  VIAL("vial"),
  OTHER_TABLETS("otherTablets"),
  SECOND_DOSE("secondDose"),
  /** A name of a tablet for erections, "none", or empty where nobody asked. */
  TABLET("tablet"),
  TABLET_DATE("tabletDate"),
  TABLET_TIME("tabletTime"),
  /** Why a report is replaced. */
  REASON("reason");

  /** What stands in place of a vial that nobody knows. */
  public static final String VIAL_NOT_KNOWN = "not_known";

  private final String field;

  ReportPart(String field) {
    this.field = field;
  }

  /** Its name in a form and in the record. */
  public String field() {
    return field;
  }

  /** The part of a name, if there is one. */
  public static Optional<ReportPart> of(String field) {
    return Arrays.stream(values()).filter(part -> part.field.equals(field)).findFirst();
  }
}
