package rungwise.dosing.screening;

/** A group of questions that are asked together. */
public enum Topic {
  BLOOD("Blood and past erections"),
  PENIS("Penis"),
  HEART("Heart and circulation"),
  MEDICINES("Medicines and allergy");

  private final String words;

  Topic(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
