package rungwise.dosing.predictive;

import java.util.random.RandomGenerator;

/**
 * The random numbers of one course, which depend on its seed alone, whoever works on it. SplitMix64
 * (Steele, Lea and Flood, OOPSLA 2014, figure 17).
 */
final class CourseRandom implements RandomGenerator {

  private static final long GOLDEN = 0x9e3779b97f4a7c15L;
  private static final long FIRST = 0xbf58476d1ce4e5b9L;
  private static final long SECOND = 0x94d049bb133111ebL;
  private static final int SHIFT_FIRST = 30;
  private static final int SHIFT_SECOND = 27;
  private static final int SHIFT_LAST = 31;

  private long state;

  CourseRandom(long seed) {
    state = seed;
  }

  @Override
  public long nextLong() {
    state += GOLDEN;
    long mixed = (state ^ (state >>> SHIFT_FIRST)) * FIRST;
    mixed = (mixed ^ (mixed >>> SHIFT_SECOND)) * SECOND;
    return mixed ^ (mixed >>> SHIFT_LAST);
  }
}
