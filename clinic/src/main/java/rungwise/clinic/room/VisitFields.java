package rungwise.clinic.room;

import rungwise.clinic.titration.ReportPart;

/**
 * The fields of the forms of a visit, as a fault names them. What a report asks too has the name
 * that it has there.
 */
public final class VisitFields {

  public static final String MARK = ReportPart.MARK.field();
  public static final String SIDE = ReportPart.SIDE.field();
  public static final String GRADE = ReportPart.GRADE.field();
  public static final String CAUSES = ReportPart.CAUSES.field();
  public static final String PAIN = ReportPart.PAIN.field();
  public static final String VIAL = ReportPart.VIAL.field();

  /** The first of the vital signs, which are given together. */
  public static final String SYSTOLIC = "systolic";

  /** Whether it has happened already. */
  public static final String GIVEN = "given";

  /** What was seen. */
  public static final String MOMENT = "moment";

  /** How it ended. */
  public static final String HOW = "how";

  public static final String NOTE = "note";

  /** Of a hand-over: who calls him from now on. */
  public static final String TO = "to";

  /** Of a hand-over: how often it was tried to reach him. */
  public static final String TRIES = "tries";

  /** Of a hand-over: who was tried, and what came of it. */
  public static final String WORDS = "words";

  private VisitFields() {}
}
