package org.lehrcase.core.license;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import org.lehrcase.core.id.Octets;

/** The public context that a seal binds: label ‖ 00 ‖ fields of fixed length. */
final class SealInfo {
  private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();

  SealInfo(String label) {
    bytes.writeBytes(label.getBytes(StandardCharsets.US_ASCII));
    bytes.write(0);
  }

  SealInfo add(Octets octets) {
    bytes.writeBytes(octets.toBytes());
    return this;
  }

  /** Adds a number as 4 bytes, big-endian. */
  SealInfo add(int number) {
    bytes.writeBytes(ByteBuffer.allocate(Integer.BYTES).putInt(number).array());
    return this;
  }

  byte[] toBytes() {
    return bytes.toByteArray();
  }
}
