package rungwise.dosing.urgent.rescue;

/** What is asked for a rescue, and how such an entry is written. */
public enum Asked {
  STOCK("the strength on the stock's label", "10 mg/mL"),
  WANTED("the wanted strength", "100 mcg/mL"),
  IN_SYRINGE("the strength in the syringe that was given from", "100 mcg/mL"),
  TOTAL("the total volume", "10 mL"),
  STEPS("the number of steps", "two steps"),
  DOSE("the dose", "100 mcg"),
  OXYGEN("the pressure of oxygen", "25 mmHg"),
  CARBON_DIOXIDE("the pressure of carbon dioxide", "65 mmHg"),
  PH("the pH", "7.2");

  private final String words;
  private final String example;

  Asked(String words, String example) {
    this.words = words;
    this.example = example;
  }

  public String words() {
    return words;
  }

  /** How it is written. */
  public String example() {
    return example;
  }
}
