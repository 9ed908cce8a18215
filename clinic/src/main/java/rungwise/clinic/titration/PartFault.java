package rungwise.clinic.titration;

import rungwise.quantities.Fault;

/** One thing wrong with a report, at the part of the form that it is about. */
public record PartFault(ReportPart part, String text) {

  /** The same at the part's field. */
  public Fault placed() {
    return new Fault(part.field(), text);
  }
}
