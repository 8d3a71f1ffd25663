package mainsgap.report;

import java.awt.Font;
import java.awt.font.FontRenderContext;
import java.awt.geom.Rectangle2D;
import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.Node;
import org.w3c.dom.NodeList;

/** Reads the texts of an SVG and where they stand, as any viewer would. */
final class SvgTexts {
  /** Digits and capitals rise so high, and letters hang so low, in parts of the size. */
  private static final double ASCENT = 0.73;

  private static final double DESCENT = 0.2;

  /** A text with the box that its ink fills. */
  record Placed(String text, double sizePixels, Rectangle2D box) {}

  private SvgTexts() {}

  static Document parsed(byte[] svg) throws Exception {
    DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
    factory.setNamespaceAware(true);
    factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
    return factory.newDocumentBuilder().parse(new ByteArrayInputStream(svg));
  }

  static List<Placed> of(byte[] svg) throws Exception {
    NodeList texts = parsed(svg).getElementsByTagNameNS("http://www.w3.org/2000/svg", "text");
    List<Placed> placed = new ArrayList<>();
    for (int i = 0; i < texts.getLength(); i++) {
      placed.add(placed((Element) texts.item(i)));
    }
    return placed;
  }

  private static Placed placed(Element text) {
    double size = Double.parseDouble(inherited(text, "font-size").replace("px", ""));
    boolean bold = inherited(text, "font-weight").equals("bold");
    double x = Double.parseDouble(text.getAttribute("x"));
    double y = Double.parseDouble(text.getAttribute("y"));
    for (Node at = text; at instanceof Element element; at = at.getParentNode()) {
      if (element.hasAttribute("transform")) {
        throw new AssertionError("a moved text: " + text.getTextContent());
      }
    }
    Font font =
        new Font(Font.SANS_SERIF, bold ? Font.BOLD : Font.PLAIN, 1).deriveFont((float) size);
    String words = text.getTextContent();
    double width = font.getStringBounds(words, new FontRenderContext(null, true, true)).getWidth();
    return new Placed(
        words,
        size,
        new Rectangle2D.Double(x, y - ASCENT * size, width, (ASCENT + DESCENT) * size));
  }

  private static String inherited(Element text, String name) {
    for (Node at = text; at instanceof Element element; at = at.getParentNode()) {
      if (element.hasAttribute(name)) {
        return element.getAttribute(name);
      }
    }
    return "";
  }
}
