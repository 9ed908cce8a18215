package rungwise.web.secrets;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class Argon2HashingTest {

  private final Argon2Hashing hashing = new Argon2Hashing();

  @Test
  void a_hash_names_the_method_and_its_cost() {
    assertThat(hashing.hash("four quiet words here"))
        .startsWith("$argon2id$v=19$m=19456,t=2,p=1$")
        .doesNotContain("quiet");
  }

  @Test
  void the_same_secret_has_another_hash_each_time_and_matches_both() {
    String first = hashing.hash("secret");
    String second = hashing.hash("secret");

    assertThat(first).isNotEqualTo(second);
    assertThat(hashing.matches("secret", first)).isTrue();
    assertThat(hashing.matches("secret", second)).isTrue();
    assertThat(hashing.matches("Secret", first)).isFalse();
  }

  @Test
  void a_hash_of_another_kind_matches_nothing() {
    assertThat(hashing.matches("secret", "$2a$10$something-else")).isFalse();
  }
}
