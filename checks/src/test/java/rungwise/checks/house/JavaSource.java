package rungwise.checks.house;

import java.util.List;
import java.util.Set;

/**
 * What the house rules look at in one Java source.
 *
 * @param module the folder of its module
 * @param types names of the types at the top of the file
 */
public record JavaSource(
    TextFile file,
    String module,
    String packageName,
    List<Type> types,
    List<Method> methods,
    List<Literal> literals) {

  /**
   * A type, nested ones included.
   *
   * @param isTop whether it stands at the top of the file
   */
  public record Type(String name, boolean isTop) {}

  /**
   * A method or constructor with a body.
   *
   * @param type the simple name of the type around it
   * @param lines from its opening to its closing brace
   * @param annotations simple names
   */
  public record Method(String type, String name, int line, int lines, Set<String> annotations) {}

  /**
   * A text in the source; texts that are joined with a plus are one, with "…" for what stands
   * between them.
   */
  public record Literal(String text, int line) {}

  public boolean isMain() {
    return file.isMainJava();
  }

  public boolean isPackageInfo() {
    return file.path().endsWith("/package-info.java");
  }
}
