package org.lehrcase.core.license;

import java.util.Locale;
import java.util.Objects;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Contents;
import org.lehrcase.core.edition.Correction;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.core.primitive.VerifyKey;
import org.lehrcase.core.seal.VectorEdit;
import org.lehrcase.core.seal.VectorFile;

/** Reads the message of a vector as the kind that it is offered as. */
final class MessageVectorReader {
  /** What a vector is offered as. */
  enum Kind {
    STATEMENT,
    LICENSE,
    CARD,
    LETTER,
    FRONT_PAGE,
    KEYS_INDEX,
    CORRECTION,
    CONTENTS;

    String fileName() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    static Kind of(String fileName) {
      return valueOf(fileName.toUpperCase(Locale.ROOT).replace('-', '_'));
    }

    MessageType type() {
      return MessageType.valueOf(name());
    }
  }

  private final MessageVectorShop shop;
  private final VerifyKey strangerRoot;

  MessageVectorReader(MessageVectorShop shop) {
    this.shop = shop;
    this.strangerRoot = shop.master.issueKey().publicKey();
  }

  /** Returns {@code opens}, or the kind of refusal in one word. */
  String outcome(VectorFile vector, byte[] base) {
    byte[] message = base;
    for (String edit : vector.edits()) {
      message = VectorEdit.apply(message, edit);
    }
    try {
      Objects.requireNonNull(
          read(Kind.of(vector.get("kind")), message, vector.get("root").equals("own")));
      return "opens";
    } catch (VaultException e) {
      return e.getClass().getSimpleName().toLowerCase(Locale.ROOT);
    }
  }

  /** Reads a message and gives back what it would be written as. */
  byte[] read(Kind kind, byte[] message, boolean ownShop) throws VaultException {
    TrustedRoots roots = ownShop ? shop.roots() : TrustedRoots.pinned(strangerRoot);
    return switch (kind) {
      case STATEMENT -> Statement.verify(message, roots).toBytes();
      case LICENSE -> License.verify(message, roots).toBytes();
      case CARD -> LaptopCard.verify(message).toBytes();
      case LETTER -> letter(message, ownShop ? shop.desk.publicKey() : strangerRoot);
      case FRONT_PAGE -> FrontPage.verify(message, roots).toBytes();
      case KEYS_INDEX -> index(message, roots);
      case CORRECTION -> correction(message, roots);
      case CONTENTS -> Contents.decode(message).encode();
    };
  }

  private byte[] letter(byte[] message, VerifyKey desk) throws VaultException {
    KeyLetter letter = KeyLetter.verify(message, desk);
    letter.open(shop.card(), shop.seed).close();
    return letter.toBytes();
  }

  private static byte[] index(byte[] message, TrustedRoots roots) throws VaultException {
    var unused = KeysIndex.verify(message, roots);
    return message;
  }

  private byte[] correction(byte[] message, TrustedRoots roots) throws VaultException {
    Correction correction = Correction.verify(message, roots);
    var unused = correction.open(shop.key);
    return correction.toBytes();
  }
}
