package org.lehrcase.core.message;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.Octets;

/**
 * Reads what {@link CborWriter} writes and nothing else: no maps, tags, floats, negative numbers or
 * indefinite lengths, no length that could be shorter, no bytes after the value, no nesting above
 * {@value CborWriter#MAX_DEPTH}. Every length is compared with its limit, and with the bytes that
 * are left, before anything is allocated. For one thread.
 */
public final class CborReader {
  /** A UTF-16 unit needs at most three bytes of UTF-8; a pair of them needs four. */
  private static final int UTF8_PER_CHARACTER = 3;

  private final CborCursor cursor;
  private final Deque<Integer> open = new ArrayDeque<>();
  private boolean started;

  private CborReader(byte[] bytes) {
    this.cursor = new CborCursor(bytes);
  }

  /**
   * Begins to read a copy of the given bytes.
   *
   * @param bytes one encoded value
   * @return a reader before its first byte
   */
  public static CborReader of(byte[] bytes) {
    return new CborReader(bytes.clone());
  }

  /**
   * Enters an array of a known length.
   *
   * @param count the number of elements that it must have
   * @throws VaultException if the next value is not such an array
   */
  public void arrayOf(int count) throws VaultException {
    int found = array(Integer.MAX_VALUE);
    if (found != count) {
      throw new VaultException.Malformed(
          "an array has " + found + " elements where " + count + " are expected");
    }
  }

  /**
   * Enters an array.
   *
   * @param maxCount the most elements that are allowed
   * @return the number of elements
   * @throws VaultException if the next value is no array or has more elements
   */
  public int array(int maxCount) throws VaultException {
    if (open.size() >= CborWriter.MAX_DEPTH) {
      throw new VaultException.TooLarge("arrays nest deeper than " + CborWriter.MAX_DEPTH);
    }
    long count = head(CborWriter.MAJOR_ARRAY, maxCount);
    cursor.requireLeft(count);
    open.push((int) count);
    closeFullArrays();
    return (int) count;
  }

  /**
   * Reads an unsigned integer.
   *
   * @param max the largest value that is allowed
   * @return the value, 0 to {@code max}
   * @throws VaultException if the next value is no such integer
   */
  public long uint(long max) throws VaultException {
    long value = head(CborWriter.MAJOR_UINT, max);
    closeFullArrays();
    return value;
  }

  /** Reads an unsigned integer that an {@code int} holds; otherwise as {@link #uint}. */
  public int smallUint(int max) throws VaultException {
    return (int) uint(max);
  }

  /**
   * Reads a byte string of any length up to a limit.
   *
   * @param maxBytes the longest that is allowed
   * @return a copy of the bytes
   * @throws VaultException if the next value is no such string
   */
  public byte[] bytes(int maxBytes) throws VaultException {
    return string(CborWriter.MAJOR_BYTES, maxBytes);
  }

  /**
   * Reads a byte string of a fixed length.
   *
   * @param sizeBytes the only length that is allowed
   * @return the octets
   * @throws VaultException if the next value is no byte string of that length
   */
  public Octets octets(int sizeBytes) throws VaultException {
    byte[] found = bytes(sizeBytes);
    if (found.length != sizeBytes) {
      throw new VaultException.Malformed(
          "a byte string has " + found.length + " bytes where " + sizeBytes + " are expected");
    }
    return Octets.of(found);
  }

  /**
   * Reads a byte string of a fixed length, or null.
   *
   * @param sizeBytes the only length that is allowed
   * @return the octets; empty for null
   * @throws VaultException if the next value is neither
   */
  public Optional<Octets> octetsOrNull(int sizeBytes) throws VaultException {
    return skipNull() ? Optional.empty() : Optional.of(octets(sizeBytes));
  }

  /**
   * Reads text, which may hold line breaks.
   *
   * @param maxBytes the longest UTF-8 encoding that is allowed
   * @return the text
   * @throws VaultException if the next value is no such text or not UTF-8
   */
  public String text(int maxBytes) throws VaultException {
    byte[] found = string(CborWriter.MAJOR_TEXT, maxBytes);
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(found)).toString();
    } catch (CharacterCodingException e) {
      throw new VaultException.Malformed("a text is not UTF-8");
    }
  }

  /**
   * Reads text whose limit is given in characters; who uses it still counts them.
   *
   * @param maxChars the most characters (UTF-16 units) that the caller will allow
   * @return the text, which no more bytes were read for than so many characters can need
   * @throws VaultException if the next value is no such text or not UTF-8
   */
  public String characters(int maxChars) throws VaultException {
    return text(Math.multiplyExact(UTF8_PER_CHARACTER, maxChars));
  }

  /**
   * Reads one line of text that is safe to show; see {@link Line}.
   *
   * @param maxChars the most characters (UTF-16 units) that are allowed
   * @return the line
   * @throws VaultException if the next value is no such text
   */
  public String line(int maxChars) throws VaultException {
    return Line.require(characters(maxChars), maxChars);
  }

  /**
   * Reads true or false.
   *
   * @return the truth value
   * @throws VaultException if the next value is neither
   */
  public boolean bool() throws VaultException {
    item();
    int value = cursor.next();
    if (value != CborWriter.TRUE && value != CborWriter.FALSE) {
      throw new VaultException.Malformed("neither true nor false stands at byte " + cursor.last());
    }
    closeFullArrays();
    return value == CborWriter.TRUE;
  }

  /**
   * Passes over a null, if one comes next.
   *
   * @return whether there was one; if not, nothing was read
   * @throws VaultException if no value is left
   */
  public boolean skipNull() throws VaultException {
    if (cursor.peek() != CborWriter.NULL) {
      return false;
    }
    item();
    cursor.next();
    closeFullArrays();
    return true;
  }

  /**
   * Checks that the value is complete and that nothing follows it.
   *
   * @throws VaultException.Malformed if values are left unread
   */
  public void end() throws VaultException.Malformed {
    if (!started || !open.isEmpty() || !cursor.isAtEnd()) {
      throw new VaultException.Malformed("something follows the last expected value");
    }
  }

  private byte[] string(int major, int maxBytes) throws VaultException {
    byte[] value = cursor.take((int) head(major, maxBytes));
    closeFullArrays();
    return value;
  }

  private long head(int major, long max) throws VaultException {
    item();
    int first = cursor.next();
    if (first >>> 5 != major) {
      String found = "a value of kind " + (first >>> 5) + " stands at byte " + cursor.last();
      throw new VaultException.Malformed(found + ", not " + major);
    }
    long value = cursor.argument(first & 0x1f);
    if (Long.compareUnsigned(value, max) > 0) {
      throw new VaultException.TooLarge(
          Long.toUnsignedString(value) + " is above the limit of " + max);
    }
    return value;
  }

  private void item() throws VaultException.Malformed {
    if (open.isEmpty()) {
      if (started) {
        throw new VaultException.Malformed("a value is missing: the array is shorter");
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
}
