package rungwise.bench;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.GZIPOutputStream;
import rungwise.dosing.response.Lasted;
import rungwise.dosing.response.Trial;

/** Writes a packed history file of as many made men with 8 injections each. A program. */
public final class ManyMenFile {

  private static final int INJECTIONS = 8;
  private static final int AT_ONCE = 1000;
  private static final int BLOCK = 1 << 16;

  private ManyMenFile() {}

  /**
   * Writes.
   *
   * @param arguments the file, and how many men in thousands
   */
  public static void main(String[] arguments) throws IOException {
    Path file = Path.of(arguments[0]);
    int thousands = Integer.parseInt(arguments[1]);
    try (OutputStream raw = new BufferedOutputStream(Files.newOutputStream(file), BLOCK);
        var out =
            new PrintStream(
                new GZIPOutputStream(raw, BLOCK), /* autoFlush= */ false, StandardCharsets.UTF_8)) {
      out.print(
          "patient,group,injection,volume_ml,potency,strength,grade,duration_min,"
              + "duration_status,duration_upper_min\n");
      for (int block = 0; block < thousands; block++) {
        List<MadeMen.Man> men =
            new MadeMen(block, MadeMen.TRUTH, /* scale= */ 1).men(AT_ONCE, INJECTIONS);
        for (int man = 0; man < men.size(); man++) {
          write(out, "P" + (block * AT_ONCE + man), men.get(man));
        }
      }
    }
  }

  private static void write(PrintStream out, String name, MadeMen.Man man) {
    int number = 0;
    for (Trial trial : man.trials()) {
      number++;
      String volume =
          BigDecimal.valueOf(MadeMen.millilitres(trial))
              .setScale(2, RoundingMode.HALF_UP)
              .stripTrailingZeros()
              .toPlainString();
      out.print(name + "," + man.group() + "," + number + "," + volume + ",1,1,");
      out.print(trial.grade().number() + "," + lasted(trial.lasted()) + "\n");
    }
  }

  private static String lasted(Lasted lasted) {
    return switch (lasted) {
      case Lasted.Exactly(double minutes) -> minutes + ",exact,";
      case Lasted.AtLeast(double minutes) -> minutes + ",right,";
      case Lasted.Between(double from, double before) -> from + ",interval," + before;
      case Lasted.NotRecorded none -> ",none,";
    };
  }
}
