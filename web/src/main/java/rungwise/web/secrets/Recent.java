package rungwise.web.secrets;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/** A map that forgets what was longest unused, so that strangers cannot fill the memory. */
final class Recent<K, V> {

  private final int most;
  private final Map<K, V> entries = new LinkedHashMap<>();

  Recent(int most) {
    this.most = most;
  }

  synchronized Optional<V> find(K key) {
    Optional<V> found = Optional.ofNullable(entries.remove(key));
    found.ifPresent(value -> entries.put(key, value));
    return found;
  }

  synchronized V findOrMake(K key, Supplier<V> maker) {
    return find(key).orElseGet(() -> put(key, maker.get()));
  }

  synchronized V put(K key, V value) {
    entries.remove(key);
    entries.put(key, value);
    if (entries.size() > most) {
      entries.remove(entries.keySet().iterator().next());
    }
    return value;
  }

  synchronized void forget(K key) {
    entries.remove(key);
  }
}
