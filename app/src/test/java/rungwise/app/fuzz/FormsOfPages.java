package rungwise.app.fuzz;

import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import rungwise.app.forms.AnyForm;

/** Every form of a running server: whatever is sent, no answer says that the program failed. */
final class FormsOfPages implements Target.Reader {

  private static final int FORMS = 110;
  private static final int FAILURE = 500;

  /** Each form as it stands, and some with fields changed. */
  static final List<String> SEEDS =
      Stream.concat(
              IntStream.range(0, FORMS).mapToObj(form -> "\u0000" + (char) form),
              Stream.of(
                  "\u0000\u0001\u0002NaN\n\u0003\u0002",
                  "\u0000\u0005\u0001\u0001\u0001\n\u00022026-03-01\n\u000321:30",
                  "\u0000\u0014\u0000-1\n\u00010.2\n\u0004\u0001\u0002\u0003",
                  "\u0000#\u0001a\u0004b\n\u0002\u202E\n\u0000\u0003",
                  "\u000021\n2 2\n31e9\n49999-12-31\n524:00"))
          .toList();

  private final AnyForm forms = new AnyForm();

  @Override
  public void read(byte[] input) {
    int status = forms.answerTo(input);
    Hold.that(status < FAILURE, () -> "answered with " + status);
  }
}
