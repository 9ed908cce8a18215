package rungwise.clinic.course;

import rungwise.dosing.known.PreparationId;

/**
 * With what a course is run.
 *
 * @param barrel the token of the syringe
 * @param protocol the name of the protocol
 * @param protocolVersion its version
 */
public record Plan(
    PreparationId preparation, String barrel, String protocol, int protocolVersion) {}
