package rungwise.web.titration;

import java.util.List;
import java.util.Locale;
import java.util.function.Predicate;
import rungwise.clinic.titration.PartFault;
import rungwise.quantities.Fault;
import rungwise.web.page.Faults;

/** Ties the faults of a form about an injection to its fields, by their words. */
public final class InjectionFaults {

  private static final String SOFT = "soft";
  private static final String TIME = "time";

  private record Place(Predicate<String> words, String field) {}

  /** The first that fits counts; what is left and quotes what was typed is the mark. */
  private static final List<Place> PLACES =
      List.of(
          begins("Ask him for his birth date", "identified"),
          contains("is not a date", "date"),
          contains("is not a time of day", TIME),
          begins("There was no ", TIME),
          contains("came twice on", "occurrence"),
          contains("is still to come", TIME),
          contains("is before the injection", TIME),
          contains("after the injection: check", TIME),
          begins("An injection at this very time", TIME),
          begins("There is no such syringe", "barrel"),
          begins("Choose how firm", "grade"),
          begins("Choose when it was soft", SOFT),
          begins("Soft between", SOFT),
          begins("It cannot have lasted", SOFT),
          begins("Onset:", "onset"),
          begins("Usable for:", "usable"),
          contains("is not a time in minutes", SOFT),
          begins("Give both the side", "side"),
          begins("Pain:", "pain"),
          begins("That vial", "vial"),
          begins("The clinic does not keep that vial", "vial"),
          begins("Say from which vial", "vial"),
          begins("Read the label", "vial"),
          begins("Other tablets", "otherTablets"),
          begins("Choose whether anything", "causes"),
          begins("Nothing went wrong was", "causes"),
          begins("Say why", "reason"),
          begins("Blood pressure", "systolic"),
          begins("Choose what was seen", "moment"),
          begins("Choose how it ended", "how"),
          begins("Not now:", "given"),
          begins("Nothing was drawn", "mark"),
          contains("does not reach to", "mark"),
          begins("\"", "mark"));

  private InjectionFaults() {}

  private static Place begins(String words, String field) {
    return new Place(text -> text.startsWith(words), field);
  }

  private static Place contains(String words, String field) {
    return new Place(text -> text.contains(words), field);
  }

  /**
   * The faults at their fields.
   *
   * @param form goes before the names of the fields where a page has several forms; may be empty
   */
  public static Faults place(List<String> texts, String form) {
    return new Faults(texts.stream().map(text -> new Fault(fieldOf(text, form), text)).toList());
  }

  /** The faults of a report at the fields of its parts. */
  public static Faults of(List<PartFault> faults) {
    return new Faults(
        faults.stream().map(fault -> new Fault(fault.part().field(), fault.text())).toList());
  }

  private static String fieldOf(String text, String form) {
    return PLACES.stream()
        .filter(place -> place.words().test(text))
        .map(place -> name(form, place.field()))
        .findFirst()
        .orElse("");
  }

  /** The name of a field in one of several forms of a page: "noteTime". */
  public static String name(String form, String field) {
    return form.isEmpty()
        ? field
        : form + field.substring(0, 1).toUpperCase(Locale.ROOT) + field.substring(1);
  }
}
