package org.lehrcase.core.seal;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.security.MessageDigest;
import org.lehrcase.core.VaultException;

/** A header that is accepted is exactly the header that would be written. */
class PartHeaderFuzzTest {
  private static final byte[] START = {'L', 'E', 'H', 'R', 'C', 'A', 'S', 'E', 1};

  @FuzzTest(maxDuration = "20s")
  void acceptedMeansCanonical(FuzzedDataProvider data) {
    byte[] bytes = new byte[PartHeader.SIZE_BYTES];
    System.arraycopy(START, 0, bytes, 0, START.length);
    byte[] rest = data.consumeRemainingAsBytes();
    System.arraycopy(
        rest, 0, bytes, START.length, Math.min(rest.length, bytes.length - START.length));
    try {
      byte[] again = PartHeader.parse(bytes).toBytes();
      if (!MessageDigest.isEqual(again, bytes)) {
        throw new AssertionError("two encodings of one header");
      }
    } catch (VaultException refused) {
      // Not a header.
      return;
    }
  }
}
