package org.lehrcase.core.license;

import com.code_intelligence.jazzer.api.FuzzedDataProvider;
import com.code_intelligence.jazzer.junit.FuzzTest;
import java.security.SecureRandom;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.core.message.SignedMessage;
import org.lehrcase.core.primitive.SecretBytes;
import org.lehrcase.core.primitive.SigningKey;

/** Anybody may sign a card or an ask with a key of their own; nothing odd in one is accepted. */
class StrangerMessageFuzzTest {
  private static final SigningKey STRANGER =
      SigningKey.fromSeed(SecretBytes.random(new SecureRandom(), 32));

  @FuzzTest(maxDuration = "20s")
  void refusesWhatAStrangerMadeUp(FuzzedDataProvider data) {
    boolean raw = data.consumeBoolean();
    boolean card = data.consumeBoolean();
    byte[] bytes = data.consumeBytes(150);
    try {
      MessageType type = card ? MessageType.CARD : MessageType.ASK;
      byte[] message = raw ? bytes : SignedMessage.sign(type, bytes, STRANGER);
      if (card) {
        LaptopCard.verify(message);
      } else {
        MoveAsk.verify(message);
      }
      throw new AssertionError("accepted");
    } catch (VaultException refused) {
      // Not a card, not an ask, or another key stands inside.
      return;
    }
  }
}
