package org.lehrcase.core.edition;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Contents;
import org.lehrcase.core.message.CborReader;

/** What a hostile desk signs or seals is refused or read like any other. */
class FrontPageFuzzTest {
  @FuzzTest(maxDuration = "20s")
  void readsOrRefuses(FuzzedDataProvider data) {
    int kind = data.consumeInt(0, 2);
    byte[] bytes = data.consumeRemainingAsBytes();
    try {
      switch (kind) {
        case 0 -> FrontPageCodec.read(CborReader.of(bytes));
        case 1 -> Contents.decode(bytes);
        default -> CorrectionCodec.decode(bytes);
      }
    } catch (VaultException refused) {
      // The only way out that these readers have.
      return;
    }
  }
}
