package rungwise.clinic.titration;

/** One thing wrong with a report, at the part of the form that it is about. */
public record PartFault(ReportPart part, String text) {}
