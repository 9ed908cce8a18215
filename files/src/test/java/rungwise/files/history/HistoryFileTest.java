package rungwise.files.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rungwise.dosing.history.Grade;
import rungwise.dosing.history.SoftAfter;
import rungwise.dosing.response.Lasted;
import rungwise.quantities.Reading;
import rungwise.quantities.TimeSpan;
import rungwise.quantities.Volume;

/** The history file: comma-separated values as RFC 4180 has them, packed as RFC 1952 has it. */
final class HistoryFileTest {

  private static final String HEADER =
      "patient,group,injection,volume_ml,potency,strength,grade,"
          + "duration_min,duration_status,duration_upper_min";

  private static final String SOUND =
      HEADER
          + "\nA,vasculogenic,1,0.1,1,1,2,,none,"
          + "\nA,vasculogenic,2,0.15,0.9,1,3,47.5,exact,"
          + "\nB,spinal_cord,1,0.05,1.2,0.5,4,120,right,"
          + "\nB,spinal_cord,2,0.05,1,0.5,0,0,interval,20.25\n";

  private static Reading<HistoryFile> read(String text) {
    return HistoryFile.read("history.csv", text.getBytes(StandardCharsets.UTF_8));
  }

  private static byte[] packed(String text) throws IOException {
    var bytes = new ByteArrayOutputStream();
    try (var out = new GZIPOutputStream(bytes)) {
      out.write(text.getBytes(StandardCharsets.UTF_8));
    }
    return bytes.toByteArray();
  }

  private static HistoryLine line(
      long line, String patient, String group, int injection, String volume, double potency) {
    return new HistoryLine(
        line,
        patient,
        group,
        injection,
        Volume.parseMillilitres(volume).orThrow(),
        potency,
        Optional.of(group.equals("spinal_cord") ? 0.5 : 1.0),
        Grade.NONE,
        new Lasted.NotRecorded(),
        Optional.empty(),
        Optional.empty(),
        Optional.empty());
  }

  private static HistoryLine with(HistoryLine line, Grade grade, Lasted lasted) {
    return new HistoryLine(
        line.line(),
        line.patient(),
        line.group(),
        line.injection(),
        line.volume(),
        line.potency(),
        line.strength(),
        grade,
        lasted,
        line.time(),
        line.preparation(),
        line.barrel());
  }

  private static final List<HistoryLine> SOUND_LINES =
      List.of(
          with(
              line(2, "A", "vasculogenic", 1, "0.1", 1),
              Grade.FIRM_NOT_USABLE,
              new Lasted.NotRecorded()),
          with(
              line(3, "A", "vasculogenic", 2, "0.15", 0.9), Grade.USABLE, new Lasted.Exactly(47.5)),
          with(
              line(4, "B", "spinal_cord", 1, "0.05", 1.2),
              Grade.FULLY_FIRM,
              new Lasted.AtLeast(120)),
          with(
              line(5, "B", "spinal_cord", 2, "0.05", 1), Grade.NONE, new Lasted.Between(0, 20.25)));

  @Test
  void every_line_is_read_with_its_number_and_all_its_columns() {
    assertThat(read(SOUND).orThrow().lines()).isEqualTo(SOUND_LINES);
  }

  @Test
  void a_packed_file_says_the_same(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("history.csv.gz");
    Files.write(file, packed(SOUND));

    assertThat(HistoryFile.read(file).orThrow().lines()).isEqualTo(SOUND_LINES);
  }

  @Test
  void carriage_returns_quotes_a_byte_order_mark_and_blank_lines_change_nothing() {
    String other =
        "\uFEFF" + SOUND.replace("\nA,", "\r\n\"A\",").replace("\nB", "\r\nB") + "\r\n\r\n";

    assertThat(read(other).orThrow().lines()).isEqualTo(SOUND_LINES);
  }

  @Test
  void the_last_line_may_lack_its_end_where_nothing_can_be_cut_off() {
    String whole = HEADER + "\nA,mixed,1,0.1,1,1,2,30,exact,";

    assertThat(read(whole).found()).isPresent();
  }

  @Test
  void columns_may_stand_in_any_order_and_three_more_may_be_there() {
    String text =
        "time,barrel,preparation,"
            + HEADER
            + "\n2026-03-01T21:30:00+01:00,u100-0.5,three-drug-30-1-10,"
            + "A,mixed,1,0.1,1,1,3,50,exact,"
            + "\n,,,A,mixed,2,0.1,1,1,3,50,exact,\n";

    List<HistoryLine> lines = read(text).orThrow().lines();

    assertThat(lines.get(0).time()).contains(Instant.parse("2026-03-01T20:30:00Z"));
    assertThat(lines.get(0).barrel()).contains("u100-0.5");
    assertThat(lines.get(0).preparation()).contains("three-drug-30-1-10");
    assertThat(lines.get(1).time()).isEmpty();
    assertThat(lines.get(1).barrel()).isEmpty();
    assertThat(lines.get(1).preparation()).isEmpty();
  }

  @Test
  void the_injections_of_a_patient_are_in_the_order_of_their_numbers() {
    String text =
        HEADER
            + "\nB,mixed,2,0.2,1,1,0,,none,\nA,mixed,1,0.1,1,1,0,,none,"
            + "\nB,mixed,1,0.1,1,1,0,,none,\n";

    var patients =
        new PreparationChoice(List.of(), Optional.empty())
            .of(read(text).orThrow())
            .orThrow()
            .patients();

    assertThat(patients.keySet()).containsExactly("B", "A");
    assertThat(patients.get("B")).extracting(line -> line.said().injection()).containsExactly(1, 2);
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "A,mixed,1,0.1,1,1,7,,none,|grade: \"7\" was given: write a grade from 0 to 4",
        "A,mixed,1,0.1,1,1,-1,,none,|grade: \"-1\" was given",
        "A,mixed,1,0.1,0,1,2,,none,|potency: \"0\" was given: write a number above 0, at most 1.2",
        "A,mixed,1,0.1,1.21,1,2,,none,|potency: \"1.21\" was given",
        "A,mixed,1,0.1,1e0,1,2,,none,|potency: \"1e0\" was given",
        "A,mixed,1,0.1,,1,2,,none,|potency: nothing was given",
        "A,mixed,1,0.1,1,0,2,,none,|strength: \"0\" was given",
        "A,mixed,1,0.1,1,30,2,,none,|strength: \"30\" was given: write a number from 0.05 to 20",
        "A,mixed,1,10,1,1,2,,none,|volume_ml: \"10\" was given: no syringe holds more than 1 mL",
        "A,mixed,1,0.1,1,1,3,43201,exact,|duration_min: \"43201\" was given: write minutes from 0",
        "A,mixed,1,-0.1,1,1,2,,none,|volume_ml: \"-0.1\" is not a volume in mL: leave out",
        "A,mixed,1,0,1,1,2,,none,|volume_ml: \"0\" is not a volume in mL: it must be more than 0",
        "A,mixed,1,0.0625,1,1,2,,none,|volume_ml: \"0.0625\" is not a volume in mL: it has more",
        "A,Mixed,1,0.1,1,1,2,,none,|group: \"Mixed\" was given",
        ",mixed,1,0.1,1,1,2,,none,|patient: nothing was given",
        "A,mixed,x,0.1,1,1,2,,none,|injection: \"x\" was given",
        "A,mixed,1,0.1,1,1,3,45,about,|duration_status: \"about\" was given: write",
        "A,mixed,1,0.1,1,1,3,45,none,|duration_min: \"45\" was given: leave it empty, or give a",
        "A,mixed,1,0.1,1,1,3,,exact,|duration_min: nothing was given: write minutes from 0",
        "A,mixed,1,0.1,1,1,3,0,exact,|duration_min: \"0\" was given: a usable erection",
        "A,mixed,1,0.1,1,1,3,45,exact,60|duration_upper_min: \"60\" was given: leave it empty",
        "A,mixed,1,0.1,1,1,3,60,interval,60|duration_upper_min: \"60\" was given: write more",
        "A,mixed,1,0.1,1,1,3,60,interval,|duration_upper_min: nothing was given",
        "A,mixed,1,0.1,1,1,3|there are 7 values, and the header names 10: the file",
      })
  void a_wrong_value_is_refused_with_its_line_and_column(String line, String fault) {
    Reading<HistoryFile> reading = read(SOUND + line + "\n");

    assertThat(reading.faults()).singleElement().asString().startsWith("line 6: " + fault);
  }

  @Test
  void all_faults_are_told_at_once() {
    String text =
        HEADER + "\nA,mixed,1,0.1,0,1,7,,none,\nA,mixed,2,0.1,1\nA,mixed,3,x,1,1,2,,no,\n";

    assertThat(read(text).faults())
        .extracting(fault -> fault.split(":", 3)[0] + fault.split(":", 3)[1])
        .containsExactly(
            "line 2 potency",
            "line 2 grade",
            "line 3 there are 5 values, and the header names 10",
            "line 4 volume_ml",
            "line 4 duration_status");
  }

  @Test
  void a_patient_has_one_group_and_each_number_once() {
    String text = HEADER + "\nA,mixed,1,0.1,1,1,2,,none,\nA,unknown,1,0.1,1,1,2,,none,\n";

    assertThat(read(text).faults())
        .containsExactly(
            "line 3: group: \"unknown\" was given, and \"mixed\" in line 2 for the same patient:"
                + " keep one",
            "line 3: injection: 1 was given, and it stands in line 2 already for the same patient:"
                + " give each its own number");
  }

  @Test
  void unknown_missing_and_doubled_columns_are_named() {
    String text = HEADER.replace("potency", "strenght").replace("group", "grade") + "\n";

    assertThat(read(text).faults())
        .satisfiesExactly(
            one -> assertThat(one).startsWith("line 1: \"strenght\" is not a column"),
            two -> assertThat(two).startsWith("line 1: the column grade stands there twice"),
            three -> assertThat(three).startsWith("line 1: the header lacks group, potency:"));
  }

  @Test
  void a_time_without_its_offset_is_refused() {
    String text = HEADER + ",time\nA,mixed,1,0.1,1,1,2,,none,,2026-03-01T21:30:00\n";

    assertThat(read(text).faults())
        .singleElement()
        .asString()
        .startsWith("line 2: time: \"2026-03-01T21:30:00\" was given: write date, time and offset");
  }

  @Test
  void a_patient_with_a_wrong_name_of_a_barrel_is_set_aside_as_any_other() {
    String text =
        HEADER
            + ",barrel\nA,mixed,1,0.1,1,1,2,,none,,u100\u0001\nB,mixed,1,0.1,1,1,7,,none,,\n"
            + "C,mixed,1,0.1,1,1,2,,none,,\n";

    HistorySurvey survey = HistoryFile.survey("h.csv", text.getBytes(StandardCharsets.UTF_8));

    assertThat(survey.lines()).extracting(HistoryLine::patient).containsExactly("C");
    assertThat(survey.aside()).isEqualTo(2);
    assertThat(survey.faults()).hasSize(2);
  }

  @Test
  void wherever_a_file_is_cut_the_rest_is_refused_or_says_what_its_lines_said() {
    byte[] whole = SOUND.getBytes(StandardCharsets.UTF_8);
    for (int length = 0; length < whole.length; length++) {
      Reading<HistoryFile> reading = HistoryFile.read("h.csv", Arrays.copyOf(whole, length));

      assertThat(reading.faults().isEmpty() || reading.faults().getFirst().startsWith("line "))
          .as("cut after %d bytes", length)
          .isTrue();
      reading.found().ifPresent(read -> assertThat(SOUND_LINES).startsWith(array(read.lines())));
    }
  }

  private static HistoryLine[] array(List<HistoryLine> lines) {
    return lines.toArray(HistoryLine[]::new);
  }

  @Test
  void wherever_a_packed_file_is_cut_it_is_refused() throws IOException {
    byte[] whole = packed(SOUND);
    for (int length = 0; length < whole.length; length++) {
      Reading<HistoryFile> reading = HistoryFile.read("h.csv.gz", Arrays.copyOf(whole, length));

      assertThat(reading.faults()).as("cut after %d bytes", length).hasSize(1);
      assertThat(reading.faults().getFirst()).startsWith("line ");
    }
  }

  @Test
  void a_file_that_is_not_what_its_name_says_is_refused() throws IOException {
    assertThat(HistoryFile.read("h.csv.gz", SOUND.getBytes(StandardCharsets.UTF_8)).faults())
        .containsExactly("line 1: h.csv.gz is not packed with gzip: pack it, or name it .csv");
    assertThat(HistoryFile.read("h.csv", packed(SOUND)).faults())
        .containsExactly("line 1: h.csv is packed with gzip: name it .csv.gz, or unpack it");
  }

  @Test
  void a_damaged_packed_file_is_refused() throws IOException {
    byte[] damaged = packed(SOUND);
    damaged[damaged.length - 6] ^= 1;

    assertThat(HistoryFile.read("h.csv.gz", damaged).faults())
        .singleElement()
        .asString()
        .contains("h.csv.gz is not a sound gzip file");
  }

  @Test
  void a_quotation_mark_left_open_and_bytes_that_are_no_text_are_refused_with_their_line() {
    byte[] notText = (SOUND + "\u00e4").getBytes(StandardCharsets.ISO_8859_1);

    assertThat(read(SOUND + "\"A,mixed,1").faults())
        .singleElement()
        .asString()
        .startsWith("line 6:");
    assertThat(HistoryFile.read("h.csv", notText).faults())
        .containsExactly("line 6: this is not UTF-8 text: save the file as UTF-8");
  }

  @Test
  void a_file_that_is_not_there_or_says_nothing_is_refused(@TempDir Path folder)
      throws IOException {
    assertThat(HistoryFile.read(folder.resolve("none.csv")).faults().getFirst())
        .startsWith("There is no file ");
    assertThat(HistoryFile.read(folder).faults().getFirst()).contains(" is a folder: ");
    assertThat(read("").faults()).singleElement().asString().startsWith("line 1: the header is");
    assertThat(read(HEADER + "\n").faults())
        .containsExactly("line 2: there is no injection in the file: give a line for each");
  }

  @Test
  void every_fault_is_told_up_to_as_many_as_memory_is_kept_for() {
    String line = "A,mixed,1,0.1,1,1,7,,none,\n";
    List<String> all = read(HEADER + "\n" + line.repeat(5000)).faults();
    List<String> many = read(HEADER + "\n" + line.repeat(100_001)).faults();

    assertThat(all).hasSize(5000);
    assertThat(many).hasSize(100_001);
    assertThat(many.getLast()).isEqualTo("There may be more: reading stopped after 100000 faults.");
  }

  @Test
  void a_duration_is_rounded_up_for_the_guards_and_kept_for_the_model() {
    String text =
        HEADER
            + "\nA,mixed,1,0.1,1,1,3,119.9999999,exact,\n"
            + "A,mixed,2,0.1,1,1,3,60.1,interval,60.10000001\n"
            + "A,mixed,3,0.1,1,1,3,30,interval,60\nA,mixed,4,0.1,1,1,3,90,right,\n";

    List<HistoryLine> lines = read(text).orThrow().lines();

    assertThat(lines.get(0).softAfter()).isEqualTo(new SoftAfter.Exactly(TimeSpan.ofMinutes(120)));
    assertThat(lines.get(0).lasted()).isEqualTo(new Lasted.Exactly(119.9999999));
    assertThat(lines.get(1).softAfter())
        .isEqualTo(new SoftAfter.Between(new TimeSpan(3_606_000), new TimeSpan(3_606_001)));
    assertThat(lines.get(2).softAfter())
        .isEqualTo(new SoftAfter.Between(TimeSpan.ofMinutes(30), TimeSpan.ofMinutes(60)));
    assertThat(lines.get(3).softAfter()).isEqualTo(new SoftAfter.AtLeast(TimeSpan.ofMinutes(90)));
  }
}
