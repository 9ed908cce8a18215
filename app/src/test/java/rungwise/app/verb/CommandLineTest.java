package rungwise.app.verb;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CommandLineTest {

  @TempDir private Path folder = Path.of("");

  private record Outcome(int status, String out, String err) {}

  private static Outcome run(String... arguments) {
    PrintStream outBefore = System.out;
    PrintStream errBefore = System.err;
    var out = new ByteArrayOutputStream();
    var err = new ByteArrayOutputStream();
    System.setOut(new PrintStream(out, true, StandardCharsets.UTF_8));
    System.setErr(new PrintStream(err, true, StandardCharsets.UTF_8));
    try {
      int status = RungwiseCommand.run(arguments);
      return new Outcome(
          status, out.toString(StandardCharsets.UTF_8), err.toString(StandardCharsets.UTF_8));
    } finally {
      System.setOut(outBefore);
      System.setErr(errBefore);
    }
  }

  @Test
  void help_is_a_result_and_lists_the_verbs() {
    Outcome outcome = run("--help");

    assertThat(outcome.status()).isZero();
    assertThat(outcome.out())
        .contains("serve", "demo", "verify", "2   wrong use")
        .doesNotContain("warm-up");
    assertThat(outcome.err()).isEmpty();
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "inject",
        "serve",
        "serve --data . --port many",
        "serve --data . --port 65536",
        "serve --data . --port -1",
        "serve --data no/such/folder --port 0",
        "serve --data . --zone Mars/Olympus",
        "serve --data . --clinic=",
        "serve --data . --tls-key key.pem",
        "serve --data . --tls-key key.pem --tls-certificate certificate.pem",
        "serve --data . --second-factor sometimes",
        "serve --data . --shift-hours 0",
        "serve --data . --shift-hours 25",
        "serve --data . --public-address http://clinic.example",
        "serve --data . --public-address https://clinic.example/path",
        "serve --data . --oidc-issuer https://provider.example",
        "serve --data . --oidc-issuer https://provider.example --oidc-client-id x",
        "serve --data . --oidc-issuer https://provider.example --oidc-client-id x"
            + " --oidc-client-secret-file no/such/file",
        "demo --address 0.0.0.0",
        "verify",
        "verify --data no/such/folder",
        "verify --data . --kept-seal 12"
      })
  void wrong_use_ends_with_2_and_says_why_on_standard_error_only(String line) {
    Outcome outcome = run(line.isEmpty() ? new String[0] : line.split(" ", -1));

    assertThat(outcome.status()).isEqualTo(2);
    assertThat(outcome.out()).isEmpty();
    assertThat(outcome.err()).isNotBlank().doesNotContain("Exception", "\tat ");
  }

  @ParameterizedTest
  @ValueSource(strings = {"--time-source", "--oidc-client-id x --oidc-issuer"})
  void nothing_elsewhere_is_talked_to_in_clear(String option) {
    Outcome outcome = run(("serve --data . " + option + " http://else.example").split(" ", -1));

    assertThat(outcome.status()).isEqualTo(2);
    assertThat(outcome.err()).contains("http://else.example cannot be used: give https");
  }

  @Test
  void a_port_that_is_taken_is_wrong_use_and_leaves_the_folder_free() throws IOException {
    try (var taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      String port = Integer.toString(taken.getLocalPort());

      Outcome first = run("serve", "--data", folder.toString(), "--port", port);
      Outcome second = run("serve", "--data", folder.toString(), "--port", port);

      assertThat(first.status()).isEqualTo(2);
      assertThat(first.err()).contains("port " + port, "--port");
      assertThat(second.err().lines().toList()).endsWith(lastLine(first.err()));
    }
  }

  /** What is for the person; a library may say before it that nobody reads its log. */
  private static String lastLine(String text) {
    return text.lines().reduce("", (before, line) -> line);
  }

  @Test
  void files_that_are_no_certificate_and_key_are_wrong_use() throws IOException {
    Path file = Files.writeString(folder.resolve("x.pem"), "nothing");
    Path data = Files.createDirectory(folder.resolve("data"));

    Outcome outcome =
        run(
            "serve",
            "--port=0",
            "--data=" + data,
            "--tls-certificate=" + file,
            "--tls-key=" + file);

    assertThat(outcome.status()).isEqualTo(2);
    assertThat(outcome.err()).contains("PEM files that belong together");
  }

  @Test
  void the_warm_up_starts_a_server_and_stops_it_again() {
    Outcome outcome = run("warm-up");

    assertThat(outcome.status()).as(outcome.err()).isZero();
  }

  @Test
  void a_demonstration_that_is_told_to_end_leaves_nothing_behind() throws Exception {
    Process demo =
        new ProcessBuilder(
                ProcessHandle.current().info().command().orElseThrow(),
                "-XX:TieredStopAtLevel=1",
                "-Djava.io.tmpdir=" + folder,
                "-cp",
                System.getProperty("java.class.path"),
                "rungwise.app.Main",
                "demo",
                "--port=0")
            .redirectError(ProcessBuilder.Redirect.DISCARD)
            .start();
    List<String> printed = new ArrayList<>();
    try (var out = demo.inputReader(StandardCharsets.UTF_8)) {
      for (String line = out.readLine(); line != null; line = out.readLine()) {
        printed.add(line);
        if (line.equals("ready")) {
          demo.toHandle().destroy();
        }
      }
    }
    demo.waitFor();

    assertThat(printed).contains("ready");
    try (var left = Files.list(folder)) {
      assertThat(left.filter(file -> file.getFileName().toString().startsWith("rungwise-")))
          .isEmpty();
    }
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"--help", "--version", "serve --help", "demo --help", "verify --help", "inject"})
  void what_needs_no_server_loads_none_of_it(String line) throws Exception {
    List<String> command =
        new ArrayList<>(
            List.of(
                ProcessHandle.current().info().command().orElseThrow(),
                "-Xlog:class+load",
                "-XX:TieredStopAtLevel=1",
                "-cp",
                System.getProperty("java.class.path"),
                "rungwise.app.Main"));
    command.addAll(List.of(line.split(" ", -1)));
    Process process =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD).start();
    String loaded = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    process.waitFor();

    assertThat(loaded).contains("rungwise.app.verb.RungwiseCommand");
    assertThat(loaded.lines().filter(text -> text.contains(" org.springframework."))).isEmpty();
    assertThat(loaded.lines().filter(text -> text.contains(" org.jooq."))).isEmpty();
  }
}
