package rungwise.clinic.standing;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;

/** Looks each thing up once while one course is read; not for several threads. */
public final class Remembered<K, V> implements Function<K, V> {

  private final Function<K, V> source;
  private final Map<K, V> found = new HashMap<>();

  public Remembered(Function<K, V> source) {
    this.source = source;
  }

  @Override
  public V apply(K key) {
    return found.computeIfAbsent(key, source);
  }
}
