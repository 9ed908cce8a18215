package rungwise.files.history;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.zip.GZIPOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import rungwise.dosing.fit.Courses;
import rungwise.dosing.history.Grade;
import rungwise.dosing.response.Lasted;
import rungwise.quantities.Reading;

/** The quick reader of a history file against the one that tells of every fault. */
final class CourseFileTest {

  private static final long SEED = Long.getLong("rungwise.seed", 20261127);
  private static final int TRIES = 1500 * Integer.getInteger("rungwise.fuzz", 1);
  private static final int ANY = Integer.MAX_VALUE;

  private static final String HEADER =
      "patient,group,injection,volume_ml,potency,strength,grade,"
          + "duration_min,duration_status,duration_upper_min";

  private static final List<String> CELLS =
      List.of(
          "",
          " ",
          "0",
          "1",
          "7",
          "-1",
          "0.2",
          "0.20",
          ".2",
          "1.2",
          "1.21",
          "0.0625",
          "1e0",
          "A",
          "\"A\"",
          "\"A,B\"",
          "\"a\"\"b\"",
          "x\"y",
          "\"open",
          "mixed",
          "Mixed",
          " mixed ",
          "exact",
          "right",
          "interval",
          "none",
          "about",
          "60",
          "30.25",
          "999999",
          "1000000",
          "47.38291038475612",
          "\u00c4rger",
          "\u2003",
          "\u00e9",
          "a\rb",
          "a\tb",
          "\u0000",
          "0.2 mL",
          "1,2",
          "\n");

  private static final PreparationChoice NOT_CHOSEN =
      new PreparationChoice(List.of(), Optional.empty());

  /** What was told, in words. */
  private static final class Told implements CourseTaker {
    private final List<String> words = new ArrayList<>();

    @Override
    public void course(String group) {
      words.add(group);
    }

    @Override
    public void trial(double logDose, Grade grade, Lasted lasted) {
      words.add(Double.doubleToLongBits(logDose) + " " + grade + " " + lasted);
    }
  }

  private static Optional<List<String>> quick(byte[] content) throws IOException {
    var told = new Told();
    var read = PlainCourses.read(new ByteArrayInputStream(content), ANY, NOT_CHOSEN);
    read.ifPresent(courses -> courses.tell(told));
    return read.map(courses -> told.words);
  }

  private static Optional<List<String>> slow(byte[] content) {
    var told = new Told();
    var read =
        HistoryFile.read("a.csv", content).found().flatMap(file -> NOT_CHOSEN.of(file).found());
    read.ifPresent(chosen -> CourseFile.tell(chosen, told));
    return read.map(history -> told.words);
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  private static String plain(Random random) {
    String[] groups = {"vasculogenic", "mixed", "unknown"};
    String[] volumes = {"0.05", "0.1", "0.2", "0.2 mL", "1"};
    String[] strengths = {"1", "0.5", "2", "0.333333333333333333"};
    var rows = new ArrayList<String>();
    int patients = 1 + random.nextInt(8);
    for (int patient = 0; patient < patients; patient++) {
      String name = random.nextInt(4) == 0 ? "J\u00f6rg " + patient : "P" + patient;
      String group = groups[random.nextInt(groups.length)];
      int injections = 1 + random.nextInt(6);
      for (int injection = 1; injection <= injections; injection++) {
        rows.add(
            name
                + (","
                    + group
                    + ","
                    + injection * (1 + patient)
                    + ","
                    + volumes[random.nextInt(volumes.length)]
                    + ","
                    + (random.nextInt(2) == 0 ? "1" : "0." + (1 + random.nextInt(99_999)))
                    + ","
                    + strengths[random.nextInt(strengths.length)]
                    + ","
                    + random.nextInt(5)
                    + ","
                    + duration(random)));
      }
    }
    if (random.nextBoolean()) {
      Collections.shuffle(rows, random);
    }
    boolean isLong = random.nextInt(3) == 0;
    String preparation = List.of("three-drug", "alprostadil-20", "").get(random.nextInt(3));
    rows.replaceAll(row -> isLong ? row + setting(random, preparation) : row);
    return HEADER + (isLong ? ",time,preparation,barrel\n" : "\n") + String.join("\n", rows) + "\n";
  }

  private static String duration(Random random) {
    String minutes = (1 + random.nextInt(200)) + (random.nextBoolean() ? ".123456789" : "");
    return switch (random.nextInt(4)) {
      case 0 -> minutes + ",exact,";
      case 1 -> minutes + ",right,";
      case 2 -> minutes + ",interval," + (300 + random.nextInt(9));
      default -> ",none,";
    };
  }

  private static String setting(Random random, String preparation) {
    return random.nextInt(3) == 0
        ? ",2026-03-01T21:30:00+01:00," + preparation + ",u100-1"
        : ",," + preparation + ",";
  }

  private static byte[] mutated(String sound, Random random) {
    String text = sound;
    for (int change = random.nextInt(3); change >= 0; change--) {
      text = random.nextBoolean() ? otherCell(text, random) : otherText(text, random);
    }
    byte[] bytes = bytes(text);
    if (random.nextInt(8) == 0) {
      bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
    }
    return bytes;
  }

  private static String otherCell(String text, Random random) {
    String[] cells = text.split("(?=[,\n])", -1);
    int at = random.nextInt(cells.length);
    String sign = cells[at].isEmpty() ? "" : cells[at].substring(0, 1);
    cells[at] = sign + CELLS.get(random.nextInt(CELLS.size()));
    return String.join("", cells);
  }

  private static String otherText(String text, Random random) {
    int at = random.nextInt(text.length());
    int to = Math.min(text.length(), at + 1 + random.nextInt(40));
    return switch (random.nextInt(7)) {
      case 0 -> text.substring(0, at) + text.substring(to);
      case 1 -> text.substring(0, to) + text.substring(at);
      case 2 -> text.substring(0, Math.max(1, at));
      case 3 -> text.replace("\n", "\r\n");
      case 4 -> text.replace("mixed", "\"mixed\"").replace("P1", "\"P1\"");
      case 5 -> "\uFEFF" + text;
      default -> text.substring(0, at) + "\n" + text.substring(at);
    };
  }

  @Test
  void what_is_read_quickly_is_what_is_read_with_care() throws IOException {
    int quick = 0;
    int refused = 0;
    for (int attempt = 0; attempt < TRIES; attempt++) {
      var random = new Random(SEED + attempt);
      byte[] content = mutated(plain(random), random);
      Optional<List<String>> read = quick(content);
      Optional<List<String>> careful = slow(content);

      if (read.isPresent()) {
        assertThat(read).as("seed %d", SEED + attempt).isEqualTo(careful);
      }
      quick += read.isPresent() ? 1 : 0;
      refused += careful.isEmpty() ? 1 : 0;
    }
    assertThat(quick).isGreaterThan(TRIES / 10);
    assertThat(refused).isGreaterThan(TRIES / 10);
  }

  @Test
  void whatever_is_written_as_programs_write_it_is_read_quickly() throws IOException {
    for (int attempt = 0; attempt < TRIES; attempt++) {
      String text = plain(new Random(SEED + attempt));
      String other =
          switch (attempt % 5) {
            case 0 -> text.replace("\n", "\r\n");
            case 1 -> "\uFEFF" + text.replaceAll("([a-z_]+)", "\"$1\"").replace("J\u00f6\"", "J\"");
            case 2 -> text.substring(0, text.length() - (text.endsWith(",\n") ? 1 : 0));
            case 3 -> text + "\n  \n";
            default -> text;
          };

      Optional<List<String>> read = quick(bytes(other));

      assertThat(slow(bytes(other))).as("seed %d", SEED + attempt).isEqualTo(read);
      assertThat(read.isPresent() || attempt % 5 == 1).as("seed %d", SEED + attempt).isTrue();
    }
  }

  @Test
  void columns_may_stand_in_any_order_and_three_more_may_be_there() throws IOException {
    String text =
        "time,barrel,preparation,"
            + HEADER
            + "\n2026-03-01T21:30:00+01:00,u100-0.5,three-drug-30-1-10,"
            + "A,mixed,2,0.1,1,1,3,50,exact,"
            + "\n,,three-drug-30-1-10,A,mixed,1,0.1,1,1,4,50,exact,\n";

    assertThat(quick(bytes(text))).isPresent().isEqualTo(slow(bytes(text)));
    assertThat(quick(bytes(text.replace("+01:00", "")))).isEmpty();
    assertThat(quick(bytes(text.replace("u100", "\u0001")))).isEmpty();
    assertThat(quick(bytes(text.replace("three", "th\u0001ree")))).isEmpty();
  }

  @Test
  void lines_of_chosen_preparations_are_read_quickly_as_with_care(@TempDir Path folder)
      throws IOException {
    var quick = 0;
    for (int attempt = 0; attempt < TRIES / 10; attempt++) {
      var random = new Random(SEED + attempt);
      var text = new StringBuilder(HEADER).append(",preparation\n");
      for (int row = 1; row <= 9; row++) {
        text.append("P").append(random.nextInt(3)).append(",mixed,").append(row);
        text.append(",0.15,0.97,").append(List.of("1", "0.5").get(random.nextInt(2)));
        text.append(",3,20,exact,,").append(List.of("a", "b").get(random.nextInt(2))).append('\n');
      }
      Path file = Files.write(folder.resolve(attempt + ".csv"), bytes(text.toString()));
      for (List<String> named : List.of(List.of("a", "b"), List.of("b", "a"), List.of("b"))) {
        var choice = new PreparationChoice(named, Optional.empty());
        var careful = choice.of(HistoryFile.read(file).orThrow()).orThrow();
        var told = new Told();
        CourseFile.tell(careful, told);
        CourseFile.Found found = CourseFile.read(file, choice).orThrow();

        assertThat(found.courses().trials()).isEqualTo(careful.lines().size());
        assertThat(found.preparation()).isEqualTo(careful.preparation());
        assertThat(found.leftOut()).isEqualTo(careful.leftOut());
        var read =
            PlainCourses.read(new ByteArrayInputStream(Files.readAllBytes(file)), ANY, choice);
        var again = new Told();
        read.ifPresent(courses -> courses.tell(again));
        assertThat(read.isEmpty() || again.words.equals(told.words)).isTrue();
        quick += read.isPresent() ? 1 : 0;
      }
    }
    assertThat(quick).isGreaterThan(TRIES / 10);
  }

  @Test
  void lines_that_lie_across_the_blocks_of_a_file_are_whole() throws IOException {
    var text = new StringBuilder(HEADER).append('\n');
    for (int row = 0; row < 20_000; row++) {
      text.append("P").append(row % 3000).append(",mixed,").append(row).append(",0.15,0.97,1,3,");
      text.append(row % 97 + 1).append(".5,exact,\n");
    }

    assertThat(quick(bytes(text.toString()))).isPresent().isEqualTo(slow(bytes(text.toString())));
  }

  @Test
  void a_file_of_more_lines_than_can_be_kept_is_left_to_the_other_reader() throws IOException {
    byte[] content = bytes(HEADER + "\nA,mixed,1,0.1,1,1,2,,none,\n\nA,mixed,2,0.1,1,1,2,,none,\n");

    assertThat(PlainCourses.read(new ByteArrayInputStream(content), 3, NOT_CHOSEN)).isPresent();
    assertThat(PlainCourses.read(new ByteArrayInputStream(content), 2, NOT_CHOSEN)).isEmpty();
    assertThat(quick(bytes(HEADER + "\n" + " ".repeat(3_000_000) + "\n"))).isEmpty();
  }

  @Test
  void a_file_is_read_from_its_path_and_its_faults_are_those_of_the_history(@TempDir Path folder)
      throws IOException {
    String sound = HEADER + "\nA,mixed,1,0.1,1,1,2,,none,\nB,unknown,1,0.1,1,1,3,5,exact,\n";
    Path plain = Files.write(folder.resolve("a.csv"), bytes(sound));
    Path packed = Files.write(folder.resolve("a.csv.gz"), packed(sound));
    Path cut = folder.resolve("cut.csv.gz");
    Files.write(cut, Arrays.copyOf(packed(sound), packed(sound).length - 9));
    Path wrong = Files.write(folder.resolve("b.csv"), bytes(sound.replace("0.1", "-0.1")));

    for (Path file : List.of(plain, packed)) {
      Courses courses = CourseFile.read(file, NOT_CHOSEN).orThrow().courses();
      assertThat(courses.groups()).containsExactly("mixed", "unknown");
      assertThat(courses.trials()).isEqualTo(2);
    }
    for (Path file : List.of(cut, wrong, folder, folder.resolve("none.csv"))) {
      Reading<CourseFile.Found> reading = CourseFile.read(file, NOT_CHOSEN);
      assertThat(reading.faults()).isNotEmpty().isEqualTo(HistoryFile.read(file).faults());
    }
  }

  private static byte[] packed(String text) throws IOException {
    var bytes = new ByteArrayOutputStream();
    try (var out = new GZIPOutputStream(bytes)) {
      out.write(bytes(text));
    }
    return bytes.toByteArray();
  }
}
