package org.lehrcase.core.message;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import org.lehrcase.core.VaultException;

/** Hostile CBOR is refused with a {@link VaultException} or read; nothing else escapes. */
class CborReaderFuzzTest {
  @FuzzTest(maxDuration = "20s")
  void readsOrRefuses(FuzzedDataProvider data) {
    int[] calls = new int[32];
    for (int i = 0; i < calls.length; i++) {
      calls[i] = data.consumeInt(0, 6);
    }
    CborReader reader = CborReader.of(data.consumeRemainingAsBytes());
    try {
      for (int call : calls) {
        read(reader, call);
      }
      reader.end();
    } catch (VaultException refused) {
      // The only way out that a reader has.
      return;
    }
  }

  private static void read(CborReader reader, int call) throws VaultException {
    switch (call) {
      case 0 -> reader.array(16);
      case 1 -> reader.uint(Long.MAX_VALUE);
      case 2 -> reader.bytes(64);
      case 3 -> reader.text(64);
      case 4 -> reader.octetsOrNull(16);
      case 5 -> reader.bool();
      default -> reader.skipNull();
    }
  }
}
