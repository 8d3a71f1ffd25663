package mainsgap.report.page;

import com.samskivert.mustache.Escapers;
import com.samskivert.mustache.Mustache;
import com.samskivert.mustache.Template;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import mainsgap.report.Wording;

/**
 * The templates that lie beside this class. Every value is escaped, and has lost what could turn
 * the text round it, unless its tag has three braces: only figures that the program drew have
 * those.
 */
final class PageTemplate {
  private static final Mustache.Compiler COMPILER =
      Mustache.compiler()
          .strictSections(true)
          .emptyStringIsFalse(true)
          .withEscaper(value -> Escapers.HTML.escape(Wording.isolated(value)))
          .withLoader(PageTemplate::open);

  private PageTemplate() {}

  /** The page that {@code values}, by the names of its accessors, make of the template. */
  static String filled(String name, Object values) {
    try (Reader text = open(name)) {
      Template template = COMPILER.compile(text);
      return template.execute(values);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Reader open(String name) {
    InputStream stream = PageTemplate.class.getResourceAsStream(name + ".html");
    if (stream == null) {
      throw new AssertionError("the template " + name + ".html is part of the program");
    }
    return new InputStreamReader(stream, StandardCharsets.UTF_8);
  }
}
