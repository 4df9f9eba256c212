package org.lehrcase.desk.home;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.SecureRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PassphraseTest {
  @TempDir Path folder;

  @Test
  void fiveWordsAreProposedAndDiffer() {
    SecureRandom random = new SecureRandom();
    String first = Passphrase.propose(random);
    assertThat(first.split(" ")).hasSize(5);
    assertThat(first.length()).isGreaterThanOrEqualTo(Passphrase.MIN_CHARACTERS);
    assertThat(Passphrase.propose(random)).isNotEqualTo(first);
  }

  @ParameterizedTest
  @ValueSource(strings = {"küche und ofen", "küche und ofen\n", "küche und ofen\r\nmore"})
  void theFirstLineOfTheFileCounts(String content) throws IOException {
    Path file = folder.resolve("phrase");
    Files.writeString(file, content);
    try (Passphrase read = Passphrase.ofFile(file)) {
      assertThat(read.<String>use(String::new)).isEqualTo("küche und ofen");
    }
  }

  @Test
  void otherEncodingsAreNamed() throws IOException {
    Path file = folder.resolve("phrase");
    Files.write(file, "küche".getBytes(StandardCharsets.ISO_8859_1));
    assertThatThrownBy(() -> Passphrase.ofFile(file)).hasMessageContaining("UTF-8");
  }

  @Test
  void shortOnesAreRefusedForNewKeys() throws Exception {
    Passphrase shortOne = Passphrase.taking("elevenchars".toCharArray());
    assertThatThrownBy(shortOne::fitForNewKeys).isInstanceOf(DeskHomeException.Unusable.class);
    Passphrase longEnough = Passphrase.taking("twelve chars".toCharArray());
    assertThat(longEnough.fitForNewKeys()).isSameAs(longEnough);
  }

  @Test
  void itNeverPrintsItselfAndForgets() {
    char[] typed = "a secret line".toCharArray();
    Passphrase passphrase = Passphrase.taking(typed);
    assertThat(typed).containsOnly('\0');
    assertThat(passphrase.toString()).doesNotContain("secret");
    assertThat(passphrase.sameAs(Passphrase.taking("a secret line".toCharArray()))).isTrue();
    assertThat(passphrase.sameAs(Passphrase.taking("a secret lane".toCharArray()))).isFalse();
    passphrase.close();
    assertThat(passphrase.<String>use(String::new)).matches("\0+");
  }
}
