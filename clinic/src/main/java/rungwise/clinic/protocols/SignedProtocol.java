package rungwise.clinic.protocols;

import java.time.Instant;
import rungwise.clinic.people.AccountId;
import rungwise.dosing.protocol.Protocol;

/** A protocol that the clinic signed for use, with the document that says it. */
public record SignedProtocol(Protocol protocol, String document, AccountId by, Instant at) {}
