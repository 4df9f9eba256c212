package org.lehrcase.desk.envelopes;

import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.List;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.keys.RootSecret;
import org.lehrcase.core.primitive.SecretBytes;
import org.lehrcase.core.primitive.SigningKey;
import org.lehrcase.core.primitive.ThresholdShares;
import org.lehrcase.core.primitive.ThresholdShares.Share;
import org.lehrcase.core.primitive.VerifyKey;

/** Splits the root secret over three envelopes and rebuilds it from any two. */
public final class SpareKeys {
  /** How many envelopes there are. */
  public static final int TOTAL = 3;

  /** How many of them rebuild the root secret. */
  public static final int NEEDED = 2;

  private SpareKeys() {}

  /**
   * Writes the lines of all envelopes.
   *
   * @param root the root secret, only read
   * @param random the source of randomness
   * @return for each envelope its four lines
   */
  public static List<List<String>> split(RootSecret root, SecureRandom random) {
    Octets set = ShareLines.set(publicKey(root));
    List<List<String>> envelopes = new ArrayList<>();
    try (SecretBytes secret = root.secret()) {
      for (Share share : ThresholdShares.split(secret, NEEDED, TOTAL, random)) {
        envelopes.add(ShareLines.write(share, set));
        share.bytes().close();
      }
    }
    return List.copyOf(envelopes);
  }

  /**
   * Rebuilds the root secret.
   *
   * @param envelopes the lines of two or more envelopes
   * @return the root secret
   * @throws UnreadableShare if a line is mistyped, an envelope is given twice, or the envelopes are
   *     not of one shop
   */
  public static RootSecret join(List<List<String>> envelopes) throws UnreadableShare {
    List<Share> shares = new ArrayList<>();
    List<Octets> sets = new ArrayList<>();
    for (List<String> lines : envelopes) {
      ShareLines.Labelled read = ShareLines.read(lines);
      shares.add(read.share());
      sets.add(read.set());
    }
    long different = shares.stream().map(Share::number).distinct().count();
    if (different < NEEDED || different < shares.size()) {
      throw new UnreadableShare(0, "Two different envelopes are needed");
    }
    try (SecretBytes joined = ThresholdShares.join(shares)) {
      RootSecret root = RootSecret.of(joined);
      Octets set = ShareLines.set(publicKey(root));
      if (!sets.stream().allMatch(set::equals)) {
        root.close();
        throw new UnreadableShare(0, "These envelopes do not belong to the same shop");
      }
      return root;
    }
  }

  private static VerifyKey publicKey(RootSecret root) {
    try (SigningKey key = root.signingKey()) {
      return key.publicKey();
    }
  }
}
