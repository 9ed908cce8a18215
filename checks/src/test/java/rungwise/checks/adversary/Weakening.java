package rungwise.checks.adversary;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.lang.classfile.ClassFile;
import java.lang.classfile.ClassModel;
import java.lang.classfile.ClassTransform;
import java.lang.classfile.CodeBuilder;
import java.lang.classfile.CodeModel;
import java.lang.classfile.MethodModel;
import java.lang.constant.ClassDesc;
import java.lang.constant.MethodTypeDesc;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Consumer;
import rungwise.checks.adversary.law.Judge;
import rungwise.checks.adversary.law.Law;

/**
 * One guard or predicate of the product made weaker: its method answers always the same. The
 * product and the adversary are loaded anew around it.
 *
 * @param says what a reader would have written by mistake
 * @param type the class, without "rungwise."
 * @param from the first record that is looked at; above 1 where a fault is rare, so that the record
 *     that finds it comes soon
 */
record Weakening(String says, String type, String method, Answer answer, int from) {

  /** One that is found among the first records. */
  Weakening(String says, String type, String method, Answer answer) {
    this(says, type, method, answer, 1);
  }

  /** The same, looked for from a record on. */
  Weakening from(int record) {
    return new Weakening(says, type, method, answer, record);
  }

  /** What the weakened method answers. */
  enum Answer {
    YES(code -> code.iconst_1().ireturn()),
    NO(code -> code.iconst_0().ireturn()),
    NOTHING(CodeBuilder::return_),
    NO_WORDS(code -> code.ldc("").areturn()),
    EMPTY(code -> empty(code, Optional.class, "empty")),
    NONE(code -> empty(code, List.class, "of"));

    private final Consumer<CodeBuilder> body;

    Answer(Consumer<CodeBuilder> body) {
      this.body = body;
    }

    private static void empty(CodeBuilder code, Class<?> type, String method) {
      ClassDesc desc = type.describeConstable().orElseThrow();
      code.invokestatic(desc, method, MethodTypeDesc.of(desc), type.isInterface()).areturn();
    }
  }

  /** Loads every class of the product itself, and one of them weakened. */
  private static final class Loader extends ClassLoader {

    private final Weakening weakening;
    private boolean isDone;

    Loader(Weakening weakening) {
      super(Weakening.class.getClassLoader());
      this.weakening = weakening;
    }

    @Override
    protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
      if (!name.startsWith("rungwise.")) {
        return super.loadClass(name, resolve);
      }
      synchronized (getClassLoadingLock(name)) {
        Class<?> loaded = findLoadedClass(name);
        return loaded == null ? define(name) : loaded;
      }
    }

    private Class<?> define(String name) throws ClassNotFoundException {
      String path = name.replace('.', '/') + ".class";
      try (InputStream in = getResourceAsStream(path)) {
        if (in == null) {
          throw new ClassNotFoundException(name);
        }
        byte[] bytes = in.readAllBytes();
        if (name.equals("rungwise." + weakening.type())) {
          bytes = weakening.weaken(bytes);
          isDone = true;
        }
        return defineClass(name, bytes, 0, bytes.length);
      } catch (IOException unreadable) {
        throw new UncheckedIOException(unreadable);
      }
    }
  }

  private byte[] weaken(byte[] bytes) {
    ClassModel model = ClassFile.of().parse(bytes);
    boolean isThere =
        model.methods().stream().anyMatch(one -> one.methodName().equalsString(method));
    if (!isThere) {
      throw new IllegalStateException(type + " has no " + method + ": name another one");
    }
    return ClassFile.of()
        .transformClass(
            model,
            ClassTransform.transformingMethods(
                this::isMeant,
                (builder, element) -> {
                  if (element instanceof CodeModel) {
                    builder.withCode(answer.body);
                  } else {
                    builder.with(element);
                  }
                }));
  }

  private boolean isMeant(MethodModel one) {
    return one.methodName().equalsString(method);
  }

  /**
   * The law that the adversary finds broken, and by which record.
   *
   * @return the words of {@link #firstBroken}
   */
  String found(int records) {
    var loader = new Loader(this);
    try {
      Class<?> anew = loader.loadClass(Weakening.class.getName());
      var found = anew.getDeclaredMethod("firstBroken", int.class, int.class);
      found.setAccessible(true);
      String words = (String) Objects.requireNonNull(found.invoke(null, from, records));
      if (!loader.isDone) {
        throw new IllegalStateException(type + " was never needed: name another one");
      }
      return words;
    } catch (ReflectiveOperationException failed) {
      throw new IllegalStateException(failed);
    }
  }

  /** "CLOSED by record 12", or that none broke a law. */
  static String firstBroken(int from, int records) {
    var house = new House();
    var judge = new Judge(Law.AWAITED);
    for (int i = from; i < from + records; i++) {
      Optional<Life.Broken> broken = Life.live(house, judge, Act.record(i));
      if (broken.isPresent()) {
        return broken.get().breach().law() + " by record " + i;
      }
    }
    return "no law by " + records + " records";
  }
}
