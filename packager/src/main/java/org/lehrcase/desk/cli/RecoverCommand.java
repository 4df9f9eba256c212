package org.lehrcase.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.CharBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.keys.RootSecret;
import org.lehrcase.core.primitive.SigningKey;
import org.lehrcase.desk.answering.Refusal;
import org.lehrcase.desk.answering.RefusedException;
import org.lehrcase.desk.envelopes.ShareLines;
import org.lehrcase.desk.envelopes.SpareKeys;
import org.lehrcase.desk.envelopes.UnreadableShare;
import org.lehrcase.desk.home.DeskHomeException;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.home.NewDesk;
import org.lehrcase.desk.home.OwnerFiles;
import org.lehrcase.desk.home.Passphrase;
import org.lehrcase.desk.recovering.Evidence;
import org.lehrcase.desk.recovering.Recovery;
import org.lehrcase.desk.recovering.RestoredBook;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Rebuilds a lost desk. */
@Command(
    name = "recover",
    description = {
      "Rebuilds a lost desk from two spare-key envelopes, any copy of its editions, and the",
      "licenses and key letters that buyers send back. Asks for the lines of the envelopes."
    },
    mixinStandardHelpOptions = true)
final class RecoverCommand implements Callable<Integer> {
  private static final int MAX_ENVELOPE_BYTES = 4096;

  private final Surroundings surroundings;

  @Spec private CommandSpec spec;
  @Mixin private HomeOptions options;

  @Option(
      names = "--edition",
      paramLabel = "FOLDER",
      description = "A copy of an edition; give every edition that you still have.")
  private List<Path> editions = new ArrayList<>();

  @Option(
      names = "--file",
      paramLabel = "FILE",
      description = "A buyer's license or key letter; give all that you can get.")
  private List<Path> files = new ArrayList<>();

  @Option(
      names = "--envelope",
      paramLabel = "FILE",
      description = "A text file with the four lines of one envelope, instead of typing them.")
  private List<Path> envelopes = new ArrayList<>();

  RecoverCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() throws Exception {
    try (RootSecret root = root();
        SigningKey rootKey = root.signingKey()) {
      Evidence evidence = new Evidence(rootKey.publicKey());
      for (Path edition : editions) {
        evidence.addEdition(edition);
      }
      for (Path file : files) {
        evidence.addFile(file);
      }
      Recovery.Rebuilt rebuilt = Recovery.rebuild(root, evidence, surroundings.random());
      try (DeskKeys keys = rebuilt.keys();
          NewDesk desk =
              NewDesk.rebuild(options.home(), keys, rebuilt.statement(), surroundings.random());
          Passphrase passphrase = options.newPassphrase(surroundings, err())) {
        settle(desk, passphrase, new RestoredBook(keys, evidence));
      }
    }
    return ExitCode.DONE;
  }

  private void settle(NewDesk desk, Passphrase passphrase, RestoredBook restored)
      throws IOException {
    desk.settle(
        passphrase,
        surroundings.cost(),
        surroundings.clock(),
        book -> {
          try {
            restored.write(book);
          } catch (VaultException e) {
            throw new IOException(
                "An edition or a file is damaged: " + e.getMessage() + ". Nothing was made.", e);
          }
          book.events().add("rebuilt", desk.statement().root().octets().hex(), restored.found());
        });
    PrintWriter out = spec.commandLine().getOut();
    out.println("home " + options.home());
    out.println("serial " + desk.statement().terms().serial());
    out.println("words " + String.join(" ", desk.statement().words()));
    out.flush();
    err().println("\nThe desk works again: " + restored.found());
    err()
        .println(
            "Addresses of buyers are in no file; ask each buyer before you answer a card.\n"
                + "If a laptop was lost before, name its place with --replaces. The envelopes"
                + " stay\n"
                + "good; put them back.");
    err().flush();
  }

  private RootSecret root() throws IOException, DeskHomeException.Unusable, RefusedException {
    List<List<String>> lines = new ArrayList<>();
    if (envelopes.isEmpty()) {
      for (int envelope = 1; envelope <= SpareKeys.NEEDED; envelope++) {
        lines.add(typed(envelope));
      }
    }
    for (Path file : envelopes) {
      lines.add(written(file));
    }
    try {
      return SpareKeys.join(lines);
    } catch (UnreadableShare e) {
      throw new RefusedException(Refusal.WRONG_ENTRY, e.getMessage() + " Nothing was made.");
    }
  }

  private List<String> typed(int envelope) throws DeskHomeException.Unusable {
    List<String> lines = new ArrayList<>();
    for (int line = 1; line <= ShareLines.COUNT; line++) {
      char[] typed = surroundings.prompt().ask("Envelope " + envelope + ", line " + line + ": ");
      lines.add(CharBuffer.wrap(typed).toString());
      Arrays.fill(typed, '\0');
    }
    return lines;
  }

  private static List<String> written(Path file) throws IOException {
    byte[] bytes = OwnerFiles.read(file, MAX_ENVELOPE_BYTES);
    return new String(bytes, StandardCharsets.UTF_8)
        .lines()
        .map(String::strip)
        .filter(line -> !line.isEmpty())
        .toList();
  }

  private PrintWriter err() {
    return spec.commandLine().getErr();
  }
}
