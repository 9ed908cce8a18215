package rungwise.dosing.predictive;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import rungwise.dosing.response.Trial;

/**
 * How surprising each man's reports are after his earlier ones. Each course is taken once, by
 * whichever worker.
 */
final class Surprises {

  /** As rare as this a grade or a time is counted: an assumption. */
  static final double RARE = 0.01;

  private static final int MOST_NAMED = 5;
  private static final double SMALLEST = Double.MIN_NORMAL;

  private final int[] numbers;
  private final int[] told;
  private final int[] rare;
  private final double[] expected;
  private final double[] logs;

  /**
   * Of courses.
   *
   * @param numbers what each is numbered among all courses, from 0
   */
  Surprises(int[] numbers) {
    this.numbers = numbers.clone();
    told = new int[numbers.length];
    rare = new int[numbers.length];
    expected = new double[numbers.length];
    logs = new double[numbers.length];
  }

  /** Takes a course at its place, with what was foreseen of each trial. */
  void take(int place, List<Trial> trials, List<Ahead> foreseen) {
    for (int i = 0; i < trials.size(); i++) {
      Trial trial = trials.get(i);
      double[] chances = foreseen.get(i).grades();
      int grade = Math.max(1, trial.grade().number());
      add(place, Rarity.ofGrade(chances, grade), Rarity.chanceOfGrades(chances, RARE));
      if (Reported.isTimed(trial)) {
        double own = chances[grade - 1];
        double over = foreseen.get(i).overShortest() / own;
        add(place, Rarity.ofTime(over, foreseen.get(i).overLongest() / own), RARE);
      }
    }
  }

  private void add(int place, double rarity, double chance) {
    told[place]++;
    rare[place] += rarity <= RARE ? 1 : 0;
    expected[place] += chance;
    logs[place] += Math.log(Math.max(rarity, SMALLEST));
  }

  Predicted.Surprise found() {
    List<Predicted.Man> men =
        IntStream.range(0, numbers.length)
            .mapToObj(
                place ->
                    new Predicted.Man(
                        numbers[place], rare[place], Rarity.ofProduct(logs[place], told[place])))
            .toList();
    return new Predicted.Surprise(
        Arrays.stream(told).sum(),
        Arrays.stream(rare).sum(),
        Arrays.stream(expected).sum(),
        men.stream()
            .sorted(Comparator.comparingDouble(Predicted.Man::chance))
            .filter(man -> man.chance() <= RARE)
            .limit(MOST_NAMED)
            .toList(),
        men.stream()
            .filter(man -> man.chance() * men.size() <= Predicted.TOO_RARE)
            .map(Predicted.Man::course)
            .toList());
  }
}
