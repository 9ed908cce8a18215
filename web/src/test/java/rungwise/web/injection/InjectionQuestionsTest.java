package rungwise.web.injection;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;
import rungwise.clinic.ClinicTime;
import rungwise.clinic.ClinicTime.Occurrence;
import rungwise.dosing.syringe.Barrels;
import rungwise.web.page.Choice;
import rungwise.web.page.Choice.Option;
import rungwise.web.page.Faults;
import rungwise.web.page.Typed;

class InjectionQuestionsTest {

  private static final ClinicTime BERLIN = new ClinicTime(ZoneId.of("Europe/Berlin"));

  private static InjectionQuestions asked(String form, Typed typed) {
    return new InjectionQuestions(form, typed, Faults.NONE);
  }

  private static List<String> picked(Choice choice) {
    return choice.options().stream().filter(Option::picked).map(Option::value).toList();
  }

  @Test
  void which_of_two_equal_times_is_asked_only_where_the_time_came_twice() {
    Typed twice = Typed.NOTHING.with("date", "2026-10-25").with("time", "02:30");

    assertThat(asked("", twice).occurrence(BERLIN)).isPresent();
    assertThat(asked("", twice.with("time", "03:30")).occurrence(BERLIN)).isEmpty();
    assertThat(asked("", twice.with("occurrence", "SECOND")).saidOccurrence())
        .isEqualTo(Occurrence.SECOND);
    assertThat(asked("", twice.with("occurrence", "third")).saidOccurrence())
        .isEqualTo(Occurrence.NOT_SAID);
  }

  @Test
  void two_forms_of_a_page_share_no_field_name() {
    InjectionQuestions note = asked("note", Typed.NOTHING.with("noteTime", "10:10"));

    assertThat(note.name("time")).isEqualTo("noteTime");
    assertThat(note.text("time")).isEqualTo("10:10");
    assertThat(asked("end", note.typed()).text("time")).isEmpty();
  }

  @Test
  void how_firm_and_what_went_wrong_are_never_picked_beforehand() {
    assertThat(picked(asked("", Typed.NOTHING).grade("How firm it was"))).isEmpty();
    assertThat(picked(asked("", Typed.NOTHING).causes())).isEmpty();
    assertThat(picked(asked("", Typed.NOTHING).side())).containsExactly("");
  }

  @Test
  void usual_places_come_first_and_forbidden_ones_say_so() {
    List<Option> hours = asked("", Typed.NOTHING).hour().options();

    assertThat(hours).extracting(Option::value).startsWith("", "10", "2", "3", "9").hasSize(13);
    assertThat(hours.stream().filter(hour -> hour.label().contains("beside the nerves")))
        .extracting(Option::value)
        .containsExactly("1", "11");
    assertThat(hours.stream().filter(hour -> hour.label().contains("not an allowed place")))
        .extracting(Option::value)
        .containsExactly("4", "5", "6", "7", "8", "12");
  }

  @Test
  void the_line_is_asked_in_the_numbers_of_the_syringe() {
    assertThat(asked("", Typed.NOTHING).mark(Barrels.U100_1).label()).startsWith("Line to which");
    assertThat(asked("", Typed.NOTHING).mark(Barrels.MILLILITRE_1).label()).endsWith("in mL");
  }
}
