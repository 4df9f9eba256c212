package org.lehrcase.core.edition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Lesson;
import org.lehrcase.core.course.Rendition;
import org.lehrcase.core.id.EditionId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.id.PartAddress;
import org.lehrcase.core.license.SignerRole;
import org.lehrcase.core.license.Statement;
import org.lehrcase.core.license.TrustedRoots;
import org.lehrcase.core.message.CborWriter;
import org.lehrcase.core.message.MessageType;
import org.lehrcase.core.message.SignedMessage;
import org.lehrcase.core.primitive.SecretBytes;
import org.lehrcase.core.primitive.SigningKey;

class FrontPageTest {

  @TempDir Path folder;
  private SampleEdition edition;

  @BeforeEach
  void pack() throws Exception {
    edition = SampleEdition.pack(folder);
  }

  private static SigningKey stranger() {
    return SigningKey.fromSeed(SecretBytes.random(SampleEdition.RANDOM, 32));
  }

  @Test
  void whatIsSignedIsRead() throws Exception {
    FrontPage read = FrontPage.verify(edition.frontPage.toBytes(), edition.roots());
    assertThat(read.facts()).isEqualTo(edition.frontPage.facts());
    assertThat(read.edition()).isEqualTo(edition.id);
    assertThat(read.digest()).isEqualTo(edition.frontPage.digest());
    assertThat(read.statement().terms().name()).isEqualTo("Sample shop");
    assertThat(read.parts(0)).hasSize(1);
    assertThat(read.parts(2)).hasSize(2);
    assertThat(read.part(PartAddress.of(new byte[32]))).isEmpty();
  }

  @Test
  void anotherShopIsNotAccepted() {
    TrustedRoots other = TrustedRoots.pinned(stranger().publicKey());
    assertThatThrownBy(() -> FrontPage.verify(edition.frontPage.toBytes(), other))
        .isInstanceOf(VaultException.Tampered.class);
  }

  @Test
  void aFellowBuyerCannotSignWithAKeyOfTheirOwn() {
    byte[] payload = payload(edition.statement);
    byte[] forged = SignedMessage.sign(MessageType.FRONT_PAGE, payload, stranger());
    assertThatThrownBy(() -> FrontPage.verify(forged, edition.roots()))
        .isInstanceOf(VaultException.Tampered.class);
  }

  @Test
  void anIssueKeyMaySignNoFrontPage() throws Exception {
    SigningKey issue = stranger();
    Statement statement = edition.statement(issue, 1, SignerRole.ISSUE);
    byte[] message = SignedMessage.sign(MessageType.FRONT_PAGE, payload(statement), issue);
    assertThatThrownBy(() -> FrontPage.verify(message, edition.roots()))
        .isInstanceOf(VaultException.Tampered.class);
  }

  @ParameterizedTest
  @EnumSource(
      value = MessageType.class,
      names = {"CORRECTION", "KEYS_INDEX", "LICENSE"})
  void aMessageOfAnotherTypeIsNoFrontPage(MessageType type) {
    byte[] message = SignedMessage.sign(type, payload(edition.statement), edition.desk);
    assertThatThrownBy(() -> FrontPage.verify(message, edition.roots()))
        .isInstanceOf(VaultException.Tampered.class);
  }

  @Test
  void everyChangedByteIsRefused() {
    byte[] message = edition.frontPage.toBytes();
    Random random = new Random(7);
    for (int i = 0; i < 150; i++) {
      byte[] changed = message.clone();
      changed[random.nextInt(changed.length)] ^= (byte) (1 << random.nextInt(8));
      assertThatThrownBy(() -> FrontPage.verify(changed, edition.roots()))
          .isInstanceOf(VaultException.class);
    }
  }

  @Test
  void everyTruncationAndExtensionIsRefused() {
    byte[] message = edition.frontPage.toBytes();
    for (int size = 0; size < message.length; size += 37) {
      byte[] cut = Arrays.copyOf(message, size);
      assertThatThrownBy(() -> FrontPage.verify(cut, edition.roots()))
          .isInstanceOf(VaultException.class);
    }
    byte[] longer = Arrays.copyOf(message, message.length + 1);
    assertThatThrownBy(() -> FrontPage.verify(longer, edition.roots()))
        .isInstanceOf(VaultException.class);
  }

  @Test
  void moreThanAMebibyteIsRefusedUnread() {
    assertThatThrownBy(() -> FrontPage.verify(new byte[(1 << 20) + 1], edition.roots()))
        .isInstanceOf(VaultException.TooLarge.class);
  }

  @Test
  void signedNonsenseIsRefused() {
    var payload = new CborWriter().array(17).uint(1).bytes(edition.statement.toBytes());
    for (int i = 0; i < 15; i++) {
      payload.uint(i);
    }
    byte[] message = SignedMessage.sign(MessageType.FRONT_PAGE, payload.toBytes(), edition.desk);
    assertThatThrownBy(() -> FrontPage.verify(message, edition.roots()))
        .isInstanceOf(VaultException.Malformed.class);
  }

  @Test
  void aPageOfAnOlderKeyIsGoodOnlyIfTheNewStatementListsIt() throws Exception {
    Statement second = edition.statement(stranger(), 2, SignerRole.DESK);
    assertThat(edition.frontPage.isGoodUnder(edition.statement)).isTrue();
    assertThat(edition.frontPage.isGoodUnder(second)).isFalse();
    var listing =
        new Statement.Terms(
            stranger().publicKey(),
            2,
            SignerRole.DESK,
            "Sample shop",
            List.of(edition.frontPage.digest()));
    Statement third = Statement.issue(listing, edition.root.signingKey());
    assertThat(edition.frontPage.isGoodUnder(third)).isTrue();
  }

  @Test
  void editionsAreOrderedByRestoresThenNumber() {
    assertThat(title(0, 2).isNewerThan(title(0, 1))).isTrue();
    assertThat(title(1, 1).isNewerThan(title(0, 9))).isTrue();
    assertThat(title(0, 1).isNewerThan(title(0, 1))).isFalse();
    assertThat(title(0, 9).isNewerThan(title(1, 1))).isFalse();
  }

  private static EditionTitle title(int restores, int number) {
    return new EditionTitle(EditionId.of(new byte[16]), "brush", restores, number, "Brush", "", "");
  }

  static Stream<Runnable> wrongValues() {
    PartAddress address = PartAddress.of(new byte[32]);
    Octets check = Octets.of(new byte[16]);
    Octets row = Octets.of(new byte[40]);
    return Stream.of(
        () -> title(-1, 1),
        () -> title(0, 0),
        () -> new OutlineEntry(0, "t", true),
        () -> new OutlineEntry(1000, "t", true),
        () -> new OutlineEntry(1, "a\nb", true),
        () -> new PartEntry(-1, address, 100, Rendition.FULL),
        () -> new PartEntry(1000, address, 100, Rendition.FULL),
        () -> new PartEntry(1, address, 0, Rendition.FULL),
        () -> new PartEntry(1, address, (1L << 30) + 1, Rendition.FULL),
        () -> new ContentsSeal(address, 10, check, check, row),
        () -> new ContentsSeal(address, 1L << 25, check, check, row),
        () -> new ContentsSeal(address, 1000, row, check, row),
        () -> new ContentsSeal(address, 1000, check, row, row),
        () -> new ContentsSeal(address, 1000, check, check, check));
  }

  @ParameterizedTest
  @MethodSource("wrongValues")
  void impossibleValuesAreRefused(Runnable making) {
    assertThatThrownBy(making::run).isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void listsThatDoNotFitTogetherAreRefused() {
    FrontPageFacts facts = edition.frontPage.facts();
    var outline = facts.outline();
    var parts = facts.parts();
    var open = facts.openLessons();
    var twice = List.of(parts.get(0), parts.get(0));
    assertRefused(facts, List.of(outline.get(0), outline.get(0)), parts, List.of());
    assertRefused(facts, outline, twice, List.of());
    assertRefused(facts, List.of(outline.get(1)), parts, open);
    assertRefused(facts, outline, List.of(), open);
    assertRefused(facts, outline, parts, List.of(edition.second));
  }

  private static void assertRefused(
      FrontPageFacts facts, List<OutlineEntry> outline, List<PartEntry> parts, List<Lesson> open) {
    assertThatThrownBy(() -> new FrontPageFacts(facts.title(), facts.seal(), outline, parts, open))
        .isInstanceOf(IllegalArgumentException.class);
  }

  private byte[] payload(Statement statement) {
    var payload = new CborWriter().array(17).uint(1).bytes(statement.toBytes());
    FrontPageCodec.write(payload, edition.frontPage.facts());
    return payload.toBytes();
  }
}
