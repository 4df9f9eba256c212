package org.lehrcase.bench.courses;

import java.util.List;
import org.commonmark.Extension;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Image;
import org.commonmark.node.Node;
import org.commonmark.node.Text;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.DefaultUrlSanitizer;
import org.commonmark.renderer.html.HtmlRenderer;
import org.lehrcase.core.table.PlainText;

/**
 * Markdown of a course as HTML. Raw HTML is shown as text, addresses other than http, https and
 * mailto are dropped, pictures become their words: nothing of a course is fetched or run.
 */
public final class Prose {
  /** Largest text that is shown, in bytes. */
  public static final int MAX_BYTES = 1 << 20;

  private static final List<Extension> EXTENSIONS = List.of(TablesExtension.create());
  private static final Parser PARSER =
      Parser.builder().extensions(EXTENSIONS).maxOpenBlockParsers(32).build();
  private static final HtmlRenderer RENDERER =
      HtmlRenderer.builder()
          .extensions(EXTENSIONS)
          .escapeHtml(true)
          .sanitizeUrls(true)
          .urlSanitizer(new DefaultUrlSanitizer(List.of("http", "https", "mailto")))
          .build();

  private Prose() {}

  /**
   * Renders a text.
   *
   * @param markdown the text as bytes
   * @return HTML of paragraphs, headings, lists, tables, emphasis and links
   */
  public static String html(byte[] markdown) {
    return RENDERER.render(parsed(markdown));
  }

  /**
   * Reads a text for other forms than HTML.
   *
   * @param markdown the text as bytes
   * @return the document, its pictures become their words
   */
  public static Node parsed(byte[] markdown) {
    Node document = PARSER.parse(PlainText.decode(markdown));
    document.accept(new PicturesToWords());
    return document;
  }

  private static final class PicturesToWords extends AbstractVisitor {
    @Override
    public void visit(Image image) {
      for (Node child = image.getFirstChild(); child != null; child = image.getFirstChild()) {
        image.insertBefore(child);
      }
      if (image.getTitle() != null) {
        image.insertBefore(new Text(" (" + image.getTitle() + ")"));
      }
      image.unlink();
    }
  }
}
