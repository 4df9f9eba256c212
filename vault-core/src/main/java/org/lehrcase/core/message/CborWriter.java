package org.lehrcase.core.message;

import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import org.lehrcase.core.id.Octets;

/**
 * Writes the subset of CBOR (RFC 8949) that messages use: arrays of definite length, unsigned
 * integers, byte strings, text, booleans and null, every length in its shortest form. One value has
 * one encoding. For one thread.
 *
 * <p>A writer that is used wrongly (an array left open, nesting above {@value #MAX_DEPTH}) throws
 * {@link IllegalStateException}: that is a mistake in the program, never in the data.
 */
public final class CborWriter {
  /** Deepest nesting of arrays that is written or read. */
  public static final int MAX_DEPTH = 8;

  static final int MAJOR_UINT = 0;
  static final int MAJOR_BYTES = 2;
  static final int MAJOR_TEXT = 3;
  static final int MAJOR_ARRAY = 4;
  static final int FALSE = 0xf4;
  static final int TRUE = 0xf5;
  static final int NULL = 0xf6;

  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final Deque<Integer> open = new ArrayDeque<>();
  private boolean started;

  /**
   * Begins an array; exactly {@code count} values must follow.
   *
   * @param count number of elements, 0 or more
   * @return this writer
   */
  public CborWriter array(int count) {
    if (open.size() >= MAX_DEPTH) {
      throw new IllegalStateException("arrays nest deeper than " + MAX_DEPTH);
    }
    item();
    head(MAJOR_ARRAY, count);
    open.push(count);
    closeFullArrays();
    return this;
  }

  /**
   * Writes an unsigned integer.
   *
   * @param value 0 or more
   * @return this writer
   */
  public CborWriter uint(long value) {
    item();
    head(MAJOR_UINT, value);
    closeFullArrays();
    return this;
  }

  /**
   * Writes a byte string.
   *
   * @param value the bytes, copied
   * @return this writer
   */
  public CborWriter bytes(byte[] value) {
    return string(MAJOR_BYTES, value);
  }

  /**
   * Writes a byte string.
   *
   * @param value the octets
   * @return this writer
   */
  public CborWriter bytes(Octets value) {
    return bytes(value.toBytes());
  }

  /**
   * Writes text as UTF-8.
   *
   * @param value the text
   * @return this writer
   */
  public CborWriter text(String value) {
    return string(MAJOR_TEXT, value.getBytes(StandardCharsets.UTF_8));
  }

  /**
   * Writes true or false.
   *
   * @param value the truth value
   * @return this writer
   */
  public CborWriter bool(boolean value) {
    return simple(value ? TRUE : FALSE);
  }

  /** Writes null, which stands for "not given". */
  public CborWriter nil() {
    return simple(NULL);
  }

  /**
   * Returns the finished encoding.
   *
   * @return one complete value
   * @throws IllegalStateException if nothing was written or an array is not full
   */
  public byte[] toBytes() {
    if (!started || !open.isEmpty()) {
      throw new IllegalStateException("the value is not complete");
    }
    return out.toByteArray();
  }

  private CborWriter string(int major, byte[] value) {
    item();
    head(major, value.length);
    out.writeBytes(value);
    closeFullArrays();
    return this;
  }

  private CborWriter simple(int value) {
    item();
    out.write(value);
    closeFullArrays();
    return this;
  }

  /** Takes the next place in the innermost array, or begins the only top value. */
  private void item() {
    if (open.isEmpty()) {
      if (started) {
        throw new IllegalStateException("the value is already complete");
      }
      started = true;
    } else {
      open.push(open.pop() - 1);
    }
  }

  private void closeFullArrays() {
    while (!open.isEmpty() && open.peek() == 0) {
      open.pop();
    }
  }

  private void head(int major, long value) {
    if (value < 0) {
      throw new IllegalArgumentException("numbers and counts are 0 or more, not " + value);
    }
    int type = major << 5;
    if (value < 24) {
      out.write(type | (int) value);
    } else {
      int log2 = value < 1L << 8 ? 0 : value < 1L << 16 ? 1 : value < 1L << 32 ? 2 : 3;
      out.write(type | 24 + log2);
      for (int shift = (8 << log2) - 8; shift >= 0; shift -= 8) {
        out.write((int) (value >>> shift));
      }
    }
  }
}
