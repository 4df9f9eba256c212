package org.lehrcase.desk.find;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.BlockQuote;
import org.commonmark.node.Code;
import org.commonmark.node.CustomBlock;
import org.commonmark.node.CustomNode;
import org.commonmark.node.FencedCodeBlock;
import org.commonmark.node.HardLineBreak;
import org.commonmark.node.Heading;
import org.commonmark.node.ListItem;
import org.commonmark.node.Paragraph;
import org.commonmark.node.SoftLineBreak;
import org.commonmark.node.Text;
import org.lehrcase.bench.courses.Prose;

/**
 * The words of a Markdown text by heading: what stands before the first one, then each heading with
 * what follows it, so that number n+1 is shown by the nth heading.
 */
final class MarkdownSections extends AbstractVisitor {
  private final List<StringBuilder> sections = new ArrayList<>(List.of(new StringBuilder()));

  private MarkdownSections() {}

  static List<String> of(String markdown) {
    MarkdownSections sections = new MarkdownSections();
    Prose.parsed(markdown.getBytes(StandardCharsets.UTF_8)).accept(sections);
    return sections.sections.stream().map(StringBuilder::toString).toList();
  }

  private void say(String words) {
    sections.get(sections.size() - 1).append(words);
  }

  @Override
  public void visit(Heading heading) {
    sections.add(new StringBuilder());
    visitChildren(heading);
    say(". ");
  }

  @Override
  public void visit(Text text) {
    say(text.getLiteral());
  }

  @Override
  public void visit(Code code) {
    say(code.getLiteral());
  }

  @Override
  public void visit(FencedCodeBlock code) {
    say(code.getLiteral() + "\n");
  }

  @Override
  public void visit(SoftLineBreak line) {
    say("\n");
  }

  @Override
  public void visit(HardLineBreak line) {
    say("\n");
  }

  @Override
  public void visit(Paragraph paragraph) {
    visitChildren(paragraph);
    say("\n");
  }

  @Override
  public void visit(ListItem item) {
    visitChildren(item);
    say("\n");
  }

  @Override
  public void visit(BlockQuote quote) {
    visitChildren(quote);
    say("\n");
  }

  /** Tables: their cells, each followed by a gap. */
  @Override
  public void visit(CustomNode cell) {
    visitChildren(cell);
    say(" ");
  }

  @Override
  public void visit(CustomBlock table) {
    visitChildren(table);
    say("\n");
  }
}
