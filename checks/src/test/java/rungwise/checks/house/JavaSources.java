package rungwise.checks.house;

import com.sun.source.tree.AnnotationTree;
import com.sun.source.tree.BinaryTree;
import com.sun.source.tree.ClassTree;
import com.sun.source.tree.CompilationUnitTree;
import com.sun.source.tree.LineMap;
import com.sun.source.tree.LiteralTree;
import com.sun.source.tree.MethodTree;
import com.sun.source.tree.ParenthesizedTree;
import com.sun.source.tree.Tree;
import com.sun.source.util.JavacTask;
import com.sun.source.util.SourcePositions;
import com.sun.source.util.TreeScanner;
import com.sun.source.util.Trees;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import javax.tools.JavaFileObject;
import javax.tools.SimpleJavaFileObject;
import javax.tools.ToolProvider;
import org.jspecify.annotations.Nullable;

/** Reads Java sources with the compiler's own parser. */
public final class JavaSources {

  private static final List<JavaSource> ALL = readAll();

  private JavaSources() {}

  /** Every Java source of every module. */
  public static List<JavaSource> all() {
    return ALL;
  }

  private static List<JavaSource> readAll() {
    Map<String, TextFile> files =
        Repository.textFiles().stream()
            .filter(TextFile::isJava)
            .collect(Collectors.toMap(file -> "/" + file.path(), file -> file));
    List<Text> texts = files.values().stream().map(Text::new).toList();
    var compiler = ToolProvider.getSystemJavaCompiler();
    var task = (JavacTask) compiler.getTask(null, null, null, List.of(), null, texts);
    var positions = Trees.instance(task).getSourcePositions();
    try {
      var sources = new ArrayList<JavaSource>();
      for (CompilationUnitTree unit : task.parse()) {
        TextFile file = Objects.requireNonNull(files.get(unit.getSourceFile().getName()));
        sources.add(read(file, new Scan(unit, positions)));
      }
      return List.copyOf(sources);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static JavaSource read(TextFile file, Scan scan) {
    scan.scan(scan.unit, null);
    return new JavaSource(
        file,
        file.path().substring(0, file.path().indexOf('/')),
        Optional.ofNullable(scan.unit.getPackageName()).map(Tree::toString).orElse(""),
        scan.types,
        scan.methods,
        scan.literals);
  }

  private static final class Text extends SimpleJavaFileObject {
    private final TextFile file;

    Text(TextFile file) {
      super(URI.create("string:///" + file.path()), JavaFileObject.Kind.SOURCE);
      this.file = file;
    }

    @Override
    public CharSequence getCharContent(boolean ignoreEncodingErrors) {
      return file.text();
    }
  }

  private static final class Scan extends TreeScanner<@Nullable Object, @Nullable Object> {
    private static final String SOMETHING = "…";

    private final CompilationUnitTree unit;
    private final SourcePositions positions;
    private final LineMap lines;
    private final List<JavaSource.Type> types = new ArrayList<>();
    private final List<JavaSource.Method> methods = new ArrayList<>();
    private final List<JavaSource.Literal> literals = new ArrayList<>();
    private final Deque<String> around = new ArrayDeque<>();

    Scan(CompilationUnitTree unit, SourcePositions positions) {
      this.unit = unit;
      this.positions = positions;
      this.lines = unit.getLineMap();
    }

    private int lineOf(Tree tree) {
      return Math.toIntExact(lines.getLineNumber(positions.getStartPosition(unit, tree)));
    }

    private int lastLineOf(Tree tree) {
      return Math.toIntExact(lines.getLineNumber(positions.getEndPosition(unit, tree)));
    }

    @Override
    public @Nullable Object visitClass(ClassTree tree, @Nullable Object nothing) {
      String name = tree.getSimpleName().toString();
      if (!name.isEmpty()) {
        types.add(new JavaSource.Type(name, around.isEmpty()));
      }
      around.push(name);
      super.visitClass(tree, nothing);
      around.pop();
      return null;
    }

    @Override
    public @Nullable Object visitMethod(MethodTree tree, @Nullable Object nothing) {
      if (tree.getBody() != null && positions.getEndPosition(unit, tree) >= 0) {
        Set<String> annotations =
            tree.getModifiers().getAnnotations().stream()
                .map(AnnotationTree::getAnnotationType)
                .map(Tree::toString)
                .collect(Collectors.toSet());
        methods.add(
            new JavaSource.Method(
                around.getFirst(),
                tree.getName().toString(),
                lineOf(tree),
                lastLineOf(tree) - lineOf(tree.getBody()) + 1,
                annotations));
      }
      return super.visitMethod(tree, nothing);
    }

    @Override
    public @Nullable Object visitBinary(BinaryTree tree, @Nullable Object nothing) {
      var parts = new ArrayList<Tree>();
      flatten(tree, parts);
      if (parts.stream().noneMatch(Scan::isText)) {
        return super.visitBinary(tree, nothing);
      }
      String joined =
          parts.stream()
              .map(part -> isText(part) ? textOf(part) : SOMETHING)
              .collect(Collectors.joining());
      literals.add(new JavaSource.Literal(joined, lineOf(tree)));
      parts.stream().filter(part -> !isText(part)).forEach(part -> scan(part, nothing));
      return null;
    }

    private static void flatten(Tree tree, List<Tree> parts) {
      switch (tree) {
        case BinaryTree plus when plus.getKind() == Tree.Kind.PLUS -> {
          flatten(plus.getLeftOperand(), parts);
          flatten(plus.getRightOperand(), parts);
        }
        case ParenthesizedTree inner when inner.getExpression() instanceof BinaryTree ->
            flatten(inner.getExpression(), parts);
        default -> parts.add(tree);
      }
    }

    private static boolean isText(Tree tree) {
      return tree.getKind() == Tree.Kind.STRING_LITERAL;
    }

    private static String textOf(Tree tree) {
      return String.valueOf(((LiteralTree) tree).getValue());
    }

    @Override
    public @Nullable Object visitLiteral(LiteralTree tree, @Nullable Object nothing) {
      if (isText(tree)) {
        literals.add(new JavaSource.Literal(textOf(tree), lineOf(tree)));
      }
      return null;
    }
  }
}
