package rungwise.clinic.supply;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import rungwise.clinic.titration.TitrationWorld;
import rungwise.dosing.known.Component;
import rungwise.dosing.known.Ingredient;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;

/** The form of a vial, filled in step by step; it begins as one that lasts for years. */
public final class VialForm {

  private enum Box {
    LOT,
    MADE,
    BEYOND_USE,
    OPENED,
    OPENED_AT,
    DAYS_IN_USE,
    DEVICE
  }

  private final Map<Component, String> strengths;
  private final Map<Box, String> typed;

  private VialForm(Map<Component, String> strengths, Map<Box, String> typed) {
    this.strengths = strengths;
    this.typed = typed;
  }

  /** A vial whose label says what a preparation holds; when it was made is not said. */
  public static VialForm of(Preparation preparation) {
    var strengths = new EnumMap<Component, String>(Component.class);
    for (Ingredient one : preparation.ingredients()) {
      strengths.put(one.component(), one.strength().numberText(one.component().unit()));
    }
    return new VialForm(strengths, Map.of()).lot("L-1").beyondUse("2028-12-31");
  }

  /** The sample preparation that a label says. */
  public static Optional<Preparation> preparationOf(String label) {
    return Stream.concat(SamplePreparations.all().stream(), Stream.of(TitrationWorld.WEAK))
        .filter(one -> one.composition().equals(label))
        .findFirst();
  }

  private VialForm with(Box box, String text) {
    var changed = new EnumMap<Box, String>(Box.class);
    changed.putAll(typed);
    changed.put(box, text);
    return new VialForm(strengths, changed);
  }

  public VialForm strength(Component component, String text) {
    var changed = new EnumMap<Component, String>(Component.class);
    changed.putAll(strengths);
    changed.put(component, text);
    return new VialForm(changed, typed);
  }

  public VialForm lot(String text) {
    return with(Box.LOT, text);
  }

  public VialForm made(String date) {
    return with(Box.MADE, date);
  }

  public VialForm beyondUse(String date) {
    return with(Box.BEYOND_USE, date);
  }

  public VialForm opened(String date) {
    return with(Box.OPENED, date);
  }

  public VialForm openedAt(String time) {
    return with(Box.OPENED_AT, time);
  }

  public VialForm daysInUse(String number) {
    return with(Box.DAYS_IN_USE, number);
  }

  public VialForm device(String text) {
    return with(Box.DEVICE, text);
  }

  private String text(Box box) {
    return typed.getOrDefault(box, "");
  }

  /** What is handed in. */
  public VialDraft draft() {
    return new VialDraft(
        text(Box.LOT),
        strengths,
        text(Box.MADE),
        text(Box.BEYOND_USE),
        text(Box.OPENED),
        text(Box.OPENED_AT),
        text(Box.DAYS_IN_USE),
        text(Box.DEVICE));
  }
}
