import gg.jte.ContentType;
import gg.jte.TemplateEngine;
import gg.jte.resolve.DirectoryCodeResolver;
import gg.jte.runtime.Constants;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.stream.Stream;

/**
 * Makes Java source of the page templates. Does nothing if neither they nor this file changed
 * since, because new sources would have everything after them compiled again. Arguments: folder of
 * the templates, folder for sources, folder for static text, this file.
 */
final class TemplateCode {

  private TemplateCode() {}

  public static void main(String[] args) throws Exception {
    Path templates = Path.of(args[0]);
    Path sources = Path.of(args[1]);
    Path texts = Path.of(args[2]);
    Path stamp = sources.resolveSibling("jte.stamp");
    String state = stateOf(templates, Path.of(args[3]));
    if (Files.exists(stamp) && Files.isDirectory(texts) && Files.readString(stamp).equals(state)) {
      return;
    }
    Files.createDirectories(sources);
    Files.createDirectories(texts);
    TemplateEngine engine =
        TemplateEngine.create(
            new DirectoryCodeResolver(templates),
            sources,
            ContentType.Html,
            TemplateCode.class.getClassLoader(),
            Constants.PACKAGE_NAME_PRECOMPILED);
    engine.setBinaryStaticContent(true);
    engine.setTrimControlStructures(true);
    engine.setTargetResourceDirectory(texts);
    engine.cleanAll();
    engine.generateAll();
    Files.writeString(stamp, state);
  }

  private static String stateOf(Path templates, Path thisFile) throws Exception {
    try (var files = Files.walk(templates)) {
      var digest = MessageDigest.getInstance("SHA-256");
      Stream<Path> regular = files.filter(Files::isRegularFile).sorted();
      for (Path file : Stream.concat(Stream.of(thisFile), regular).toList()) {
        digest.update(file.toString().getBytes(StandardCharsets.UTF_8));
        digest.update(Files.readAllBytes(file));
      }
      return HexFormat.of().formatHex(digest.digest());
    }
  }
}
