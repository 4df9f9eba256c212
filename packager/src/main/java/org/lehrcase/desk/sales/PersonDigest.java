package org.lehrcase.desk.sales;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.Sha256;

/**
 * What the chain of events holds of fields that may have to be forgotten: SHA-256 over a label, a
 * random salt and the fields. Without the salt, which is erased with the fields, it says nothing.
 */
final class PersonDigest {
  static final int SALT_BYTES = 16;
  private static final String PERSON = "lehrcase/1 person";
  private static final String SALE = "lehrcase/1 sale";

  private PersonDigest() {}

  static String ofPerson(Octets salt, String name, String email) {
    return digest(PERSON, salt, name, email);
  }

  static String ofSale(Octets salt, String facts) {
    return digest(SALE, salt, facts, "");
  }

  private static String digest(String label, Octets salt, String one, String other) {
    return Octets.of(Sha256.of(sized(label), salt.toBytes(), sized(one), sized(other))).hex();
  }

  private static byte[] sized(String text) {
    byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
    return ByteBuffer.allocate(Integer.BYTES + bytes.length)
        .putInt(bytes.length)
        .put(bytes)
        .array();
  }
}
