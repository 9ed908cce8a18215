package rungwise.checks.house;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * A file of the repository.
 *
 * @param path from the root, with slashes
 */
public record TextFile(String path, String text) {

  public List<String> lines() {
    return text.lines().toList();
  }

  public boolean isJava() {
    return path.endsWith(".java");
  }

  /** Whether it is part of the product or of a program, and not a test. */
  public boolean isMainJava() {
    return isJava() && path.contains("/src/main/java/");
  }

  /** "path:line: the line" for each line in which the pattern is found. */
  public Stream<String> findings(Pattern pattern) {
    List<String> lines = lines();
    var found = new ArrayList<String>();
    for (int i = 0; i < lines.size(); i++) {
      if (pattern.matcher(lines.get(i)).find()) {
        found.add(path + ":" + (i + 1) + ": " + lines.get(i).strip());
      }
    }
    return found.stream();
  }
}
