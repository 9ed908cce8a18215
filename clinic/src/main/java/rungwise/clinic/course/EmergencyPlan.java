package rungwise.clinic.course;

/** What a man does when an erection does not go down, agreed before home use. */
public record EmergencyPlan(String hospital, String afterHoursNumber, String transport) {

  public EmergencyPlan {
    if (hospital.isBlank() || afterHoursNumber.isBlank() || transport.isBlank()) {
      throw new IllegalArgumentException("bug: an emergency plan with a gap");
    }
  }

  public String words() {
    return hospital + "; after hours " + afterHoursNumber + "; " + transport;
  }
}
