package rungwise.clinic.callbook;

/**
 * An emergency department, as the clinic knows it.
 *
 * @param can what it can do, such as "urology day and night"; may be empty
 * @param note may be empty
 */
public record Department(String name, String town, String telephone, String can, String note) {}
