package rungwise.clinic.soundness;

/** So little of a course's record can be read that nothing of it can be shown. */
public final class UnreadableRecord extends RuntimeException {

  private static final long serialVersionUID = 1;

  /**
   * The record of one course.
   *
   * @param course the id of the course
   */
  public UnreadableRecord(String course, Throwable cause) {
    super("course " + course + " cannot be read", cause);
  }
}
