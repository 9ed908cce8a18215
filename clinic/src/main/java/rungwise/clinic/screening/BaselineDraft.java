package rungwise.clinic.screening;

/**
 * The baseline form as typed, with the names of its fields as a fault gives them.
 *
 * @param score the total; empty if it was not taken
 * @param hands a token of an ability
 * @param sight a token of an ability
 * @param injector a token
 */
public record BaselineDraft(String score, String hands, String sight, String injector) {

  public static final String SCORE = "score";
  public static final String HANDS = "hands";
  public static final String SIGHT = "sight";
  public static final String INJECTOR = "injector";
}
