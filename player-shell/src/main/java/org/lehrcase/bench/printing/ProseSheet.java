package org.lehrcase.bench.printing;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import org.commonmark.ext.gfm.tables.TableBody;
import org.commonmark.ext.gfm.tables.TableCell;
import org.commonmark.ext.gfm.tables.TableHead;
import org.commonmark.ext.gfm.tables.TableRow;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.BulletList;
import org.commonmark.node.Code;
import org.commonmark.node.CustomBlock;
import org.commonmark.node.CustomNode;
import org.commonmark.node.FencedCodeBlock;
import org.commonmark.node.HardLineBreak;
import org.commonmark.node.Heading;
import org.commonmark.node.HtmlBlock;
import org.commonmark.node.IndentedCodeBlock;
import org.commonmark.node.Link;
import org.commonmark.node.ListItem;
import org.commonmark.node.Node;
import org.commonmark.node.OrderedList;
import org.commonmark.node.Paragraph;
import org.commonmark.node.SoftLineBreak;
import org.commonmark.node.Text;

/** Lays out a Markdown text on pages. Addresses are printed; raw HTML is printed as text. */
final class ProseSheet extends AbstractVisitor {
  private static final float STEP = 16;
  private static final float[] HEADINGS = {17, 14, 12};

  private final SheetWriter sheet;
  private float indent;
  private String mark = "";
  private boolean inHead;

  ProseSheet(SheetWriter sheet) {
    this.sheet = sheet;
  }

  /** Anything that draws and may fail. */
  @FunctionalInterface
  private interface Drawing {
    void draw() throws IOException;
  }

  private static void draw(Drawing drawing) {
    try {
      drawing.draw();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void visit(Heading heading) {
    float size = HEADINGS[Math.min(heading.getLevel(), HEADINGS.length) - 1];
    draw(() -> sheet.heading(words(heading), size));
  }

  @Override
  public void visit(Paragraph paragraph) {
    String text = words(paragraph);
    String before = mark;
    mark = "";
    draw(
        () -> {
          if (before.isEmpty()) {
            sheet.paragraph(text, indent);
          } else {
            sheet.item(before, text, indent - STEP);
          }
        });
  }

  @Override
  public void visit(BulletList list) {
    items(list, "\u2022", 0);
  }

  @Override
  public void visit(OrderedList list) {
    Integer first = list.getMarkerStartNumber();
    items(list, "", first == null ? 1 : first);
  }

  private void items(Node list, String bullet, int first) {
    int number = first;
    indent += STEP;
    for (Node item = list.getFirstChild(); item != null; item = item.getNext()) {
      mark = bullet.isEmpty() ? number++ + "." : bullet;
      item.accept(this);
    }
    mark = "";
    indent -= STEP;
    sheet.gap(SheetWriter.TEXT_SIZE * 0.3f);
  }

  @Override
  public void visit(ListItem item) {
    visitChildren(item);
  }

  @Override
  public void visit(FencedCodeBlock code) {
    draw(() -> sheet.paragraph(code.getLiteral().strip(), indent + STEP));
  }

  @Override
  public void visit(IndentedCodeBlock code) {
    draw(() -> sheet.paragraph(code.getLiteral().strip(), indent + STEP));
  }

  @Override
  public void visit(HtmlBlock html) {
    draw(() -> sheet.paragraph(html.getLiteral(), indent));
  }

  @Override
  public void visit(CustomBlock table) {
    visitChildren(table);
    sheet.gap(SheetWriter.TEXT_SIZE);
  }

  @Override
  public void visit(CustomNode part) {
    if (part instanceof TableRow row) {
      row(row);
    } else {
      inHead = part instanceof TableHead;
      visitChildren(part);
      inHead = inHead && !(part instanceof TableBody);
    }
  }

  private void row(TableRow row) {
    List<String> cells = new ArrayList<>();
    for (Node cell = row.getFirstChild(); cell instanceof TableCell; cell = cell.getNext()) {
      cells.add(words(cell));
    }
    float[] shares = new float[cells.size()];
    java.util.Arrays.fill(shares, 1f / Math.max(1, cells.size()));
    draw(() -> sheet.row(cells, shares, inHead));
  }

  /** The words inside a node, in one line; a link's address stands behind it. */
  private static String words(Node node) {
    StringBuilder words = new StringBuilder();
    node.accept(new Words(words));
    return words.toString();
  }

  private static final class Words extends AbstractVisitor {
    private final StringBuilder words;

    Words(StringBuilder words) {
      this.words = words;
    }

    @Override
    public void visit(Text text) {
      words.append(text.getLiteral());
    }

    @Override
    public void visit(Code code) {
      words.append(code.getLiteral());
    }

    @Override
    public void visit(SoftLineBreak line) {
      words.append(' ');
    }

    @Override
    public void visit(HardLineBreak line) {
      words.append('\n');
    }

    @Override
    public void visit(Link link) {
      visitChildren(link);
      String to = String.valueOf(link.getDestination());
      if (to.matches("(https?|mailto):.{1,200}")) {
        words.append(" (").append(to).append(')');
      }
    }
  }
}
