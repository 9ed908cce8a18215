package rungwise.store.kill;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.spi.ToolProvider;

/**
 * Starts this test's own classes in a process of their own, fast: folders of classes are packed
 * into jars and a start-up cache of the JDK is made once.
 */
final class ChildJvm {

  private static final List<String> OPTIONS =
      List.of("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC", "--enable-native-access=ALL-UNNAMED");

  private final Path work;
  private final String classPath;

  private ChildJvm(Path work, String classPath) {
    this.work = work;
    this.classPath = classPath;
  }

  /** Packs what is needed into a folder and runs once with these arguments, to learn. */
  static ChildJvm prepare(Path work, List<String> arguments) throws Exception {
    var child = new ChildJvm(work, packed(work));
    Process learning = child.start("-XX:AOTCacheOutput=" + child.cache(), arguments);
    learning.getInputStream().readAllBytes();
    if (learning.waitFor() != 0) {
      throw new IllegalStateException("the child cannot run: see what it prints by itself");
    }
    return child;
  }

  private static String packed(Path work) {
    String given =
        System.getProperty(
            "surefire.test.class.path", System.getProperty("java.class.path", "nowhere"));
    ToolProvider jar = ToolProvider.findFirst("jar").orElseThrow();
    var packed = new ArrayList<String>();
    for (String part : given.split(File.pathSeparator, -1)) {
      if (Files.isDirectory(Path.of(part))) {
        String file = work.resolve("classes-" + packed.size() + ".jar").toString();
        if (jar.run(System.out, System.err, "--create", "--file", file, "-C", part, ".") != 0) {
          throw new IllegalStateException("cannot pack " + part);
        }
        packed.add(file);
      } else {
        packed.add(part);
      }
    }
    return String.join(File.pathSeparator, packed);
  }

  private Path cache() {
    return work.resolve("child.aot");
  }

  Process start(List<String> arguments) throws IOException {
    String option =
        Files.exists(cache()) ? "-XX:AOTCache=" + cache() : "-XX:AOTMode=auto"; // slower, not wrong
    return start(option, arguments);
  }

  private Process start(String option, List<String> arguments) throws IOException {
    var command = new ArrayList<String>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(OPTIONS);
    command.addAll(List.of(option, "-cp", classPath, WriterUnderFire.class.getName()));
    command.addAll(arguments);
    return new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.DISCARD).start();
  }
}
