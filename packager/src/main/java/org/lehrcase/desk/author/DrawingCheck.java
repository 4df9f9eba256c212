package org.lehrcase.desk.author;

import java.io.StringReader;
import java.util.List;
import java.util.regex.Pattern;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;
import org.jspecify.annotations.Nullable;

/** Checks an SVG drawing: that it is one, that it says its true size, that it only draws. */
final class DrawingCheck {
  private static final int MAX_BYTES = 8 << 20;
  private static final Pattern TRUE_SIZE =
      Pattern.compile("\\s*\\d+(\\.\\d+)?\\s*(mm|cm|in|pt|pc|Q)\\s*");

  private final SourceAsset asset;
  private final List<Finding> findings;
  private boolean active;

  DrawingCheck(SourceAsset asset, List<Finding> findings) {
    this.asset = asset;
    this.findings = findings;
  }

  void run() {
    var text = BoundedText.read(asset.file(), asset.place(), MAX_BYTES, findings);
    if (text.isEmpty()) {
      return;
    }
    try {
      var reader = reader(text.get());
      reader.nextTag();
      checkRoot(reader);
      while (reader.hasNext()) {
        if (reader.next() == XMLStreamConstants.START_ELEMENT) {
          look(reader);
        }
      }
    } catch (XMLStreamException e) {
      var line = e.getLocation() == null ? 0 : Math.max(0, e.getLocation().getLineNumber());
      findings.add(
          Finding.error(asset.place(), "is a broken drawing", "export it again as plain SVG")
              .at(Finding.linePlace(line)));
    }
    if (active) {
      findings.add(
          Finding.doubt(
              asset.place(),
              "holds scripts or outside addresses, which the bench never follows",
              "export it as plain SVG"));
    }
  }

  /** A reader that opens nothing and expands nothing. */
  private static XMLStreamReader reader(String text) throws XMLStreamException {
    var factory = XMLInputFactory.newDefaultFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_SUPPORTING_EXTERNAL_ENTITIES, false);
    factory.setProperty(XMLInputFactory.IS_REPLACING_ENTITY_REFERENCES, false);
    return factory.createXMLStreamReader(new StringReader(text));
  }

  private void checkRoot(XMLStreamReader reader) {
    if (!reader.getLocalName().equals("svg")) {
      findings.add(
          Finding.error(asset.place(), "is not an SVG drawing", "export it again as plain SVG"));
      return;
    }
    if (!isTrueSize(reader.getAttributeValue(null, "width"))
        || !isTrueSize(reader.getAttributeValue(null, "height"))) {
      findings.add(
          Finding.doubt(
              asset.place(),
              "does not say its size in mm or inches, so it cannot be printed at true size",
              "set the page size in mm before exporting"));
    }
    look(reader);
  }

  private static boolean isTrueSize(@Nullable String value) {
    return value != null && TRUE_SIZE.matcher(value).matches();
  }

  private void look(XMLStreamReader reader) {
    active |= reader.getLocalName().equals("script");
    active |= reader.getLocalName().equals("foreignObject");
    for (var i = 0; i < reader.getAttributeCount(); i++) {
      var name = reader.getAttributeLocalName(i);
      var value = reader.getAttributeValue(i).strip();
      active |= name.startsWith("on");
      active |= name.equals("href") && !value.startsWith("#") && !value.startsWith("data:image/");
    }
  }
}
