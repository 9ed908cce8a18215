package rungwise.app.fuzz;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import rungwise.clinic.populations.PopulationReader.Shipped;
import rungwise.files.PopulationDocuments;
import rungwise.files.PopulationFile;

/** A population document. */
final class PopulationFiles implements Target.Reader {

  private final PopulationDocuments documents = new PopulationDocuments();

  static List<String> seeds() {
    var seeds =
        new ArrayList<>(
            new PopulationDocuments().shipped().stream().map(Shipped::document).toList());
    seeds.add("{\"parameters\":{\"mu\":1e999,\"gamma\":{\"a\":{\"estimate\":1,\"se\":0}}}}");
    seeds.add("[[[[[[[[{}]]]]]]]]");
    seeds.add("{\"parameters\":{\"gamma_mixed\":0.1,\"c_2\":\"1\",\"mu\":null}} x");
    seeds.add("{\"reference_group\":\"A\",\"groups\":{\"a\":-1},\"groups\":{}}");
    return seeds;
  }

  @Override
  public void read(byte[] input) {
    String text = new String(input, StandardCharsets.UTF_8);
    var file = Hold.sound(PopulationFile.read(text));
    var document = Hold.sound(documents.read(text));
    Hold.that(
        document.found().isPresent()
            == file.found().filter(one -> one.doubts().isEmpty()).isPresent(),
        () -> "a population is read, and its document is not");
  }
}
