package rungwise.web.secrets;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.BiPredicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import me.gosimple.nbvcxz.Nbvcxz;
import me.gosimple.nbvcxz.resources.Configuration;
import me.gosimple.nbvcxz.resources.ConfigurationBuilder;
import me.gosimple.nbvcxz.resources.Dictionary;
import me.gosimple.nbvcxz.resources.DictionaryBuilder;
import me.gosimple.nbvcxz.resources.DictionaryUtil;

/**
 * How soon a password would be guessed, by a kept library with its list of the 100,000 most common
 * ones, of names and of words, also with letters exchanged, dates, rows of keys and repetitions.
 * The names of its owner and of the clinic are tried before all of them.
 */
public final class GuessedPasswords implements BiPredicate<String, Set<String>> {

  /** Below it a stolen hash does not help its owner (the library's own scale: "weak"). */
  private static final BigDecimal FEW = BigDecimal.TEN.pow(8);

  private static final String NOT_LETTERS = "[^\\p{L}\\p{N}]+";
  private static final int LONGEST = 256;
  private static final int SHORTEST_PART = 3;

  /** What the library knows, read when somebody first chooses a password, once in a process. */
  private static final class Known {

    /** Whole ones; of some the library thinks as of two words. */
    private static final Set<String> COMMON =
        DictionaryUtil.loadRankedDictionary(DictionaryUtil.passwords).keySet().stream()
            .map(one -> one.toLowerCase(Locale.ROOT))
            .collect(Collectors.toUnmodifiableSet());

    private static final List<Dictionary> LISTS = ConfigurationBuilder.getDefaultDictionaries();
  }

  @Override
  public boolean test(String password, Set<String> names) {
    String lower = password.toLowerCase(Locale.ROOT);
    return Known.COMMON.contains(lower) || guesses(lower, names).compareTo(FEW) < 0;
  }

  private BigDecimal guesses(String password, Set<String> names) {
    Configuration configuration =
        new ConfigurationBuilder()
            .setLocale(Locale.ROOT)
            .setMaxLength(LONGEST)
            .setDictionaries(
                Stream.concat(Stream.of(dictionaryOf(names)), Known.LISTS.stream()).toList())
            .createConfiguration();
    return new Nbvcxz(configuration).estimate(password).getGuesses();
  }

  /** Whole names without their blanks and signs, and their parts. */
  private static Dictionary dictionaryOf(Set<String> names) {
    List<String> words =
        names.stream()
            .map(name -> name.toLowerCase(Locale.ROOT))
            .flatMap(
                name ->
                    Stream.concat(
                        Stream.of(name, name.replaceAll(NOT_LETTERS, "")),
                        Arrays.stream(name.split(NOT_LETTERS))))
            .filter(word -> word.length() >= SHORTEST_PART)
            .distinct()
            .toList();
    return new DictionaryBuilder()
        .setDictionaryName("names")
        .setExclusion(false)
        .addWords(words, 1)
        .createDictionary();
  }
}
