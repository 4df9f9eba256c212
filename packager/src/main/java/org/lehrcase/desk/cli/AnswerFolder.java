package org.lehrcase.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.lehrcase.desk.answering.Answering;
import org.lehrcase.desk.answering.CodePhoto;
import org.lehrcase.desk.answering.Inbox;
import org.lehrcase.desk.answering.Mail;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.home.OwnerFiles;
import picocli.CommandLine.Model.CommandSpec;

/** Answers a folder of mails, so that a rule of a mail program can work while nobody is there. */
final class AnswerFolder {
  private final CommandSpec spec;
  private final DeskHome desk;
  private final Inbox inbox;
  private int letters;
  private int waiting;

  AnswerFolder(Surroundings surroundings, CommandSpec spec, DeskHome desk, DeskKeys keys) {
    this.spec = spec;
    this.desk = desk;
    this.inbox = new Inbox(desk.book(), new Answering(desk.book(), keys, surroundings.random()));
  }

  /** One file that cannot be read, or holds nothing, holds up no other. */
  int run(Path in, Path out) throws IOException {
    OwnerFiles.folder(out);
    List<Path> files = new ArrayList<>();
    try (DirectoryStream<Path> all = Files.newDirectoryStream(in)) {
      all.forEach(files::add);
    }
    files.sort(null);
    PrintWriter err = spec.commandLine().getErr();
    for (Path file : files) {
      if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
        continue;
      }
      if (Files.size(file) > CodePhoto.MAX_BYTES) {
        err.println(
            "note: "
                + file.getFileName()
                + " is too large for a mail or a photo; it was left alone.");
        continue;
      }
      take(file, out);
    }
    PrintWriter said = spec.commandLine().getOut();
    said.println("letters " + letters);
    said.println("waiting " + waiting);
    said.flush();
    err.flush();
    return ExitCode.DONE;
  }

  private void take(Path file, Path out) throws IOException {
    byte[] bytes = OwnerFiles.read(file, CodePhoto.MAX_BYTES);
    String name = String.valueOf(file.getFileName());
    PrintWriter err = spec.commandLine().getErr();
    for (Inbox.Result result : inbox.take(bytes)) {
      if (result.answer().isPresent() && result.owner().isPresent()) {
        Mail mail =
            Mail.letter(
                result.owner().get(),
                result.answer().get().place().letter(),
                desk.statement().terms().name());
        Path letter = out.resolve("letter " + result.id() + ".txt");
        OwnerFiles.write(letter, mail.file().getBytes(StandardCharsets.UTF_8));
        letters++;
        spec.commandLine().getOut().println("letter " + letter + " to " + mail.to());
      } else {
        boolean settled =
            result.kind() == Inbox.Kind.NOTHING || result.kind() == Inbox.Kind.RETURNED;
        waiting += settled ? 0 : 1;
        err.println("note: " + name + ": " + result.reason());
      }
    }
  }
}
