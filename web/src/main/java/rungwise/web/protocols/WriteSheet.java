package rungwise.web.protocols;

import static rungwise.web.protocols.ProtocolForm.row;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import rungwise.clinic.protocols.ProtocolRule;
import rungwise.dosing.known.AetiologyGroup;
import rungwise.dosing.known.Component;
import rungwise.dosing.protocol.CountedOption;
import rungwise.dosing.protocol.Protocol;
import rungwise.dosing.source.Source;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Field;
import rungwise.web.protocols.WritePage.Line;
import rungwise.web.protocols.WritePage.Section;

/** The form with its faults, and the samples that are shown beside it. */
record WriteSheet(ProtocolForm form, List<Protocol> samples, Faults faults) {

  private static final int LONGEST_LABEL = 90;

  /** A step is said in one of several ways, so that none of its fields is optional by itself. */
  private static final String A_STEP = "steps-";

  /** Fields without which there is no protocol. */
  private static final Pattern MUST =
      Pattern.compile(
          "protocol|title|start-[a-z_]+-dose|ceiling-dose"
              + "|"
              + Stream.of(CountedOption.values())
                  .filter(CountedOption::isNeeded)
                  .map(option -> row(option.part(), ProtocolForm.VALUE))
                  .collect(Collectors.joining("|")));

  private static final Map<String, String> STEP_LABELS =
      named(
          "up_to", "from a dose of up to",
          "add", "add, after no response and after a partial one",
          "add_at_most", "after no response the source would allow up to");

  private static final Map<String, String> STRENGTH_LABELS =
      named("strength", "strength, such as 40 mcg/mL", "not_below", "least dose from it");

  private static final String AMOUNT = "Such as 2.5 mcg of alprostadil, or 0.05 mL";

  List<Field> heads() {
    return List.of(
        field("protocol", "Name in the record", "Lower-case letters, digits and hyphens"),
        field("title", "Title", "What clinicians read"),
        Field.of(Field.Kind.DATE, ProtocolForm.HOLDS_FROM, "Holds from")
            .withHint(
                "The first day on which a course may begin to run by it; left empty, it holds"
                    + " from its signature")
            .withValue(form.typed().text(ProtocolForm.HOLDS_FROM))
            .withFaults(faults)
            .optional());
  }

  Choice components() {
    return Choice.of(
            "for",
            "Written for a preparation that holds these and nothing else",
            Stream.of(Component.values())
                .map(one -> new Option(one.token(), one.fullName(), "", false))
                .toList())
        .withPicked(form.typed().all("for"))
        .withFaults(faults);
  }

  List<Field> composition() {
    return IntStream.rangeClosed(1, ProtocolForm.COMPONENT_LIMITS)
        .mapToObj(
            number ->
                field(
                    row(
                        row(ProtocolForm.COMPOSITION, Integer.toString(number)),
                        ProtocolForm.HOLDS),
                    "Strength " + number,
                    "Such as 30 mg/mL of papaverine"))
        .toList();
  }

  List<Section> sections() {
    return Stream.of(doses(), limits(), planAndModel(), numbers()).flatMap(List::stream).toList();
  }

  private List<Section> doses() {
    return List.of(
        section(
            "First dose",
            AMOUNT,
            Arrays.stream(AetiologyGroup.values())
                .map(
                    group ->
                        line(
                            row("start", group.token()),
                            group.words(),
                            Map.of("dose", "first dose")))
                .toList(),
            "start"),
        section(
            "Steps",
            AMOUNT
                + ". What is added is one step, after no response and after a partial one alike."
                + " What the source would allow beyond it is shown and never taken: no advice goes"
                + " up more than one step at once. A row that is left empty is no step.",
            rows("steps", ProtocolForm.STEPS, "Step ", STEP_LABELS),
            "steps"),
        afterPartial(),
        section(
            "Strengths",
            "Where a strong vial cannot be measured small; may be left empty",
            rows("strengths", ProtocolForm.STRENGTHS, "Strength ", STRENGTH_LABELS),
            "strengths"));
  }

  private Section afterPartial() {
    return section(
        "After a partial response",
        "Step up after so many of them in a row at the same dose: 1, 2 or 3. A partial response"
            + " is firm but not usable (rigidity 2), over within the hour, with nothing wrong."
            + " Left empty, after the first. The texts below differ in how far a step goes"
            + " after no response and after a partial one; none that was read here asks for a"
            + " partial response to be repeated first.",
        List.of(
            line(
                ProtocolForm.AFTER_PARTIAL,
                "Partial responses",
                Map.of(
                    ProtocolForm.RESPONSES,
                    "after a partial response, step up after so many of them"))),
        "steps");
  }

  private List<Section> limits() {
    return List.of(
        section(
            "Maximum dose",
            AMOUNT,
            List.of(line("ceiling", "Maximum", Map.of("dose", "never more than"))),
            "ceiling"),
        section(
            "Limits of single components",
            "Such as 20 mcg of alprostadil; whatever the volume; may be left empty",
            rows(
                "component_limits",
                ProtocolForm.COMPONENT_LIMITS,
                "Component ",
                named("most", "never more than")),
            "component_limits"),
        section(
            "Particular care",
            "For a man with a heart condition; may be left empty",
            List.of(line("care_above", "Care", Map.of("dose", "above"))),
            "care_above"),
        section(
            "Second dose in the same visit",
            "In the clinic only, never a third in 24 hours; left empty, there is none",
            List.of(sameVisit()),
            "same_visit"));
  }

  private List<Section> planAndModel() {
    return List.of(
        section(
            "What the emergency plan says as well",
            "Hospital, number after hours and transport are always asked for",
            rows("emergency_plan", ProtocolForm.PLAN_ITEMS, "Line ", named("ask", "what is asked")),
            "emergency_plan"),
        section(
            "Limits of the response model",
            "The most chance of a usable response that lasts so long, in 1000; left empty, the"
                + " model holds no dose. A population has to be signed for the preparation first.",
            List.of(
                chance(ProtocolForm.CHANCES.getFirst(), "2 h or longer"),
                chance(ProtocolForm.CHANCES.getLast(), "4 h or longer")),
            ProtocolForm.MODEL));
  }

  private Line chance(String name, String words) {
    return line(
        row(ProtocolForm.MODEL, name), words, Map.of(ProtocolForm.IN_1000, "at most, in 1000"));
  }

  private List<Section> numbers() {
    return Stream.of(CountedOption.values()).map(this::number).toList();
  }

  private Section number(CountedOption option) {
    String hint =
        "A whole number" + (option.isNeeded() ? "" : "; left empty, " + option.whereLeftOut());
    return section(
        option.title(),
        hint,
        List.of(line(option.part(), "Limit", Map.of(ProtocolForm.VALUE, option.title()))),
        option.part());
  }

  private Line sameVisit() {
    Choice afterNone =
        Choice.of(
                "same_visit-after_none",
                "After no response",
                List.of(
                    new Option(
                        "true", "a second dose may follow where nothing happened", "", false)))
            .withPicked(form.typed().all("same_visit-after_none"));
    Line line =
        line(
            "same_visit",
            "Second dose",
            named(
                "within_minutes", "Within so many minutes of the first",
                "after_partial_up_to", "After a partial response, soft again, to at most"));
    return new Line(
        line.name(), line.fields(), Optional.of(afterNone), line.source(), line.words());
  }

  private List<Line> rows(String part, int count, String name, Map<String, String> keys) {
    return IntStream.rangeClosed(1, count)
        .mapToObj(number -> line(row(part, Integer.toString(number)), name + number, keys))
        .toList();
  }

  private Section section(String title, String hint, List<Line> lines, String part) {
    var published = new ArrayList<String>();
    for (Protocol sample : samples) {
      for (ProtocolRule rule : ProtocolRule.of(sample)) {
        if (rule.part().equals(part) || rule.part().startsWith(part + " ")) {
          published.add(
              sample.title()
                  + ". "
                  + rule.what()
                  + ": "
                  + rule.value()
                  + " ("
                  + rule.source().words()
                  + ")");
        }
      }
    }
    return new Section(title, hint, lines, published.stream().distinct().toList());
  }

  private Line line(String prefix, String name, Map<String, String> keys) {
    return new Line(
        name,
        keys.entrySet().stream()
            .map(entry -> field(row(prefix, entry.getKey()), capital(entry.getValue()), ""))
            .toList(),
        Optional.empty(),
        source(prefix),
        field(row(prefix, ProtocolForm.WORDS), "In your own words", "Where no text is named"));
  }

  private Choice source(String prefix) {
    String field = row(prefix, ProtocolForm.SOURCE);
    var options = new ArrayList<Option>();
    options.add(new Option("", "not chosen", "", false));
    options.add(new Option(SourceText.COMMON_PRACTICE, "common practice, no source", "", false));
    options.add(new Option(SourceText.ASSUMPTION, "an assumption of this clinic", "", false));
    samples.stream()
        .flatMap(sample -> ProtocolRule.of(sample).stream())
        .map(ProtocolRule::source)
        .filter(Source.Published.class::isInstance)
        .map(Source.Published.class::cast)
        .distinct()
        .map(one -> new Option(SourceText.kind(one), shortened(one.words()), "", false))
        .forEach(options::add);
    return Choice.of(field, "Source", options)
        .withPicked(Set.of(form.typed().text(field)))
        .withFaults(faults);
  }

  private static String capital(String words) {
    return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
  }

  private static String shortened(String words) {
    return words.length() > LONGEST_LABEL ? words.substring(0, LONGEST_LABEL) + "…" : words;
  }

  private Field field(String name, String label, String hint) {
    Field field =
        Field.of(Field.Kind.TEXT, name, label)
            .withHint(hint)
            .withValue(form.typed().text(name))
            .withFaults(faults);
    if (MUST.matcher(name).matches()) {
      return field;
    }
    return name.startsWith(A_STEP) ? field.whereSaid() : field.optional();
  }

  private static Map<String, String> named(String... keysAndLabels) {
    var names = new LinkedHashMap<String, String>();
    for (int at = 0; at < keysAndLabels.length; at += 2) {
      names.put(keysAndLabels[at], keysAndLabels[at + 1]);
    }
    return names;
  }
}
