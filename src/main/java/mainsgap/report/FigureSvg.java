package mainsgap.report;

import java.awt.Dimension;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import javax.xml.transform.OutputKeys;
import javax.xml.transform.Transformer;
import javax.xml.transform.TransformerException;
import javax.xml.transform.TransformerFactory;
import javax.xml.transform.dom.DOMSource;
import javax.xml.transform.stream.StreamResult;
import org.apache.batik.svggen.SVGGeneratorContext;
import org.apache.batik.svggen.SVGGraphics2D;
import org.apache.batik.svggen.SVGIDGenerator;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** A figure as SVG 1.1, in which text stays text. */
public final class FigureSvg {
  private static final String NAMESPACE = "http://www.w3.org/2000/svg";

  /** Wide families first: what fits in them fits in the narrower ones. */
  private static final String FAMILIES =
      "'DejaVu Sans', Verdana, 'Noto Sans', Arial, Helvetica, sans-serif";

  private FigureSvg() {}

  /** A document of its own, as UTF-8. */
  static byte[] bytes(Figure figure, FigureSheet sheet) {
    return written(root(figure, sheet, ""), false);
  }

  /**
   * An element to stand in a page among others.
   *
   * @param name begins the names within the figure, which must differ from those of the others
   */
  public static String element(Figure figure, FigureSheet sheet, String name) {
    Element root = root(figure, sheet, name);
    root.setAttribute("role", "img");
    return new String(written(root, true), StandardCharsets.UTF_8);
  }

  private static Element root(Figure figure, FigureSheet sheet, String name) {
    Document document = newDocument();
    SVGGeneratorContext context = SVGGeneratorContext.createDefault(document);
    context.setIDGenerator(new NamesWithin(name));
    SVGGraphics2D g = new SVGGraphics2D(context, false);
    g.setSVGCanvasSize(new Dimension(sheet.widthPixels(), sheet.heightPixels()));
    figure.draw(g, sheet);
    Element root = g.getRoot();
    root.setAttribute("viewBox", "0 0 " + sheet.widthPixels() + " " + sheet.heightPixels());
    nameFamilies(root);
    tidyNames(root);
    Element title = document.createElementNS(NAMESPACE, "title");
    title.setTextContent(figure.title());
    root.insertBefore(title, root.getFirstChild());
    return root;
  }

  /**
   * Without the document type that the generator would name: readers would look for it far away.
   */
  private static byte[] written(Element root, boolean isWithinPage) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try {
      Transformer writer = TransformerFactory.newInstance().newTransformer();
      writer.setOutputProperty(OutputKeys.ENCODING, "UTF-8");
      writer.setOutputProperty(OutputKeys.OMIT_XML_DECLARATION, isWithinPage ? "yes" : "no");
      writer.transform(new DOMSource(root), new StreamResult(bytes));
    } catch (TransformerException e) {
      throw new AssertionError("every Java machine writes XML", e);
    }
    return bytes.toByteArray();
  }

  private static void nameFamilies(Element element) {
    if (element.hasAttribute("font-family")) {
      element.setAttribute("font-family", FAMILIES);
    }
    NodeList children = element.getChildNodes();
    for (int i = 0; i < children.getLength(); i++) {
      if (children.item(i) instanceof Element child) {
        nameFamilies(child);
      }
    }
  }

  /** The generator gives its definitions the same name in every figure; nothing refers to it. */
  private static void tidyNames(Element root) {
    NodeList definitions = root.getElementsByTagNameNS(NAMESPACE, "defs");
    for (int i = 0; i < definitions.getLength(); i++) {
      if (definitions.item(i) instanceof Element found) {
        found.removeAttribute("id");
      }
    }
  }

  private static Document newDocument() {
    try {
      return DocumentBuilderFactory.newInstance()
          .newDocumentBuilder()
          .getDOMImplementation()
          .createDocument(NAMESPACE, "svg", null);
    } catch (ParserConfigurationException e) {
      throw new AssertionError("every Java machine makes documents", e);
    }
  }

  /** Names of clips and the like that begin with that of the figure. */
  private static final class NamesWithin extends SVGIDGenerator {
    private final String name;

    NamesWithin(String name) {
      this.name = name;
    }

    @Override
    public String generateID(String kind) {
      return super.generateID(name + kind);
    }
  }
}
