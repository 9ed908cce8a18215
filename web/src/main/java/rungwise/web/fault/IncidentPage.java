package rungwise.web.fault;

/**
 * What a person sees of a failure.
 *
 * @param number under which the log has the rest
 */
public record IncidentPage(String number) {}
