package rungwise.web.callbook;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.callbook.CallBook;
import rungwise.clinic.callbook.CallBooks;
import rungwise.clinic.callbook.CallProtocol;
import rungwise.clinic.callbook.CallProtocol.Asks;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.Role;
import rungwise.dosing.urgent.CallStep.Shown;
import rungwise.quantities.MassUnit;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.Typed;

/**
 * What the clinic keeps for calls, as shown.
 *
 * @param standing which version is in force, and who signed it; or that it is a sample
 * @param rows the fields of the steps, as many as may be written
 * @param isToPrint whether it has changed since it was printed
 * @param printed who printed which edition and when, the last first
 */
public record CallBookPage(
    CallProtocol protocol,
    String standing,
    boolean maySign,
    List<Row> rows,
    List<Field> numbers,
    List<DepartmentLine> departments,
    boolean mayKeep,
    List<Field> department,
    boolean isToPrint,
    long edition,
    List<String> printed,
    String notice,
    Faults faults) {

  private static final int EMPTY_ROWS = 3;

  /** The fields of one step. */
  public record Row(int line, Choice asks, Choice shown, Field words) {}

  static CallBookPage of(
      CallBooks books,
      Account actor,
      ClinicTime time,
      Function<AccountId, String> names,
      Typed typed,
      String notice,
      Faults faults) {
    CallProtocol protocol = books.protocol();
    return new CallBookPage(
        protocol,
        books
            .signed()
            .map(one -> "Version " + one.version() + ", signed by " + written(one, time, names))
            .orElse("Sample: not signed by this clinic"),
        actor.may(Role.PRESCRIBER),
        rows(protocol, typed, faults),
        numbers(protocol, typed, faults),
        DepartmentLine.all(books),
        CallBooks.mayKeep(actor),
        department(typed, faults),
        books.isToPrint(),
        books.edition(),
        books.printed().stream()
            .map(
                one ->
                    "Edition "
                        + one.edition()
                        + " printed by "
                        + names.apply(one.by())
                        + ", "
                        + time.words(one.at()))
            .toList(),
        notice,
        faults);
  }

  private static String written(
      CallBook.Signed one, ClinicTime time, Function<AccountId, String> names) {
    return names.apply(one.by()) + ", " + time.words(one.at());
  }

  private static List<Row> rows(CallProtocol protocol, Typed typed, Faults faults) {
    var rows = new ArrayList<Row>();
    int most = Math.min(protocol.steps().size() + EMPTY_ROWS, CallBooks.MOST_STEPS);
    for (int line = 1; line <= most; line++) {
      boolean isKept = line <= protocol.steps().size();
      CallProtocol.Step step = protocol.steps().get(isKept ? line - 1 : 0);
      rows.add(
          new Row(
              line,
              asks(line, isKept ? step.asks() : Asks.ON_CALL).asTyped(typed).withFaults(faults),
              shown(line, isKept ? step.shown() : Shown.ALWAYS).asTyped(typed).withFaults(faults),
              Field.of(Field.Kind.TEXT, CallBooks.STEP + line, "Step " + line)
                  .withValue(isKept ? step.words() : "")
                  .asTyped(typed)
                  .withFaults(faults)
                  .whereSaid()));
    }
    return rows;
  }

  private static Choice asks(int line, Asks picked) {
    return Choice.of(
        CallBooks.ASKS + line,
        "Who",
        Arrays.stream(Asks.values())
            .map(one -> new Option(one.token(), one.words(), "", one == picked))
            .toList());
  }

  private static Choice shown(int line, Shown picked) {
    return Choice.of(
        CallBooks.SHOWN + line,
        "When",
        Arrays.stream(Shown.values())
            .map(one -> new Option(one.name(), words(one), "", one == picked))
            .toList());
  }

  /** When a step is shown, in words. */
  public static String words(Shown shown) {
    return switch (shown) {
      case ALWAYS -> "at any time";
      case BEFORE_FOUR_HOURS -> "before 4 hours";
      case FROM_FOUR_HOURS -> "from 4 hours on, or not known";
    };
  }

  private static List<Field> numbers(CallProtocol protocol, Typed typed, Faults faults) {
    return List.of(
        Field.of(Field.Kind.TEXT, CallBooks.NUMBER, "The clinic's number for nights and weekends")
            .withValue(protocol.number())
            .asTyped(typed)
            .withFaults(faults),
        Field.of(Field.Kind.TEXT, CallBooks.IN_AN_HOUR, "Phenylephrine in an hour, at most")
            .withHint("With its unit; the European guideline has 1000 mcg")
            .withValue(protocol.limits().inAnHour().numberText(MassUnit.MICROGRAM) + " mcg")
            .asTyped(typed)
            .withFaults(faults),
        Field.of(Field.Kind.COUNT, CallBooks.INTERVAL, "Minutes between two doses, at least")
            .withHint("3 or more")
            .withValue(protocol.limits().interval().minutesText())
            .asTyped(typed)
            .withFaults(faults));
  }

  private static List<Field> department(Typed typed, Faults faults) {
    return List.of(
        field(CallBooks.NAME, "Name", typed, faults),
        field(CallBooks.TOWN, "Town", typed, faults),
        field(CallBooks.TELEPHONE, "Telephone", typed, faults),
        field(CallBooks.CAN, "What they can do", typed, faults).optional(),
        field(CallBooks.NOTE, "Note", typed, faults).optional());
  }

  private static Field field(String name, String label, Typed typed, Faults faults) {
    return Field.of(Field.Kind.TEXT, name, label).asTyped(typed).withFaults(faults);
  }
}
