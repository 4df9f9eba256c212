package org.lehrcase.bench.web;

import java.util.Optional;

/** The type of a picture by its first bytes; names and headers are not believed. */
final class PictureType {
  private static final byte[] JPEG = {(byte) 0xff, (byte) 0xd8, (byte) 0xff};
  private static final byte[] PNG = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'};
  private static final byte[] RIFF = {'R', 'I', 'F', 'F'};
  private static final byte[] WEBP = {'W', 'E', 'B', 'P'};
  private static final int WEBP_AT = 8;

  private PictureType() {}

  /** Returns the media type; empty if it is none of the pictures that browsers show. */
  static Optional<String> of(byte[] bytes) {
    if (startsWith(bytes, 0, JPEG)) {
      return Optional.of("image/jpeg");
    }
    if (startsWith(bytes, 0, PNG)) {
      return Optional.of("image/png");
    }
    boolean webp = startsWith(bytes, 0, RIFF) && startsWith(bytes, WEBP_AT, WEBP);
    return webp ? Optional.of("image/webp") : Optional.empty();
  }

  private static boolean startsWith(byte[] bytes, int at, byte[] start) {
    if (bytes.length < at + start.length) {
      return false;
    }
    for (int i = 0; i < start.length; i++) {
      if (bytes[at + i] != start[i]) {
        return false;
      }
    }
    return true;
  }
}
