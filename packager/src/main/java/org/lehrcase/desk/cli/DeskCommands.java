package org.lehrcase.desk.cli;

import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The command of the desk, with one subcommand for each task. */
@Command(
    name = "lehrcase-desk",
    description = "Checks and packs courses, licenses buyers, answers their laptop cards.",
    mixinStandardHelpOptions = true,
    version = "lehrcase-desk 0.1.0",
    synopsisSubcommandLabel = "COMMAND",
    exitCodeListHeading = "%nExit codes:%n",
    exitCodeList = {
      "0:done",
      "1:refused with a reason; nothing was changed",
      "2:the command line is wrong",
      "3:the course has errors and cannot be packed",
      "4:a file or disk could not be read or written",
      "5:the passphrase is wrong or was not given",
      "6:another desk is at work in the same home",
      "70:the program has a fault"
    })
public final class DeskCommands implements Runnable {
  @Spec private CommandSpec spec;

  private DeskCommands() {}

  /**
   * Puts the commands together.
   *
   * @param surroundings clock, randomness and prompt
   * @return a command line ready to execute
   */
  public static CommandLine of(Surroundings surroundings) {
    return new CommandLine(new DeskCommands())
        .addSubcommand(new OpenCommand(surroundings))
        .addSubcommand(new InitCommand(surroundings))
        .addSubcommand(new RecoverCommand(surroundings))
        .addSubcommand(new CheckCommand())
        .addSubcommand(new PackCommand(surroundings))
        .addSubcommand(new LightFilmsCommand(surroundings))
        .addSubcommand(new CorrectCommand(surroundings))
        .addSubcommand(new LicenseCommand(surroundings))
        .addSubcommand(new AnswerCommand(surroundings))
        .addSubcommand(
            new CommandLine(new PeopleCommand())
                .addSubcommand(new PeopleCommand.Import(surroundings)))
        .addSubcommand(new BookCommand(surroundings))
        .addSubcommand(new KeysCommand(surroundings))
        .addSubcommand(new StickCommand(surroundings))
        .addSubcommand(new BackupCommand(surroundings))
        .addSubcommand(new RestoreCommand(surroundings))
        .addSubcommand(new PassphraseCommand(surroundings))
        .addSubcommand(new UnpackCommand(surroundings))
        .addSubcommand(new CloseCommand(surroundings))
        .addSubcommand(new ExplainCommand())
        .addSubcommand(new DemoCommand(surroundings))
        .setExecutionExceptionHandler(new Failures());
  }

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "Say what to do: one of the commands below.");
  }
}
