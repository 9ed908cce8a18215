import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;
import org.flywaydb.core.Flyway;
import org.jooq.codegen.GenerationTool;
import org.jooq.meta.jaxb.Configuration;
import org.jooq.meta.jaxb.Database;
import org.jooq.meta.jaxb.ForcedType;
import org.jooq.meta.jaxb.Generate;
import org.jooq.meta.jaxb.Generator;
import org.jooq.meta.jaxb.Jdbc;
import org.jooq.meta.jaxb.Logging;
import org.jooq.meta.jaxb.Target;

/**
 * Makes the table classes: runs the migrations on an empty database and reads it. Does nothing if
 * neither they nor this file changed since. Arguments: folder of the migrations, folder to fill,
 * this file.
 */
final class Codegen {

  private Codegen() {}

  public static void main(String[] args) throws Exception {
    Path migrations = Path.of(args[0]);
    Path target = Path.of(args[1]);
    Path stamp = target.resolveSibling("jooq.stamp");
    String state = stateOf(migrations, Path.of(args[2]));
    if (Files.exists(stamp) && Files.readString(stamp).equals(state)) {
      return;
    }
    Logger.getLogger("").setLevel(Level.WARNING);
    Files.createDirectories(target);
    Path database = Files.createTempFile("tables", ".db");
    try {
      String url = "jdbc:sqlite:" + database;
      Flyway.configure()
          .dataSource(url, null, null)
          .locations("filesystem:" + migrations)
          .load()
          .migrate();
      GenerationTool.generate(configuration(url, target));
    } finally {
      Files.delete(database);
    }
    Files.writeString(stamp, state);
  }

  private static Configuration configuration(String url, Path target) {
    return new Configuration()
        .withLogging(Logging.WARN)
        .withJdbc(new Jdbc().withDriver("org.sqlite.JDBC").withUrl(url))
        .withGenerator(
            new Generator()
                .withDatabase(
                    new Database()
                        .withName("org.jooq.meta.sqlite.SQLiteDatabase")
                        .withInputSchema("")
                        .withExcludes("flyway_schema_history|sqlite_.*")
                        .withForcedTypes(
                            forced("INSTANT", "timestamp.*"), forced("BOOLEAN", "boolean")))
                .withGenerate(new Generate().withGeneratedAnnotation(false))
                .withTarget(
                    new Target()
                        .withPackageName("rungwise.store.schema")
                        .withDirectory(target.toString())));
  }

  private static ForcedType forced(String name, String types) {
    return new ForcedType().withName(name).withIncludeTypes("(?i:" + types + ")");
  }

  private static String stateOf(Path migrations, Path thisFile) throws Exception {
    try (var files = Files.list(migrations)) {
      var digest = MessageDigest.getInstance("SHA-256");
      for (Path file : Stream.concat(Stream.of(thisFile), files.sorted()).toList()) {
        digest.update(file.getFileName().toString().getBytes(StandardCharsets.UTF_8));
        digest.update(Files.readAllBytes(file));
      }
      return HexFormat.of().formatHex(digest.digest());
    }
  }
}
