package org.lehrcase.desk.media;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One EBML element held in memory (RFC 8794).
 *
 * @param id the element id with its length marker
 * @param body the bytes after the size
 */
record EbmlElement(long id, Slice body) {
  private static final int MAX_CHILDREN = 4096;

  /**
   * The id and size of an element, before its body.
   *
   * @param id the element id with its length marker
   * @param headerBytes length of id and size
   * @param bodyBytes length of the body, {@link #UNKNOWN_SIZE} if the writer did not know it
   */
  record Head(long id, int headerBytes, long bodyBytes) {
    /** Stands for a size that was not known when the element was begun. */
    static final long UNKNOWN_SIZE = -1;

    static Head of(Slice bytes) throws MediaException {
      var idBytes = Integer.numberOfLeadingZeros(bytes.u8(0)) - 24 + 1;
      if (idBytes > 4) {
        throw MediaException.broken("an element of the film has no sensible id");
      }
      var id = number(bytes, 0, idBytes);
      var first = bytes.u8(idBytes);
      var sizeBytes = Integer.numberOfLeadingZeros(first) - 24 + 1;
      if (sizeBytes > 8) {
        throw MediaException.broken("an element of the film has no sensible size");
      }
      var mask = (1L << 7 * sizeBytes) - 1;
      var size = number(bytes, idBytes, sizeBytes) & mask;
      return new Head(id, idBytes + sizeBytes, size == mask ? UNKNOWN_SIZE : size);
    }
  }

  /** Splits a window into the elements that fill it. */
  static List<EbmlElement> split(Slice window) throws MediaException {
    var elements = new ArrayList<EbmlElement>();
    var at = 0L;
    while (at < window.size()) {
      var head = Head.of(window.from(at));
      if (head.bodyBytes() == Head.UNKNOWN_SIZE) {
        throw MediaException.broken("an element that must have a size has none");
      }
      elements.add(
          new EbmlElement(head.id(), window.slice(at + head.headerBytes(), head.bodyBytes())));
      at += head.headerBytes() + head.bodyBytes();
      if (elements.size() > MAX_CHILDREN) {
        throw new MediaException(
            MediaException.Kind.TOO_LARGE, "more than " + MAX_CHILDREN + " elements inside one");
      }
    }
    return elements;
  }

  static Optional<EbmlElement> find(List<EbmlElement> elements, long id) {
    return elements.stream().filter(e -> e.id == id).findFirst();
  }

  /** Reads an unsigned number, or the given one if the element is absent. */
  static long number(List<EbmlElement> elements, long id, long otherwise) throws MediaException {
    var found = find(elements, id);
    if (found.isEmpty()) {
      return otherwise;
    }
    var body = found.get().body;
    if (body.size() > 8) {
      throw MediaException.broken("a number in the film is longer than eight bytes");
    }
    return number(body, 0, body.size());
  }

  private static long number(Slice bytes, long from, int count) throws MediaException {
    var value = 0L;
    for (var i = 0; i < count; i++) {
      value = value << 8 | bytes.u8(from + i);
    }
    return value;
  }

  /** Reads a floating-point number of four or eight bytes, or 0 if the element is absent. */
  static double real(List<EbmlElement> elements, long id) throws MediaException {
    var found = find(elements, id);
    if (found.isEmpty() || found.get().body.size() == 0) {
      return 0;
    }
    var body = found.get().body;
    var bits = number(elements, id, 0);
    var value = body.size() == 4 ? Float.intBitsToFloat((int) bits) : Double.longBitsToDouble(bits);
    return Double.isFinite(value) && value > 0 ? value : 0;
  }

  /** Reads text, without the zeros that may pad it; empty if the element is absent. */
  static String text(List<EbmlElement> elements, long id) {
    return find(elements, id)
        .map(e -> new String(e.body.toBytes(), StandardCharsets.UTF_8).replace("\0", ""))
        .orElse("");
  }
}
