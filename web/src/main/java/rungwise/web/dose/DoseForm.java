package rungwise.web.dose;

import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * The question as typed; an absent field is empty.
 *
 * @param by "volume", "mark" or the token of a component
 */
public record DoseForm(
    @Nullable String preparation,
    @Nullable String barrel,
    @Nullable String by,
    @Nullable String amount) {

  boolean isEmpty() {
    return preparation == null && barrel == null && by == null && amount == null;
  }

  String preparationId() {
    return said(preparation);
  }

  String barrelToken() {
    return said(barrel);
  }

  String askedBy() {
    return said(by);
  }

  String typedAmount() {
    return said(amount);
  }

  private static String said(@Nullable String text) {
    return Optional.ofNullable(text).orElse("");
  }
}
