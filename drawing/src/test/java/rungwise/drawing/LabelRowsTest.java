package rungwise.drawing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rungwise.drawing.LabelRows.Label;
import rungwise.drawing.LabelRows.Placed;

final class LabelRowsTest {

  private static final int LINE = 400;

  private static List<Label> labels(long seed) {
    var random = new Random(seed);
    return IntStream.range(0, 1 + random.nextInt(30))
        .mapToObj(
            i -> new Label(random.nextInt(LINE), "x".repeat(1 + i % 9), random.nextInt(3) == 0))
        .toList();
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
  void no_label_covers_another_of_its_row(long seed) {
    List<Placed> placed = LabelRows.of(labels(seed));

    for (int i = 0; i < placed.size(); i++) {
      Placed one = placed.get(i);
      assertThat(placed.subList(0, i))
          .filteredOn(other -> other.row() == one.row())
          .allSatisfy(
              other ->
                  assertThat(Math.abs(one.label().x() - other.label().x()))
                      .isGreaterThan((width(one) + width(other)) / 2));
    }
  }

  private static double width(Placed placed) {
    return Pen.widthOf(placed.label().words());
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
  void a_label_that_matters_is_never_left_out_and_others_stay_in_the_first_row(long seed) {
    List<Label> labels = labels(seed);

    List<Placed> placed = LabelRows.of(labels);

    assertThat(placed.stream().map(Placed::label))
        .containsAll(labels.stream().filter(Label::isKept).toList());
    assertThat(placed)
        .filteredOn(one -> !one.label().isKept())
        .allSatisfy(one -> assertThat(one.row()).isZero());
    assertThat(LabelRows.count(placed))
        .isEqualTo(1 + placed.stream().mapToInt(Placed::row).max().orElseThrow());
  }
}
