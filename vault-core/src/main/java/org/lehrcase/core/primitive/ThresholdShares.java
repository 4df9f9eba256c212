package org.lehrcase.core.primitive;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.List;
import org.bouncycastle.crypto.threshold.ShamirSecretSplitter;
import org.bouncycastle.crypto.threshold.ShamirSplitSecret;
import org.bouncycastle.crypto.threshold.ShamirSplitSecretShare;

/**
 * Threshold shares of a secret over GF(2^8) (Shamir 1979). Fewer shares than needed tell nothing
 * about the secret. Shares carry no integrity: whoever prints them adds a check value.
 */
public final class ThresholdShares {
  private ThresholdShares() {}

  /**
   * One share.
   *
   * <p>A class, not a record, because a share is as secret as what it helps to rebuild.
   */
  public static final class Share {
    private final int number;
    private final SecretBytes bytes;

    /**
     * Holds one share.
     *
     * @param number the share's number, from 1
     * @param bytes as long as the secret
     */
    public Share(int number, SecretBytes bytes) {
      if (number < 1 || number > 255) {
        throw new IllegalArgumentException("a share has a number from 1 to 255, not " + number);
      }
      this.number = number;
      this.bytes = bytes;
    }

    /** Returns the share's number (1 for the first). */
    public int number() {
      return number;
    }

    /** Returns the share itself (as many bytes as the secret). */
    public SecretBytes bytes() {
      return bytes;
    }

    @Override
    public String toString() {
      return "Share[" + number + ", redacted]";
    }
  }

  /**
   * Splits a secret.
   *
   * @param secret what to split
   * @param needed how many shares rebuild it, at least 2
   * @param total how many shares there are
   * @param random the source of randomness
   * @return the shares, numbered from 1
   */
  public static List<Share> split(SecretBytes secret, int needed, int total, SecureRandom random) {
    ShamirSecretSplitter splitter =
        new ShamirSecretSplitter(
            ShamirSecretSplitter.Algorithm.AES,
            ShamirSecretSplitter.Mode.Native,
            secret.sizeBytes(),
            random);
    ShamirSplitSecretShare[] raw =
        secret.use(bytes -> splitter.resplit(bytes, needed, total)).getSecretShares();
    List<Share> shares = new ArrayList<>();
    for (int i = 0; i < raw.length; i++) {
      shares.add(new Share(i + 1, SecretBytes.taking(encoded(raw[i]))));
    }
    return List.copyOf(shares);
  }

  /**
   * Rebuilds a secret. With too few or foreign shares the result is wrong, not refused.
   *
   * @param shares at least as many as are needed, of different numbers
   * @return the secret, if the shares belong together
   * @throws IllegalArgumentException if fewer than two shares are given or a number is given twice
   */
  public static SecretBytes join(List<Share> shares) {
    if (shares.size() < 2
        || shares.stream().map(Share::number).distinct().count() < shares.size()) {
      throw new IllegalArgumentException("two or more shares of different numbers are needed");
    }
    ShamirSplitSecretShare[] raw =
        shares.stream()
            .map(share -> share.bytes().use(b -> new ShamirSplitSecretShare(b, share.number())))
            .toArray(ShamirSplitSecretShare[]::new);
    try {
      return SecretBytes.taking(
          new ShamirSplitSecret(
                  ShamirSecretSplitter.Algorithm.AES, ShamirSecretSplitter.Mode.Native, raw)
              .getSecret());
    } catch (IOException e) {
      throw new UncheckedIOException("no file is read here", e);
    }
  }

  private static byte[] encoded(ShamirSplitSecretShare share) {
    try {
      return share.getEncoded().clone();
    } catch (IOException e) {
      throw new UncheckedIOException("no file is written here", e);
    }
  }
}
