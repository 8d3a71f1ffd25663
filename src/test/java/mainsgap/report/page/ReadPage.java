package mainsgap.report.page;

import java.io.IOException;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import org.xml.sax.SAXException;

/** A page as a browser would read it: the templates are written so that it is XML too. */
record ReadPage(Document document) {

  /** Reads the page; fails where an element is not closed, or a name stands twice in a tag. */
  static ReadPage of(String html) {
    try {
      DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
      factory.setNamespaceAware(true);
      return new ReadPage(
          factory.newDocumentBuilder().parse(new InputSource(new StringReader(html))));
    } catch (ParserConfigurationException | SAXException | IOException e) {
      throw new AssertionError("the page is no well-formed XML: " + e.getMessage(), e);
    }
  }

  /** All elements of a name, in the order of the page. */
  List<Element> all(String name) {
    return all(document.getDocumentElement(), name);
  }

  static List<Element> all(Element within, String name) {
    NodeList found = within.getElementsByTagNameNS("*", name);
    List<Element> elements = new ArrayList<>();
    for (int i = 0; i < found.getLength(); i++) {
      elements.add((Element) found.item(i));
    }
    return elements;
  }

  /** The table of that caption. */
  Element table(String caption) {
    return all("table").stream()
        .filter(table -> words(all(table, "caption").get(0)).contains(caption))
        .findFirst()
        .orElseThrow(() -> new AssertionError("there is no table '" + caption + "'"));
  }

  /** The rows of a table's body, each cell as its words. */
  static List<List<String>> rows(Element table) {
    return rowsOf(table, "tbody");
  }

  /** The rows below a table's body. */
  static List<List<String>> sums(Element table) {
    return rowsOf(table, "tfoot");
  }

  private static List<List<String>> rowsOf(Element table, String part) {
    return all(all(table, part).get(0), "tr").stream().map(ReadPage::cells).toList();
  }

  private static List<String> cells(Element row) {
    List<String> cells = new ArrayList<>();
    NodeList children = row.getChildNodes();
    for (int i = 0; i < children.getLength(); i++) {
      if (children.item(i) instanceof Element cell) {
        cells.add(words(cell));
      }
    }
    return cells;
  }

  /** What stands beside a label in the table of that caption. */
  String fact(String caption, String label) {
    return rows(table(caption)).stream()
        .filter(row -> row.get(0).equals(label))
        .map(row -> row.get(1))
        .findFirst()
        .orElseThrow(() -> new AssertionError("'" + caption + "' has no '" + label + "'"));
  }

  /** Everything that can be read on the page. */
  String words() {
    return words(all("body").get(0));
  }

  static String words(Element element) {
    return element.getTextContent().replaceAll("[\\s\\u00A0]+", " ").strip();
  }
}
