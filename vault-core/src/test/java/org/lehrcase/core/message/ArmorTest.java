package org.lehrcase.core.message;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.lehrcase.core.Seeds;
import org.lehrcase.core.VaultException;

class ArmorTest {
  private static final byte[] MESSAGE = Seeds.bytes(new SplittableRandom(7), 187);
  private static final String TEXT =
      Armor.write(ArmorKind.LAPTOP_CARD, "This is a card.\nSend it on - soon.", MESSAGE);

  private static void reads(String text) throws VaultException {
    List<Armor.Block> found = Armor.find(text);
    assertThat(found).hasSize(1);
    assertThat(found.get(0).kind()).isEqualTo(ArmorKind.LAPTOP_CARD);
    assertThat(found.get(0).bytes()).isEqualTo(MESSAGE);
  }

  private static Arguments damage(String what, UnaryOperator<String> change) {
    return Arguments.of(what, change);
  }

  static Stream<Arguments> whatMailDoes() {
    return Stream.of(
        damage("nothing", t -> t),
        damage("CRLF", t -> t.replace("\n", "\r\n")),
        damage("CR only", t -> t.replace('\n', '\r')),
        damage("byte-order mark", t -> "\ufeff" + t),
        damage("quoted", t -> "> " + t.replace("\n", "\n> ")),
        damage("quoted twice", t -> ">> " + t.replace("\n", "\n>> ")),
        damage("quoted with bars", t -> "| " + t.replace("\n", "\n| ")),
        damage("em dashes", t -> t.replace("-----", "\u2014\u2014-")),
        damage("en dashes", t -> t.replace("-----", "\u2013\u2013\u2013\u2013\u2013")),
        damage("minus signs", t -> t.replace("-----", "\u2212\u2212\u2212\u2212\u2212")),
        damage("non-breaking spaces", t -> t.replace(' ', '\u00a0')),
        damage("indented", t -> "    " + t.replace("\n", "\n\t ")),
        damage("joined to one line", t -> t.replace('\n', ' ')),
        damage("joined without spaces", t -> t.replace("\n", "")),
        damage("wrapped at 20", t -> t.replaceAll("([^\n]{20})", "$1\n")),
        damage("wrapped at 20 and quoted", t -> t.replaceAll("([^\n]{20})", "$1\n> ")),
        damage("empty lines between", t -> t.replace("\n", "\n\n")),
        damage("trailing spaces", t -> t.replace("\n", "   \n")),
        damage("trailing text", t -> t + "Sent from a telephone -- \u201cbye\u201d"),
        damage("text right behind", t -> t.stripTrailing() + "Bye!"),
        damage("text right before", t -> t.replace("-----BEGIN", "Here:-----BEGIN")),
        damage("curly quotes around", t -> "\u201c" + t.strip() + "\u201d"),
        damage("other armor before", t -> "-----BEGIN OTHER THING-----\nabc\n" + t),
        damage("zero-width spaces", t -> t.replace("\n", "\u200b\n\u200b")));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("whatMailDoes")
  void aMessageSurvivesWhatMailDoes(String what, UnaryOperator<String> change)
      throws VaultException {
    assertThat(what).isNotBlank();
    reads(change.apply(TEXT));
  }

  @ParameterizedTest
  @EnumSource(ArmorKind.class)
  void everyKindNamesItself(ArmorKind kind) throws VaultException {
    String text = Armor.write(kind, "Sentences.", MESSAGE);
    assertThat(text).contains("-----BEGIN LEHRCASE ").startsWith("Sentences.\n\n-----BEGIN");
    assertThat(Armor.find(text)).singleElement().extracting(Armor.Block::kind).isEqualTo(kind);
    assertThat(text.lines().allMatch(line -> line.length() <= 64)).isTrue();
  }

  @Test
  void severalMessagesInOneTextAreFoundInOrder() throws VaultException {
    String license = Armor.write(ArmorKind.LICENSE, "First.", new byte[] {1, 2, 3});
    String letter = Armor.write(ArmorKind.KEY_LETTER, "Second.", new byte[] {4});
    assertThat(Armor.find(license + "\n" + letter))
        .extracting(Armor.Block::kind)
        .containsExactly(ArmorKind.LICENSE, ArmorKind.KEY_LETTER);
  }

  @Test
  void aTextWithoutAMessageHasNone() throws VaultException {
    assertThat(Armor.find("Dear teacher, BEGIN LEHRCASE LICENSE is what I miss.")).isEmpty();
    assertThat(Armor.find("")).isEmpty();
  }

  @Test
  void aMissingEndLineIsCalledTruncated() {
    String cut = TEXT.substring(0, TEXT.indexOf("-----END"));
    assertThatThrownBy(() -> Armor.find(cut))
        .isInstanceOf(VaultException.Truncated.class)
        .hasMessageContaining("last line");
  }

  @Test
  void linesThatDoNotFitEachOtherAreRefused() {
    String mixed = TEXT.replace("-----END LEHRCASE LAPTOP CARD", "-----END LEHRCASE LICENSE");
    assertThatThrownBy(() -> Armor.find(mixed)).isInstanceOf(VaultException.Malformed.class);
    String twice = TEXT.replace("-----END", "-----BEGIN");
    assertThatThrownBy(() -> Armor.find(twice)).isInstanceOf(VaultException.Malformed.class);
  }

  /** One byte, in other spellings than the one: stray bits, missing or extra padding, alphabet. */
  @ParameterizedTest(name = "[{0}]")
  @ValueSource(strings = {"QR==", "QQ", "QQ=", "QQ===", "Q_==", "QQ==QQ==", "", "====", "Q*=="})
  void contentThatIsNotExactlyBase64IsRefused(String base64) {
    String text =
        "-----BEGIN LEHRCASE LICENSE-----\n" + base64 + "\n-----END LEHRCASE LICENSE-----";
    assertThatThrownBy(() -> Armor.find(text)).isInstanceOf(VaultException.Malformed.class);
  }

  @Test
  void aMessageLongerThanItsKindAllowsIsRefused() {
    String text = Armor.write(ArmorKind.LAPTOP_CARD, "Long.", new byte[300]);
    assertThatThrownBy(() -> Armor.find(text)).isInstanceOf(VaultException.TooLarge.class);
  }

  @Test
  void aTextWithoutEndIsNotSearched() {
    String endless = " ".repeat(Armor.MAX_TEXT_CHARS + 1);
    assertThatThrownBy(() -> Armor.find(endless)).isInstanceOf(VaultException.TooLarge.class);
  }

  @Tag("slow")
  @Test
  void aMillionDashesDoNotStopTheSearch() throws VaultException {
    assertThat(Armor.find("-".repeat(Armor.MAX_TEXT_CHARS))).isEmpty();
    assertThat(Armor.find("-BEGIN ".repeat(Armor.MAX_TEXT_CHARS / 7))).isEmpty();
    assertThat(Armor.find("- > ".repeat(Armor.MAX_TEXT_CHARS / 4))).isEmpty();
  }
}
