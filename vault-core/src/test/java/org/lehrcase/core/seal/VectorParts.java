package org.lehrcase.core.seal;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.Arrays;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.primitive.Sha256;

/**
 * What the vectors are cut from: keys counted up, clear bytes from a hash, parts sealed from them.
 */
final class VectorParts {
  static final int S = 1 << 16;

  /** Clear length of three full segments and a short one. */
  static final int PLAIN = (S - 96) + 2 * (S - 16) + 1000;

  static final AssetId ASSET = AssetId.of(counted(0xa0, 16));
  static final byte[] KEY = counted(0x10, 32);
  static final PartHeader HEADER = new PartHeader(PartKind.ASSET, ASSET, PLAIN, 16, 0, 2);

  private VectorParts() {}

  /** Clear bytes: SHA-256 of 0, 1, 2 ... as four bytes, one behind the other. */
  static byte[] clear() {
    ByteBuffer clear = ByteBuffer.allocate(PLAIN + 32);
    for (int i = 0; clear.position() < PLAIN; i++) {
      clear.put(Sha256.of(ByteBuffer.allocate(4).putInt(i).array()));
    }
    return Arrays.copyOf(clear.array(), PLAIN);
  }

  static byte[] sealed(PartHeader header, byte[] key, int salt) {
    return sealed(header, key, salt, clear());
  }

  static byte[] sealed(PartHeader header, byte[] key, int salt, byte[] clear) {
    byte[] piece = Arrays.copyOf(clear, Math.toIntExact(header.plainBytes()));
    PartSealer sealer = new PartSealer(new CountedRandom(salt));
    return sealer.sealBytes(piece, header, PartKey.ofBytes(key));
  }

  static DigestList list(byte[] file) {
    try {
      return DigestList.ofFile(ByteSource.of(file), 16);
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  static byte[] counted(int first, int size) {
    byte[] bytes = new byte[size];
    new CountedRandom(first).nextBytes(bytes);
    return bytes;
  }
}
