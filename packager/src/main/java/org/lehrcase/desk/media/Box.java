package org.lehrcase.desk.media;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One MP4 box held in memory (ISO/IEC 14496-12, 4.2).
 *
 * @param type the four-character code
 * @param whole header and body
 * @param body the bytes after the header
 */
record Box(String type, Slice whole, Slice body) {
  /** More boxes than this inside one box are refused. */
  static final int MAX_CHILDREN = 4096;

  /** Splits a window into the boxes that fill it; fewer than eight bytes left over are padding. */
  static List<Box> split(Slice window) throws MediaException {
    var boxes = new ArrayList<Box>();
    var at = 0L;
    while (window.size() - at >= 8) {
      var box = at(window, at);
      boxes.add(box);
      at += box.whole.size();
      if (boxes.size() > MAX_CHILDREN) {
        throw new MediaException(
            MediaException.Kind.TOO_LARGE, "more than " + MAX_CHILDREN + " boxes inside one box");
      }
    }
    return boxes;
  }

  private static Box at(Slice window, long at) throws MediaException {
    var size = window.u32(at);
    var type = window.fourcc(at + 4);
    var header = 8;
    if (size == 1) {
      size = window.u64(at + 8);
      header = 16;
    } else if (size == 0) {
      size = window.size() - at;
    }
    if (size < header || size > window.size() - at) {
      throw MediaException.broken("box '" + type + "' says " + size + " bytes, which do not fit");
    }
    return new Box(type, window.slice(at, size), window.slice(at + header, size - header));
  }

  List<Box> children() throws MediaException {
    return split(body);
  }

  /** Finds the box at the end of a path of types, taking the first of each. */
  Optional<Box> find(String... path) throws MediaException {
    var here = this;
    for (var step : path) {
      var next = here.children().stream().filter(b -> b.type.equals(step)).findFirst();
      if (next.isEmpty()) {
        return Optional.empty();
      }
      here = next.get();
    }
    return Optional.of(here);
  }

  /** Finds a box that every such file must have. */
  Box need(String... path) throws MediaException {
    var found = find(path);
    if (found.isEmpty()) {
      throw MediaException.broken("box '" + String.join("/", path) + "' is missing");
    }
    return found.get();
  }

  /** Returns the version byte of a full box. */
  int version() throws MediaException {
    return body.u8(0);
  }

  /** Returns the flags of a full box. */
  int flags() throws MediaException {
    return (int) (body.u32(0) & 0xffffff);
  }
}
