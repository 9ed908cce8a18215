package rungwise.clinic.screening;

/**
 * The baseline form as typed.
 *
 * @param score the total; empty if it was not taken
 * @param hands a token of an ability
 * @param sight a token of an ability
 * @param injector a token
 */
public record BaselineDraft(String score, String hands, String sight, String injector) {}
