package rungwise.web.access;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Map;
import org.junit.jupiter.api.Test;
import org.springframework.web.servlet.FlashMap;
import rungwise.web.access.SentForms.Answer;

class SentFormsTest {

  private static final int MANY = 33;

  private static Answer to(String location) {
    return new Answer(location, new FlashMap());
  }

  private static String digest(String path, String... values) {
    return SentForms.digest(path, Map.of("mark", values));
  }

  @Test
  void the_same_form_is_known_again_and_another_is_not() {
    var sent = new SentForms();
    sent.keep(digest("/courses/1/report", "25"), to("/courses/1"));

    assertThat(sent.answerTo(digest("/courses/1/report", "25")))
        .hasValueSatisfying(answer -> assertThat(answer.location()).isEqualTo("/courses/1"));
    assertThat(sent.answerTo(digest("/courses/1/report", "26"))).isEmpty();
    assertThat(sent.answerTo(digest("/courses/2/report", "25"))).isEmpty();
  }

  @Test
  void values_that_join_to_the_same_text_are_different_forms() {
    assertThat(digest("/p", "a", "b")).isNotEqualTo(digest("/p", "ab"));
    assertThat(digest("/p", "a", "b")).isNotEqualTo(digest("/p", "a=b"));
    assertThat(SentForms.digest("/p", Map.of("a", new String[] {"1"}, "b", new String[] {"2"})))
        .isNotEqualTo(
            SentForms.digest("/p", Map.of("a", new String[] {"2"}, "b", new String[] {"1"})));
  }

  @Test
  void only_the_last_thirty_two_are_kept() {
    var sent = new SentForms();
    for (int form = 0; form < MANY; form++) {
      sent.keep("form " + form, to("/"));
    }

    assertThat(sent.answerTo("form 0")).isEmpty();
    assertThat(sent.answerTo("form 1")).isPresent();
    assertThat(sent.answerTo("form 32")).isPresent();
  }
}
