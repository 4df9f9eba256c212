package org.lehrcase.core.seal;

import java.util.Arrays;
import java.util.HexFormat;

/** The edits that vectors are written in; all offsets are in bytes from 0. */
public final class VectorEdit {
  private VectorEdit() {}

  /**
   * Carries out one edit: {@code flip OFFSET HEX} (exclusive or), {@code put OFFSET HEX}, {@code
   * cut LENGTH}, {@code append HEX}, {@code swap SEGMENT SEGMENT} or {@code copy FROM-SEGMENT
   * TO-SEGMENT}, with segments of 64 KiB.
   */
  public static byte[] apply(byte[] file, String edit) {
    String[] words = edit.split(" ");
    byte[] result = file.clone();
    switch (words[0]) {
      case "flip" -> {
        byte[] mask = HexFormat.of().parseHex(words[2]);
        for (int i = 0; i < mask.length; i++) {
          result[Integer.parseInt(words[1]) + i] ^= mask[i];
        }
      }
      case "put" -> {
        byte[] bytes = HexFormat.of().parseHex(words[2]);
        System.arraycopy(bytes, 0, result, Integer.parseInt(words[1]), bytes.length);
      }
      case "cut" -> result = Arrays.copyOf(file, Integer.parseInt(words[1]));
      case "append" -> {
        byte[] bytes = HexFormat.of().parseHex(words[1]);
        result = Arrays.copyOf(file, file.length + bytes.length);
        System.arraycopy(bytes, 0, result, file.length, bytes.length);
      }
      case "swap" -> {
        copy(file, Integer.parseInt(words[1]), result, Integer.parseInt(words[2]));
        copy(file, Integer.parseInt(words[2]), result, Integer.parseInt(words[1]));
      }
      case "copy" -> copy(file, Integer.parseInt(words[1]), result, Integer.parseInt(words[2]));
      default -> throw new IllegalArgumentException(edit);
    }
    return result;
  }

  private static void copy(byte[] from, int segment, byte[] to, int place) {
    System.arraycopy(from, segment << 16, to, place << 16, 1 << 16);
  }
}
