package org.lehrcase.bench.laptop;

import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.FileAttribute;
import java.security.SecureRandom;
import java.util.Optional;
import java.util.Set;
import org.lehrcase.core.file.OwnerOnly;
import org.lehrcase.core.id.Octets;

/**
 * A random secret that lies outside the data folder, so that a copied data folder lacks one trait
 * at once. Made at the first card, never changed.
 */
public final class LocalSecret {
  private static final int SECRET_BYTES = 16;
  private static final String FILE = "laptop.secret";

  private final Path folder;
  private final SecureRandom random;

  /**
   * Names the folder.
   *
   * @param folder a folder that is not inside the data folder
   * @param random makes the secret
   */
  public LocalSecret(Path folder, SecureRandom random) {
    this.folder = folder;
    this.random = random;
  }

  /**
   * Returns the secret if it was made and can be read.
   *
   * @return 32 hexadecimal digits
   */
  Optional<String> read() {
    try (InputStream in = Files.newInputStream(folder.resolve(FILE), LinkOption.NOFOLLOW_LINKS)) {
      String text =
          new String(in.readNBytes(2 * SECRET_BYTES + 1), StandardCharsets.US_ASCII).trim();
      return text.matches("[0-9a-f]{32}") ? Optional.of(text) : Optional.empty();
    } catch (IOException e) {
      return Optional.empty();
    }
  }

  /**
   * Makes the secret durably unless it is there.
   *
   * @throws IOException if it cannot be written
   */
  public void ensure() throws IOException {
    if (read().isPresent()) {
      return;
    }
    Files.createDirectories(folder);
    Path fresh = folder.resolve(FILE + ".part");
    Files.deleteIfExists(fresh);
    byte[] text = Octets.random(random, SECRET_BYTES).hex().getBytes(StandardCharsets.US_ASCII);
    try (FileChannel out =
        FileChannel.open(
            fresh, Set.of(StandardOpenOption.CREATE_NEW, StandardOpenOption.WRITE), rights())) {
      ByteBuffer bytes = ByteBuffer.wrap(text);
      while (bytes.hasRemaining()) {
        out.write(bytes);
      }
      out.force(true);
    }
    Files.move(fresh, folder.resolve(FILE), StandardCopyOption.ATOMIC_MOVE);
  }

  private FileAttribute<?>[] rights() throws IOException {
    if (!Files.exists(folder)) {
      throw new NoSuchFileException(folder.toString());
    }
    return OwnerOnly.file(folder);
  }

  @Override
  public String toString() {
    return "LocalSecret[redacted]";
  }
}
