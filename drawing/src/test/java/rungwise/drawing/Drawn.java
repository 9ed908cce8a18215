package rungwise.drawing;

import java.io.IOException;
import java.io.StringReader;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Element;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** A drawing as an XML reader sees it. */
record Drawn(Element root) {

  static Drawn of(String svg) {
    try {
      var reader = DocumentBuilderFactory.newDefaultInstance().newDocumentBuilder();
      return new Drawn(reader.parse(new InputSource(new StringReader(svg))).getDocumentElement());
    } catch (ParserConfigurationException | SAXException | IOException e) {
      throw new AssertionError("not well-formed: " + svg, e);
    }
  }

  Stream<Element> elements() {
    var all = root.getElementsByTagName("*");
    return IntStream.range(0, all.getLength()).mapToObj(i -> (Element) all.item(i));
  }

  List<Element> allOf(String className) {
    return elements()
        .filter(one -> List.of(one.getAttribute("class").split(" ")).contains(className))
        .toList();
  }

  Element only(String className) {
    List<Element> found = allOf(className);
    if (found.size() != 1) {
      throw new AssertionError(found.size() + " elements of class " + className);
    }
    return found.getFirst();
  }

  Element withId(String id) {
    return elements().filter(one -> one.getAttribute("id").equals(id)).findFirst().orElseThrow();
  }

  double width() {
    var frame = root.getAttribute("viewBox").split(" ", -1);
    return Double.parseDouble(frame[2]);
  }

  /** The sentences below the drawing, as one text. */
  String key() {
    return allOf("drawing-key").stream()
        .map(Element::getTextContent)
        .collect(Collectors.joining(" "))
        .replace('\u00A0', ' ');
  }

  static double number(Element element, String attribute) {
    return Double.parseDouble(element.getAttribute(attribute));
  }
}
