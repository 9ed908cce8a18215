package rungwise.files.history;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** Texts as their bytes in UTF-8, each once, numbered from 0 in the order in which they came. */
final class TextTable {

  private static final int FIRST_SIZE = 64;
  private static final int MIX = 0x9E3779B9;
  private static final int HALF_OF_THE_BITS = 16;
  private static final int FACTOR = 31;

  private byte[] pool = new byte[FIRST_SIZE];

  /** Where each text ends in the pool, the one before it being where it begins. */
  private int[] ends = new int[FIRST_SIZE];

  /** The number of a text and one more, at its hash or after; 0 where there is none. */
  private int[] slots = new int[FIRST_SIZE];

  private int count = 0;

  int count() {
    return count;
  }

  /** The number of a text; -1 if it is not there. */
  int find(byte[] bytes, int from, int to) {
    int mask = slots.length - 1;
    int slot = hash(bytes, from, to) & mask;
    while (slots[slot] > 0) {
      if (is(slots[slot] - 1, bytes, from, to)) {
        return slots[slot] - 1;
      }
      slot = (slot + 1) & mask;
    }
    return -1;
  }

  /** Whether a text is the one of that number. */
  boolean is(int number, byte[] bytes, int from, int to) {
    return Arrays.equals(pool, start(number), ends[number], bytes, from, to);
  }

  /** Adds a text that is not there, and gives its number. */
  int add(byte[] bytes, int from, int to) {
    int start = start(count);
    int end = start + to - from;
    if (end > pool.length) {
      pool = Arrays.copyOf(pool, 2 * end);
    }
    System.arraycopy(bytes, from, pool, start, to - from);
    if (count == ends.length) {
      ends = Arrays.copyOf(ends, 2 * count);
    }
    ends[count] = end;
    count++;
    if (2 * count > slots.length) {
      slots = new int[2 * slots.length];
      for (int number = 0; number < count; number++) {
        enter(number);
      }
    } else {
      enter(count - 1);
    }
    return count - 1;
  }

  String text(int number) {
    int start = start(number);
    return new String(pool, start, ends[number] - start, StandardCharsets.UTF_8);
  }

  private int start(int number) {
    return number == 0 ? 0 : ends[number - 1];
  }

  private void enter(int number) {
    int mask = slots.length - 1;
    int slot = hash(pool, start(number), ends[number]) & mask;
    while (slots[slot] > 0) {
      slot = (slot + 1) & mask;
    }
    slots[slot] = number + 1;
  }

  private static int hash(byte[] bytes, int from, int to) {
    int hash = 0;
    for (int at = from; at < to; at++) {
      hash = FACTOR * hash + bytes[at];
    }
    int mixed = hash * MIX;
    return mixed ^ (mixed >>> HALF_OF_THE_BITS);
  }
}
