package rungwise.clinic.start;

/**
 * What the form for a new course holds, as typed.
 *
 * @param birthDate such as "1961-04-30"
 * @param group a token of an aetiology group
 * @param preparation the id of a preparation of the clinic
 * @param barrel a syringe's token
 * @param protocol name and version of a signed protocol, with a space between
 * @param namesakeConfirmed whether the writer has seen that another course is alike
 */
public record CourseDraft(
    String fullName,
    String birthDate,
    String recordNumber,
    String group,
    String preparation,
    String barrel,
    String protocol,
    boolean namesakeConfirmed) {}
