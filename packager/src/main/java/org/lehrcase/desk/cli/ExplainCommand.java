package org.lehrcase.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.message.Armor;
import org.lehrcase.core.slip.HelpSlip;
import org.lehrcase.core.slip.HelpSlipText;
import org.lehrcase.desk.helping.HelpAnswer;
import org.lehrcase.desk.home.OwnerFiles;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Explains a help slip and proposes an answer. */
@Command(
    name = "explain",
    description = "Says what a buyer's help slip tells, with a text to send back.",
    mixinStandardHelpOptions = true)
final class ExplainCommand implements Callable<Integer> {
  @Spec private CommandSpec spec;

  @Parameters(paramLabel = "SLIP", description = "The mail or file with the help slip.")
  private Path file;

  @Override
  public Integer call() throws Exception {
    HelpSlip slip = read();
    HelpAnswer answer = HelpAnswer.to(slip);
    PrintWriter out = spec.commandLine().getOut();
    HelpSlipText.lines(slip).forEach(out::println);
    out.println();
    answer.happened().forEach(line -> out.println("- " + line));
    out.println();
    out.println("To send back:");
    answer.reply().forEach(line -> out.println("  " + line));
    out.flush();
    return ExitCode.DONE;
  }

  private HelpSlip read() throws IOException, VaultException {
    byte[] bytes = OwnerFiles.read(file, Armor.MAX_TEXT_CHARS);
    return HelpSlipText.find(new String(bytes, StandardCharsets.UTF_8))
        .orElseThrow(
            () ->
                new VaultException.Malformed(
                    file + " holds no help slip. Ask the buyer to send its whole text."));
  }
}
