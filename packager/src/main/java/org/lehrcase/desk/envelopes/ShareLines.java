package org.lehrcase.desk.envelopes;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.message.CheckedLines;
import org.lehrcase.core.primitive.SecretBytes;
import org.lehrcase.core.primitive.Sha256;
import org.lehrcase.core.primitive.ThresholdShares.Share;
import org.lehrcase.core.primitive.VerifyKey;

/**
 * One share as four short lines to type, each with a check of its own.
 *
 * <pre>
 * 40 bytes = version u8 = 1 ‖ share number u8 ‖ set 6 ‖ share 32        set = SHA-256(label ‖ root public key)[0..6)
 * </pre>
 */
public final class ShareLines {
  /** How many lines a share has. */
  public static final int COUNT = 4;

  private static final byte[] SET_LABEL =
      "lehrcase/1 envelope set\0".getBytes(StandardCharsets.US_ASCII);
  private static final CheckedLines LINES = new CheckedLines("lehrcase/1 envelope line");
  private static final int VERSION = 1;
  private static final int SET_BYTES = 6;

  private ShareLines() {}

  /** A share together with the set of envelopes that it belongs to. */
  public static final class Labelled {
    private final Share share;
    private final Octets set;

    Labelled(Share share, Octets set) {
      this.share = share;
      this.set = set;
    }

    /**
     * Returns the share.
     *
     * @return number and bytes
     */
    public Share share() {
      return share;
    }

    /**
     * Returns the check value that all envelopes of one shop have in common.
     *
     * @return 6 bytes
     */
    public Octets set() {
      return set;
    }

    @Override
    public String toString() {
      return "Labelled[" + share + "]";
    }
  }

  /**
   * Derives the check value of the envelopes of one shop.
   *
   * @param root the root's public key
   * @return 6 bytes, public
   */
  public static Octets set(VerifyKey root) {
    return Octets.of(Sha256.of(SET_LABEL, root.octets().toBytes())).slice(0, SET_BYTES);
  }

  /**
   * Writes a share.
   *
   * @param share a share of 32 bytes
   * @param set the check value of its shop
   * @return four lines of four groups and a check, separated by spaces
   */
  public static List<String> write(Share share, Octets set) {
    ByteBuffer all = ByteBuffer.allocate(COUNT * CheckedLines.LINE_BYTES);
    all.put((byte) VERSION).put((byte) share.number()).put(set.toBytes());
    share.bytes().lend(all::put);
    List<String> lines = LINES.write(all.array());
    Arrays.fill(all.array(), (byte) 0);
    return lines;
  }

  /**
   * Reads what was typed from an envelope. Case, spaces and hyphens do not matter; O is read as 0,
   * I and L as 1.
   *
   * @param lines four lines
   * @return the share and its set
   * @throws UnreadableShare if a line does not fit its check, naming the line
   */
  public static Labelled read(List<String> lines) throws UnreadableShare {
    if (lines.size() != COUNT) {
      throw new UnreadableShare(0, "An envelope has " + COUNT + " lines, not " + lines.size());
    }
    byte[] all = new byte[COUNT * CheckedLines.LINE_BYTES];
    for (int line = 0; line < COUNT; line++) {
      byte[] bytes = readLine(line, lines.get(line));
      System.arraycopy(bytes, 0, all, line * CheckedLines.LINE_BYTES, CheckedLines.LINE_BYTES);
    }
    if (all[0] != VERSION) {
      throw new UnreadableShare(1, "This envelope is of version " + all[0] + ", not " + VERSION);
    }
    if (all[1] < 1) {
      throw new UnreadableShare(1, "This envelope has an impossible number");
    }
    Octets set = Octets.of(Arrays.copyOfRange(all, 2, 2 + SET_BYTES));
    byte[] share = Arrays.copyOfRange(all, 2 + SET_BYTES, all.length);
    return new Labelled(new Share(all[1], SecretBytes.taking(share)), set);
  }

  private static byte[] readLine(int line, String typed) throws UnreadableShare {
    try {
      byte[] bytes = LINES.readLine(line, typed);
      if (bytes.length < CheckedLines.LINE_BYTES) {
        throw new UnreadableShare(line + 1, "It is too short");
      }
      return bytes;
    } catch (CheckedLines.Misread e) {
      throw new UnreadableShare(line + 1, String.valueOf(e.getMessage()));
    }
  }
}
