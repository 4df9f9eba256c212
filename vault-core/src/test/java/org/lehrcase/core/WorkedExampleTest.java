package org.lehrcase.core;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.LicenseId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.id.PlaceId;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.keys.LicenseKey;
import org.lehrcase.core.keys.MasterKey;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.keys.PlaceKeys;
import org.lehrcase.core.keys.RootSecret;
import org.lehrcase.core.license.SignerRole;
import org.lehrcase.core.license.Statement;
import org.lehrcase.core.message.CborReader;
import org.lehrcase.core.primitive.SecretBytes;
import org.lehrcase.core.primitive.SigningKey;
import org.lehrcase.core.seal.ByteSource;
import org.lehrcase.core.seal.DigestList;
import org.lehrcase.core.seal.PartHeader;
import org.lehrcase.core.seal.PartKind;
import org.lehrcase.core.seal.PartSealer;

/** The worked example of {@code docs/format.md}, section 13, is what the program makes. */
class WorkedExampleTest {
  private static final EditionId EDITION = EditionId.of(run(0xa0, 16));
  private static final LicenseId LICENSE = LicenseId.of(run(0xb0, 16));
  private static final PlaceId PLACE = PlaceId.of(run(0xc0, 8));
  private static final Octets SALT = Octets.of(run(0xd0, 16));

  private final RootSecret root = RootSecret.of(SecretBytes.copyOf(run(0, 32)));

  private static byte[] run(int first, int count) {
    byte[] bytes = new byte[count];
    for (int i = 0; i < count; i++) {
      bytes[i] = (byte) (first + i);
    }
    return bytes;
  }

  private static String hex(SecretBytes secret) {
    return secret.use(HexFormat.of()::formatHex);
  }

  private static String hex(byte[] bytes) {
    return HexFormat.of().formatHex(bytes);
  }

  @Test
  void theKeysOfTheDocumentAreDerived() throws Exception {
    MasterKey master = root.masterKey(0);
    EditionKey edition = master.editionKey(EDITION);
    LicenseKey license = master.licenseKey(LICENSE, 0);
    PlaceKeys place = new PlaceKeys(license, master.placeSecret(LICENSE, PLACE));
    Map<String, String> made = new LinkedHashMap<>();
    made.put("root public key", root.signingKey().publicKey().octets().hex());
    made.put("M_0", hex(master.secret()));
    made.put("U_0", hex(root.closingKey(0).secret()));
    made.put("chkRK", edition.check(EDITION).hex());
    made.put("contents key", edition.contentsKey(EDITION).use(HexFormat.of()::formatHex));
    made.put("closing row", root.closingKey(0).closingRow(EDITION, edition).hex());
    made.put("chkU", root.closingKey(0).check().hex());
    made.put("S, g = 0", hex(place.secret()));
    made.put("chk", place.check(PLACE).hex());
    made.put("key row, g = 0", license.keyRow(EDITION, SALT, edition).hex());
    assertDocumented(made);
  }

  @Test
  void thePartOfTheDocumentIsSealed() throws Exception {
    byte[] clear = "glass".getBytes(StandardCharsets.US_ASCII);
    PartHeader header = PartHeader.single(PartKind.ASSET, AssetId.of(run(0xe0, 16)), clear.length);
    PartKey key = PartKey.ofBytes(run(0x40, 32));
    byte[] file = new PartSealer(new CountingRandom()).sealBytes(clear, header, key);
    DigestList digests = DigestList.ofFile(ByteSource.of(file), 16);
    Map<String, String> made = new LinkedHashMap<>();
    made.put("header", hex(Arrays.copyOf(file, 40)));
    made.put("stream header", hex(Arrays.copyOfRange(file, 40, 80)));
    made.put("C_0", hex(Arrays.copyOfRange(file, 80, file.length)));
    made.put("digest list", hex(digests.toBytes()));
    made.put("address", digests.address().hex());
    assertDocumented(made);
    assertThat(PartSealer.openBytes(file, key, header)).isEqualTo(clear);
  }

  @Test
  void theStatementOfTheDocumentIsSigned() throws Exception {
    SigningKey desk = SigningKey.fromSeed(SecretBytes.copyOf(run(0x60, 32)));
    Statement statement =
        Statement.issue(
            new Statement.Terms(desk.publicKey(), 1, SignerRole.DESK, "A Studio", List.of()),
            root.signingKey());
    byte[] message = statement.toBytes();
    CborReader reader = CborReader.of(Arrays.copyOfRange(message, 6, message.length));
    byte[] payload = reader.bytes(1024);
    Map<String, String> made = new LinkedHashMap<>();
    made.put("desk public key", desk.publicKey().octets().hex());
    made.put("payload", hex(payload));
    made.put("statement", hex(message));
    assertDocumented(made);
  }

  /** Every value stands in the document as {@code name = hex}, folded at 64 digits. */
  private static void assertDocumented(Map<String, String> made) throws Exception {
    String document;
    try (var in = Files.newInputStream(Path.of("..", "docs", "format.md"))) {
      document = new String(in.readNBytes(1 << 20), StandardCharsets.UTF_8);
    }
    String expected =
        made.entrySet().stream()
            .map(e -> e.getKey() + " =\n" + folded(e.getValue()))
            .collect(Collectors.joining("\n"));
    assertThat(document).contains(expected);
  }

  private static String folded(String hex) {
    return IntStream.iterate(0, i -> i < hex.length(), i -> i + 64)
        .mapToObj(i -> "  " + hex.substring(i, Math.min(hex.length(), i + 64)))
        .collect(Collectors.joining("\n"));
  }

  /** Not random: 01, 02, 03 … so that the example can be followed. */
  private static final class CountingRandom extends SecureRandom {
    private static final long serialVersionUID = 1L;

    @Override
    public void nextBytes(byte[] bytes) {
      for (int i = 0; i < bytes.length; i++) {
        bytes[i] = (byte) i;
      }
    }
  }
}
