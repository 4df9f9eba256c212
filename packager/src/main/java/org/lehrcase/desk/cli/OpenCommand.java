package org.lehrcase.desk.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.lehrcase.bench.home.Browser;
import org.lehrcase.bench.home.EntryFile;
import org.lehrcase.bench.home.Knock;
import org.lehrcase.bench.home.RunningCopy;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.DeskHomeException;
import org.lehrcase.desk.home.OwnerFiles;
import org.lehrcase.desk.home.Passphrase;
import org.lehrcase.desk.web.DeskRooms;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Opens the desk's page; a second start brings the page of the running copy back. */
@Command(
    name = "open",
    description = {
      "Opens the page of this desk in the browser. Runs until Quit on the page, or Ctrl+C.",
      "Without --passphrase-file the page asks for the passphrase."
    },
    mixinStandardHelpOptions = true)
final class OpenCommand implements Callable<Integer> {
  private static final String PAGE = "page";
  private static final long LAST_ANSWER_MILLIS = 300;
  private static final int LAST_SECONDS = 4;

  private final Surroundings surroundings;
  private final CountDownLatch quit = new CountDownLatch(1);
  private final CountDownLatch ended = new CountDownLatch(1);

  @Spec private CommandSpec spec;
  @Mixin private HomeOptions options;

  @Option(
      names = "--port",
      paramLabel = "N",
      defaultValue = "0",
      description = "Port on this computer; any free one if left out.")
  private int port;

  @Option(names = "--no-browser", description = "Prints the one-time address; opens no browser.")
  private boolean noBrowser;

  OpenCommand(Surroundings surroundings) {
    this.surroundings = surroundings;
  }

  @Override
  public Integer call() throws Exception {
    Path page = options.home().resolve(PAGE);
    try (DeskHome home = DeskHome.open(options.home(), surroundings.clock())) {
      OwnerFiles.folder(page);
      return serve(home, page);
    } catch (DeskHomeException.InUse e) {
      return bringBack(page, e);
    }
  }

  private int serve(DeskHome home, Path page) throws Exception {
    Optional<Passphrase> passphrase = options.filedPassphrase();
    try (RunningCopy running = RunningCopy.take(page).orElseThrow(OpenCommand::isStarting);
        DeskRooms rooms = DeskRooms.open(home, passphrase, service())) {
      passphrase.ifPresent(Passphrase::close);
      running.announce(new RunningCopy.Reach(rooms.server().port(), rooms.server().knockWord()));
      Runtime.getRuntime().addShutdownHook(new Thread(this::endInOrder, "desk-quit"));
      show(page, rooms.server().entryAddress());
      quit.await();
      Thread.sleep(LAST_ANSWER_MILLIS); // lets the answer to Quit reach the page
      EntryFile.remove(page);
    } finally {
      ended.countDown();
    }
    return ExitCode.DONE;
  }

  private DeskRooms.Service service() {
    return new DeskRooms.Service(
        port, surroundings.clock(), surroundings.random(), surroundings.cost(), quit::countDown);
  }

  /** Ctrl+C and a log-out close the book and the lock as Quit does. */
  private void endInOrder() {
    quit.countDown();
    try {
      if (!ended.await(LAST_SECONDS, TimeUnit.SECONDS)) {
        err().println("The desk was ended before everything was closed; what was kept is kept.");
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private int bringBack(Path page, DeskHomeException.InUse busy)
      throws IOException, DeskHomeException {
    Optional<String> address = RunningCopy.find(page).flatMap(Knock::at);
    if (address.isEmpty()) {
      throw busy;
    }
    show(page, address.get());
    return ExitCode.DONE;
  }

  private void show(Path page, String address) throws IOException {
    PrintWriter out = spec.commandLine().getOut();
    if (noBrowser) {
      out.println(address);
    } else {
      Path file = EntryFile.write(page, address);
      out.println(
          Browser.open(file)
              ? "The desk is open in your browser. If not, open this file in it: " + file
              : "No browser was found. Open this address in one: " + address);
    }
    out.flush();
  }

  private static DeskHomeException.InUse isStarting() {
    return new DeskHomeException.InUse(
        "The desk is starting already. Wait a few seconds and start it again.");
  }

  private PrintWriter err() {
    return spec.commandLine().getErr();
  }
}
