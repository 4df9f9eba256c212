package org.lehrcase.bench.web;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.Optional;

/** Walks through the segments of a JPEG file and keeps those that make the picture. */
final class PlainJpeg {
  private static final int MARK = 0xff;
  private static final int START = 0xd8;
  private static final int END = 0xd9;
  private static final int SCAN = 0xda;
  private static final int APP_0 = 0xe0;
  private static final int APP_1 = 0xe1;
  private static final int APP_15 = 0xef;
  private static final int COMMENT = 0xfe;

  /** Color profile, and Adobe's word on how colors are stored: without them colors change. */
  private static final int APP_2 = 0xe2;

  private static final int APP_14 = 0xee;
  private static final int FIRST_RESTART = 0xd0;
  private static final int LAST_RESTART = 0xd7;
  private static final byte[] EXIF = {'E', 'x', 'i', 'f', 0, 0};
  private static final byte[] ICC = {'I', 'C', 'C', '_'};
  private static final int ORIENTATION = 0x0112;
  private static final int ENTRY = 12;

  private final byte[] picture;
  private final ByteArrayOutputStream out;
  private int at = 2;

  private PlainJpeg(byte[] picture) {
    this.picture = picture;
    this.out = new ByteArrayOutputStream(picture.length);
  }

  /** Returns the picture alone; empty if a segment does not begin where it should. */
  static Optional<byte[]> of(byte[] picture) {
    return new PlainJpeg(picture).plain();
  }

  private Optional<byte[]> plain() {
    out.write(MARK);
    out.write(START);
    orientation();
    while (true) {
      if (byteAt(at) != MARK) {
        return Optional.empty();
      }
      int marker = byteAt(at + 1);
      if (marker == MARK) {
        at++; // fill byte
      } else if (marker == END) {
        out.write(MARK);
        out.write(END);
        return Optional.of(out.toByteArray());
      } else {
        segment(marker);
      }
    }
  }

  private void segment(int marker) {
    int length = 2 + lengthAt(at + 2);
    java.util.Objects.checkFromIndexSize(at, length, picture.length);
    if (isKept(marker)) {
      out.write(picture, at, length);
    }
    at += length;
    if (marker == SCAN) {
      scan();
    }
  }

  private boolean isKept(int marker) {
    boolean other = marker < APP_0 || marker > APP_15;
    boolean profile = marker == APP_2 && startsWith(at + 4, ICC);
    return marker != COMMENT && (other || marker == APP_0 || marker == APP_14 || profile);
  }

  /** The coded pixels, up to the next marker that is none of theirs. */
  private void scan() {
    int from = at;
    while (byteAt(at) != MARK || isOfScan(byteAt(at + 1))) {
      at++;
    }
    out.write(picture, from, at - from);
  }

  private static boolean isOfScan(int next) {
    return next == 0 || (next >= FIRST_RESTART && next <= LAST_RESTART);
  }

  /** Writes an Exif segment that says nothing but how the picture is turned. */
  private void orientation() {
    int turned = findOrientation();
    if (turned > 1 && turned <= 8) {
      var exif = ByteBuffer.allocate(36);
      exif.put((byte) MARK).put((byte) APP_1).putShort((short) 34).put(EXIF);
      exif.put((byte) 'M').put((byte) 'M').putShort((short) 42).putInt(8).putShort((short) 1);
      exif.putShort((short) ORIENTATION).putShort((short) 3).putInt(1).putShort((short) turned);
      out.write(exif.array(), 0, exif.capacity());
    }
  }

  private int findOrientation() {
    int look = 2;
    while (byteAt(look) == MARK && byteAt(look + 1) != SCAN && byteAt(look + 1) != END) {
      if (byteAt(look + 1) == APP_1 && startsWith(look + 4, EXIF)) {
        return orientationIn(look + 4 + EXIF.length, lengthAt(look + 2) - 2 - EXIF.length);
      }
      look += byteAt(look + 1) == MARK ? 1 : 2 + lengthAt(look + 2);
    }
    return 1;
  }

  private int orientationIn(int from, int size) {
    var tiff = ByteBuffer.wrap(picture, from, size).slice();
    tiff.order(tiff.get(0) == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
    int entries = tiff.getInt(4);
    int count = tiff.getShort(entries) & 0xffff;
    for (int i = 0; i < count; i++) {
      int entry = entries + 2 + i * ENTRY;
      if ((tiff.getShort(entry) & 0xffff) == ORIENTATION) {
        return tiff.getShort(entry + 8);
      }
    }
    return 1;
  }

  private boolean startsWith(int from, byte[] start) {
    for (int i = 0; i < start.length; i++) {
      if (byteAt(from + i) != (start[i] & 0xff)) {
        return false;
      }
    }
    return true;
  }

  private int byteAt(int index) {
    return picture[index] & 0xff;
  }

  private int lengthAt(int index) {
    return byteAt(index) << 8 | byteAt(index + 1);
  }
}
