package org.lehrcase.bench.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.opening.Dropped;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;

/** Hands a file that a buyer received to the one drop place. */
final class MessageFile {
  private static final int MAX_BYTES = 4 << 20;

  private MessageFile() {}

  static int take(Bench bench, Path file, PrintWriter out)
      throws Trouble, VaultException, IOException {
    byte[] bytes;
    try (InputStream in = Files.newInputStream(file)) {
      bytes = in.readNBytes(MAX_BYTES + 1);
    }
    if (bytes.length > MAX_BYTES) {
      throw new Trouble(
          TroubleCode.TOO_LARGE, file + " is too large to be a letter.", "Choose another file.");
    }
    Dropped dropped = bench.dropPlace().take(bytes);
    out.println(dropped.message());
    if (!dropped.next().isEmpty()) {
      out.println(dropped.next());
    }
    return dropped.outcome() == Dropped.Outcome.REFUSED ? BenchCommand.REFUSED : BenchCommand.DONE;
  }
}
