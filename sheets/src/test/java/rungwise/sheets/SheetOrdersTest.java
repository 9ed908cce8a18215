package rungwise.sheets;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.Rectangle2D;
import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rungwise.clinic.course.CourseId;
import rungwise.clinic.handout.Keeping;
import rungwise.clinic.handout.SheetWorld;
import rungwise.clinic.handout.SheetWorld.Made;
import rungwise.clinic.handout.SheetWorld.Typed;
import rungwise.clinic.words.Language;
import rungwise.clinic.words.Paper;
import rungwise.dosing.known.Preparation;
import rungwise.dosing.known.SamplePreparations;
import rungwise.quantities.Volume;

/** What a document says, read back by another library and counted anew, is what was signed. */
final class SheetOrdersTest {

  private static final long SEED = 20261130;
  private static final int ORDERS = 200;
  private static final double NEAR_MILLIMETRES = 0.2;

  /** Three digits are printed, so that a mass is at most half a thousandth of it away. */
  private static final BigDecimal NEAR_MASS = new BigDecimal("0.005");

  private static final List<Preparation> PREPARATIONS =
      List.of(
          SamplePreparations.ALPROSTADIL_20,
          SamplePreparations.of("three-drug-30-1-10").orElseThrow());

  /** The printed scales: ISO 8537:2007, Table 1; what a line is worth, in microlitres. */
  enum Printed {
    HALF("u100-0.3-half", 5, 300, 41),
    SMALL("u100-0.3", 10, 300, 41),
    MIDDLE("u100-0.5", 10, 500, 43),
    LARGE("u100-1", 10, 1000, 57),
    TWO("u100-1-two", 20, 1000, 57),
    MILLILITRES("ml-1", 10, 1000, 57);

    final String token;
    final int line;
    final int capacity;
    final int least;

    Printed(String token, int line, int capacity, int least) {
      this.token = token;
      this.line = line;
      this.capacity = capacity;
      this.least = least;
    }
  }

  private static final Pattern ENGLISH =
      Pattern.compile(
          "Drawup([\\d.]+)mL\\.Thatis(?:thelinemarked([\\d.]+)"
              + "|(\\w+?)smalllinespast?(?:the(zeroline|[\\d.]+)))onyour");

  private static final Pattern SPANISH =
      Pattern.compile(
          "Cargue([\\d.]+)mL\\.Ensujeringa.*?,llegueh?asta(?:lalíneamarcada([\\d.]+)"
              + "|(\\w+?)rayas?pequeñas?despuésde(lalíneadelcero|l[\\d.]+))\\.");

  private static final List<String> COUNTS_ENGLISH =
      List.of("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine");
  private static final List<String> COUNTS_SPANISH =
      List.of("cero", "una", "dos", "tres", "cuatro", "cinco", "seis", "siete", "ocho", "nueve");

  private static final PdfPress PRESS = new PdfPress();

  @TempDir private static Path folder;
  private static OpenSheetStore store;
  private static SheetWorld world;

  @BeforeAll
  static void open() {
    store = new OpenSheetStore(folder);
    world = new SheetWorld(store.ports(), PRESS);
  }

  @AfterAll
  static void close() {
    store.close();
  }

  private static <T> T any(List<T> some, Random random) {
    return some.get(random.nextInt(some.size()));
  }

  @Test
  void what_is_printed_is_what_was_signed_for_orders_at_random() throws IOException {
    var random = new Random(SEED);
    for (Printed printed : Printed.values()) {
      for (Preparation preparation : PREPARATIONS) {
        CourseId course = world.course(preparation, printed.token);
        int share = ORDERS / (Printed.values().length * PREPARATIONS.size()) + 1;
        for (int order = 0; order < share; order++) {
          check(course, printed, preparation, random);
        }
      }
    }
  }

  private static void check(
      CourseId course, Printed printed, Preparation preparation, Random random) throws IOException {
    long most = Math.min(printed.capacity, preparation.ceiling().microlitres()) / printed.line;
    long lines = random.nextLong(1, most);
    long next = random.nextLong(lines + 1, most + 1);
    Language language = any(List.of(Language.values()), random);
    Made made =
        world.sign(
            course,
            Volume.ofMicrolitres(lines * printed.line),
            random.nextBoolean()
                ? Optional.of(Volume.ofMicrolitres(next * printed.line))
                : Optional.empty(),
            language,
            any(List.of(Paper.values()), random),
            any(List.of(Keeping.values()), random),
            Typed.PLAIN);
    byte[] pdf = PRESS.pdf(made.sheet(), made.dose());
    String read = ReadSheet.letters(pdf);

    assertThat(microlitresOf(read, language, printed)).as(read).isEqualTo(lines * printed.line);
    assertContent(read, preparation, language, lines * printed.line);
    made.sheet().words().stream()
        .filter(word -> !word.token().startsWith("sheet.current"))
        .forEach(word -> assertThat(read).contains(ReadSheet.squeezed(made.sheet().text(word))));
    assertThat(made.next().isPresent())
        .isEqualTo(read.contains(language == Language.ENGLISH ? "Onenextstep" : "Unsolopasomás"));
    made.next()
        .ifPresent(dose -> assertThat(read).contains(dose.volume().toString().replace(" ", "")));
  }

  /** The volume that is printed and the one that its line is worth, which must be the same. */
  private static long microlitresOf(String read, Language language, Printed printed) {
    Matcher said =
        (language == Language.ENGLISH ? ENGLISH : SPANISH)
            .matcher(read.replace("onesmalllinepast", "onesmalllinespast"));
    assertThat(said.find()).as(read).isTrue();
    long volume = new BigDecimal(said.group(1)).movePointRight(3).longValueExact();
    long line =
        said.group(2) != null
            ? atNumber(said.group(2), printed)
            : (long) counted(said.group(3), language) * printed.line
                + (said.group(4).contains("zero") || said.group(4).contains("cero")
                    ? 0
                    : atNumber(said.group(4).replaceAll("^l", ""), printed));
    assertThat(line).as(read).isEqualTo(volume);
    return volume;
  }

  /** A unit of a U-100 syringe is a hundredth of a millilitre. */
  private static long atNumber(String number, Printed printed) {
    int places = printed == Printed.MILLILITRES ? 3 : 1;
    return new BigDecimal(number).movePointRight(places).longValueExact();
  }

  private static int counted(String word, Language language) {
    List<String> counts = language == Language.ENGLISH ? COUNTS_ENGLISH : COUNTS_SPANISH;
    int count = counts.indexOf(word);
    return count >= 0 ? count : Integer.parseInt(word);
  }

  private static void assertContent(
      String read, Preparation preparation, Language language, long microlitres) {
    String part =
        language == Language.ENGLISH
            ? between(read, "Thisdoseholds", "EachmL")
            : between(read, "Estadosiscontiene", "CadamL");
    Matcher masses = Pattern.compile("([\\d.]+)m(?:c?g)").matcher(part);
    for (var ingredient : preparation.ingredients()) {
      assertThat(masses.find()).as(part).isTrue();
      BigDecimal strength =
          new BigDecimal(ingredient.strength().numberText(ingredient.component().unit()));
      BigDecimal exact = strength.multiply(BigDecimal.valueOf(microlitres, 3));
      assertThat(new BigDecimal(masses.group(1)).subtract(exact).abs())
          .isLessThanOrEqualTo(exact.multiply(NEAR_MASS));
    }
    assertThat(masses.find()).isFalse();
  }

  private static String between(String read, String from, String to) {
    int start = read.indexOf(from) + from.length();
    return read.substring(start, read.indexOf(to, start));
  }

  /** Measured in the drawing itself, as a ruler would on paper at 100 %. */
  @ParameterizedTest
  @CsvSource({
    "HALF, A4, 125",
    "SMALL, LETTER, 120",
    "MIDDLE, A4, 220",
    "LARGE, LETTER, 990",
    "TWO, A4, 20",
    "MILLILITRES, LETTER, 370"
  })
  void the_drawn_syringe_is_as_large_as_it_is(Printed printed, Paper paper, long microlitres)
      throws IOException {
    Made made =
        world.sign(
            world.course(PREPARATIONS.getLast(), printed.token),
            Volume.ofMicrolitres(microlitres),
            Optional.empty(),
            Language.ENGLISH,
            paper,
            Keeping.FRIDGE,
            Typed.PLAIN);
    DrawnShapes shapes = ReadSheet.shapes(PRESS.pdf(made.sheet(), made.dose()));

    List<Double> ruler = new ArrayList<>(lastTwo(shapes));
    assertThat(ruler.getLast() - ruler.getFirst()).isCloseTo(50, within(NEAR_MILLIMETRES));
    List<Double> lines = scale(shapes, printed);
    double length = lines.getLast() - lines.getFirst();
    assertThat(length).isGreaterThanOrEqualTo(printed.least - NEAR_MILLIMETRES);
    for (int at = 0; at < lines.size(); at++) {
      double wanted = (double) at * printed.line / printed.capacity * length;
      assertThat(lines.get(at) - lines.getFirst()).isCloseTo(wanted, within(NEAR_MILLIMETRES));
    }
    double edge = (double) microlitres / printed.capacity * length;
    assertThat(edges(shapes, lines.getFirst()))
        .anySatisfy(
            found ->
                assertThat(found - lines.getFirst()).isCloseTo(edge, within(NEAR_MILLIMETRES)));
  }

  private static double lowest(DrawnShapes shapes) {
    return shapes.upright().stream().mapToDouble(DrawnShapes.Line::middle).min().orElseThrow();
  }

  /** The ruler's two ends: the upright strokes that stand lowest and farthest to the right. */
  private static List<Double> lastTwo(DrawnShapes shapes) {
    List<Double> all = trueSize(shapes);
    return all.subList(all.size() - 2, all.size());
  }

  /** Upright strokes of the lower row of drawings, from left to right. */
  private static List<Double> trueSize(DrawnShapes shapes) {
    double low = lowest(shapes);
    return shapes.upright().stream()
        .filter(line -> line.middle() < low + 25)
        .filter(line -> Math.abs(line.y2() - line.y1()) < 7)
        .map(DrawnShapes.Line::x1)
        .sorted()
        .toList();
  }

  private static List<Double> scale(DrawnShapes shapes, Printed printed) {
    double low = lowest(shapes);
    int count = printed.capacity / printed.line + 1;
    List<Double> lines =
        shapes.upright().stream()
            .filter(line -> line.middle() < low + 25)
            .filter(line -> isMark(Math.abs(line.y2() - line.y1())))
            .map(DrawnShapes.Line::x1)
            .sorted()
            .toList();
    assertThat(lines).hasSize(count);
    return lines;
  }

  /** Short lines are 19, long ones 43 twelfths of a millimetre high; nothing else here is. */
  private static boolean isMark(double height) {
    return Math.abs(height - 19 / 12.0) < 0.03 || Math.abs(height - 43 / 12.0) < 0.03;
  }

  /** Left edges of the narrow dark shapes of the lower row: the stopper's front edge is one. */
  private static List<Double> edges(DrawnShapes shapes, double zero) {
    return shapes.filled().stream()
        .filter(shape -> Math.abs(shape.getWidth() - 5 / 12.0) < 0.02)
        .filter(shape -> shape.getHeight() < 7 && shape.getX() > zero)
        .sorted(Comparator.comparingDouble(Rectangle2D::getX))
        .map(Rectangle2D::getX)
        .toList();
  }
}
