package rungwise.web.audit;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.audit.TrailSearch;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.AccountId;
import rungwise.quantities.Fault;
import rungwise.quantities.Reading;
import rungwise.web.page.Faults;

/**
 * A search of the audit trail as sent. An empty field asks nothing.
 *
 * @param person an account's id
 * @param record a record number
 * @param kind as entries name it: "dose_signed"
 * @param from the first day
 * @param until the last day
 */
public record TrailForm(String person, String record, String kind, String from, String until) {

  static final String PERSON = "person";
  static final String RECORD = "record";
  static final String KIND = "kind";
  static final String FROM = "from";
  static final String UNTIL = "until";

  /** What was understood, or every fault. */
  record Understood(Optional<TrailSearch> search, Faults faults) {}

  Understood read(Function<String, Optional<CourseId>> courses, ClinicTime time) {
    var faults = new ArrayList<Fault>();
    Optional<CourseId> course = filled(record).flatMap(courses);
    if (filled(record).isPresent() && course.isEmpty()) {
      faults.add(new Fault(RECORD, "No course has the record number \"" + record + "\": check it"));
    }
    Optional<AccountId> account = filled(person).flatMap(TrailForm::accountId);
    if (filled(person).isPresent() && account.isEmpty()) {
      faults.add(new Fault(PERSON, "There is no such person: choose one of the list"));
    }
    Optional<LocalDate> first = day(FROM, from, faults);
    Optional<LocalDate> last = day(UNTIL, until, faults);
    if (!faults.isEmpty()) {
      return new Understood(Optional.empty(), new Faults(faults));
    }
    var search =
        new TrailSearch(
            account,
            course,
            filled(kind),
            first.map(day -> startOf(day, time)),
            last.map(day -> startOf(day.plusDays(1), time)));
    return new Understood(Optional.of(search), Faults.NONE);
  }

  private static Instant startOf(LocalDate day, ClinicTime time) {
    return day.atStartOfDay(time.zone()).toInstant();
  }

  private static Optional<String> filled(String text) {
    return Optional.of(text.strip()).filter(kept -> !kept.isEmpty());
  }

  private static Optional<AccountId> accountId(String text) {
    try {
      return Optional.of(AccountId.of(UUID.fromString(text)));
    } catch (IllegalArgumentException notAnId) {
      return Optional.empty();
    }
  }

  private static Optional<LocalDate> day(String field, String text, List<Fault> faults) {
    if (filled(text).isEmpty()) {
      return Optional.empty();
    }
    Reading<LocalDate> read = ClinicTime.readDate(text);
    read.faults().forEach(fault -> faults.add(new Fault(field, fault)));
    return read.found();
  }

  /** The same search as the end of an address: "?person=...&amp;kind=...". */
  String query(Optional<Long> before) {
    return Stream.of(
            part(PERSON, person),
            part(RECORD, record),
            part(KIND, kind),
            part(FROM, from),
            part(UNTIL, until),
            before.map(number -> "before=" + number).orElse(""))
        .filter(part -> !part.isEmpty())
        .collect(Collectors.joining("&", "?", ""));
  }

  private static String part(String name, String value) {
    return value.isBlank() ? "" : name + "=" + URLEncoder.encode(value, StandardCharsets.UTF_8);
  }
}
