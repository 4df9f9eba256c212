package org.lehrcase.core.message;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import org.lehrcase.core.VaultException;

/** Text from mail is searched for armored blocks in bounded time, whatever it holds. */
class ArmorFuzzTest {
  private static final String LICENSE = Armor.write(ArmorKind.LICENSE, "Keep this.", new byte[90]);

  @FuzzTest(maxDuration = "20s")
  void findsOrRefuses(FuzzedDataProvider data) {
    int cut = data.consumeInt(0, LICENSE.length());
    String noise = data.consumeRemainingAsString();
    try {
      Armor.find(LICENSE.substring(0, cut) + noise + LICENSE.substring(cut));
    } catch (VaultException refused) {
      // A block that is no block.
      return;
    }
  }
}
