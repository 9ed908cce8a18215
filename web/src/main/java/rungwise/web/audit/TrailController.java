package rungwise.web.audit;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.http.HttpStatus;
import org.springframework.security.core.annotation.AuthenticationPrincipal;
import org.springframework.stereotype.Controller;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.server.ResponseStatusException;
import org.springframework.web.servlet.ModelAndView;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.audit.Trail;
import rungwise.clinic.audit.TrailLine;
import rungwise.clinic.audit.TrailSearch;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.people.Account;
import rungwise.clinic.people.AccountId;
import rungwise.clinic.people.People;
import rungwise.web.page.Choice;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.page.Page;

/** The search over every entry, for administrators and auditors; looking is a view too. */
@Controller
final class TrailController {

  private static final Logger LOG = LoggerFactory.getLogger(TrailController.class);
  private static final String TEMPLATE = "audit/trail";
  private static final int ON_ONE_PAGE = 50;
  private static final int IN_ONE_PART = 500;
  private static final int MOST_IN_A_FILE = 10_000;

  private final Trail trail;
  private final People people;
  private final ClinicTime time;

  TrailController(Trail trail, People people, ClinicTime time) {
    this.trail = trail;
    this.people = people;
    this.time = time;
  }

  @GetMapping("/audit")
  ModelAndView search(
      @RequestParam(defaultValue = "") String person,
      @RequestParam(defaultValue = "") String record,
      @RequestParam(defaultValue = "") String kind,
      @RequestParam(defaultValue = "") String from,
      @RequestParam(defaultValue = "") String until,
      @RequestParam(defaultValue = "0") long before) {
    var form = new TrailForm(person, record, kind, from, until);
    TrailForm.Understood understood = form.read(trail::courseOf, time);
    if (understood.search().isEmpty()) {
      return Page.refused(TEMPLATE, page(form, List.of(), before, understood.faults()));
    }
    List<TrailLine> found = trail.find(understood.search().get(), startOf(before), ON_ONE_PAGE + 1);
    return Page.of(TEMPLATE, page(form, found, before, Faults.NONE));
  }

  private static long startOf(long before) {
    return before > 0 ? before : Long.MAX_VALUE;
  }

  private TrailPage page(TrailForm form, List<TrailLine> found, long before, Faults faults) {
    List<TrailLine> shown = found.subList(0, Math.min(ON_ONE_PAGE, found.size()));
    Optional<String> older =
        found.size() > ON_ONE_PAGE
            ? Optional.of("/audit" + form.query(Optional.of(shown.getLast().number())))
            : Optional.empty();
    return new TrailPage(
        persons(form).withFaults(faults),
        Field.of(Field.Kind.TEXT, TrailForm.RECORD, "Record number")
            .withValue(form.record())
            .withFaults(faults)
            .optional(),
        kinds(form),
        day(TrailForm.FROM, "From", form.from()).withFaults(faults),
        day(TrailForm.UNTIL, "Until", form.until()).withFaults(faults),
        rows(shown, trail.courseOf(form.record())),
        before <= 0,
        "/audit" + form.query(Optional.empty()),
        older,
        "/audit.csv" + form.query(Optional.empty()),
        faults);
  }

  private static Field day(String name, String label, String value) {
    return Field.of(Field.Kind.DATE, name, label).withValue(value).optional();
  }

  private Choice persons(TrailForm form) {
    Stream<Choice.Option> accounts =
        people.list().stream()
            .sorted(Comparator.comparing(Account::fullName))
            .map(account -> option(account.id().text(), account.fullName(), form.person()));
    return Choice.of(
        TrailForm.PERSON,
        "Person",
        Stream.concat(Stream.of(option("", "Anybody", form.person())), accounts).toList());
  }

  private Choice kinds(TrailForm form) {
    Stream<Choice.Option> known =
        trail.kinds().stream().map(kind -> option(kind, TrailRow.words(kind), form.kind()));
    return Choice.of(
        TrailForm.KIND,
        "What happened",
        Stream.concat(Stream.of(option("", "Anything", form.kind())), known).toList());
  }

  private static Choice.Option option(String value, String words, String picked) {
    return new Choice.Option(value, words, "", value.equals(picked));
  }

  private List<TrailRow> rows(List<TrailLine> lines, Optional<CourseId> first) {
    Set<CourseId> courses =
        lines.stream().flatMap(line -> line.courses().stream()).collect(Collectors.toSet());
    Map<CourseId, String> numbers = trail.recordNumbers(courses);
    Map<AccountId, String> names =
        people.list().stream().collect(Collectors.toMap(Account::id, Account::fullName));
    Function<AccountId, String> nameOf = id -> names.getOrDefault(id, "the program");
    return lines.stream()
        .map(line -> TrailRow.of(line, time.words(line.at()), first, numbers, nameOf))
        .toList();
  }

  @GetMapping("/audit.csv")
  ModelAndView file(
      @AuthenticationPrincipal Account actor,
      @RequestParam(defaultValue = "") String person,
      @RequestParam(defaultValue = "") String record,
      @RequestParam(defaultValue = "") String kind,
      @RequestParam(defaultValue = "") String from,
      @RequestParam(defaultValue = "") String until) {
    var form = new TrailForm(person, record, kind, from, until);
    TrailSearch search =
        form.read(trail::courseOf, time)
            .search()
            .orElseThrow(() -> new ResponseStatusException(HttpStatus.BAD_REQUEST));
    var file = new TrailFile(all(search));
    LOG.info("Audit trail of {} entries read as a file by {}", file.rows().size(), actor.id());
    return new ModelAndView(file, Map.of("page", file));
  }

  /** Read in parts, so that the database is never asked for everything at once. */
  private List<TrailRow> all(TrailSearch search) {
    var rows = new ArrayList<TrailRow>();
    List<TrailLine> part = trail.find(search, Long.MAX_VALUE, IN_ONE_PART);
    while (!part.isEmpty() && rows.size() < MOST_IN_A_FILE) {
      rows.addAll(rows(part, search.course()));
      part = trail.find(search, part.getLast().number(), IN_ONE_PART);
    }
    return rows;
  }
}
