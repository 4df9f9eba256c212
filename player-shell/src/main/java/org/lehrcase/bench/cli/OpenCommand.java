package org.lehrcase.bench.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.security.SecureRandom;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.lehrcase.bench.home.Bench;
import org.lehrcase.bench.home.Browser;
import org.lehrcase.bench.home.DataPlace;
import org.lehrcase.bench.home.EntryFile;
import org.lehrcase.bench.home.Knock;
import org.lehrcase.bench.home.RunningCopy;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.bench.web.BenchRooms;
import org.lehrcase.core.seal.CipherWarmup;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Opens the page; a second start brings the page of the running copy back. */
@Command(
    name = "open",
    description = "Opens your courses in the browser. Runs until Quit on the page, or Ctrl+C.",
    mixinStandardHelpOptions = true)
final class OpenCommand implements Callable<Integer> {
  @Mixin private Options options = new Options();
  @CommandLine.Spec private CommandLine.Model.CommandSpec spec;

  /** What can be chosen. */
  static final class Options {
    @Mixin private HomeOption home = new HomeOption();

    @Option(
        names = "--port",
        paramLabel = "N",
        defaultValue = "0",
        description = "Port on this machine; any free one if left out.")
    private int port;

    @Option(names = "--no-browser", description = "Print the one-time address; open no browser.")
    private boolean noBrowser;
  }

  @Override
  public Integer call() throws Exception {
    return new Run(options, spec.commandLine().getOut()).call();
  }

  /** One run of the command. */
  static final class Run {
    private static final long LAST_ANSWER_MILLIS = 300;
    private static final int LAST_SECONDS = 4;

    private final Options options;
    private final PrintWriter out;
    private final CountDownLatch quit = new CountDownLatch(1);
    private final CountDownLatch ended = new CountDownLatch(1);

    Run(Options options, PrintWriter out) {
      this.options = options;
      this.out = out;
    }

    Integer call() throws Trouble, IOException, InterruptedException {
      DataPlace place = options.home.place();
      Optional<RunningCopy> hold = RunningCopy.take(place.home());
      if (hold.isEmpty()) {
        return bringBack(place);
      }
      try (RunningCopy running = hold.get();
          Bench bench = options.home.open(place);
          BenchRooms rooms = BenchRooms.open(bench, service(), new SecureRandom())) {
        running.announce(new RunningCopy.Reach(rooms.server().port(), rooms.server().knockWord()));
        Runtime.getRuntime().addShutdownHook(new Thread(this::endInOrder, "bench-quit"));
        show(place, rooms.server().entryAddress());
        CipherWarmup.start(); // after the page is on its way, before the first film
        quit.await();
        Thread.sleep(LAST_ANSWER_MILLIS); // lets the answer to Quit reach the page
        EntryFile.remove(place.home());
      } finally {
        ended.countDown();
      }
      return BenchCommand.DONE;
    }

    /** Ctrl+C and a log-out close the database and the lock as Quit does. */
    private void endInOrder() {
      quit.countDown();
      try {
        if (!ended.await(LAST_SECONDS, TimeUnit.SECONDS)) {
          out.println("Lehrcase was ended before everything was closed; what was kept is kept.");
        }
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
    }

    private BenchRooms.Service service() {
      return new BenchRooms.Service(options.port, BenchCommand.Version.text(), quit::countDown);
    }

    private Integer bringBack(DataPlace place) throws Trouble, IOException {
      RunningCopy.Reach reach = RunningCopy.find(place.home()).orElseThrow(OpenCommand::isStarting);
      show(place, Knock.at(reach).orElseThrow(OpenCommand::isStarting));
      return BenchCommand.DONE;
    }

    private void show(DataPlace place, String address) throws IOException {
      if (options.noBrowser) {
        out.println(address);
        out.flush();
        return;
      }
      var file = EntryFile.write(place.home(), address);
      if (!Browser.open(file)) {
        out.println("No browser was found. Open this address in one: " + address);
      } else {
        out.println("Lehrcase is open in your browser. If not, open this file in it: " + file);
      }
      out.flush();
    }
  }

  private static Trouble isStarting() {
    return new Trouble(
        TroubleCode.ALREADY_RUNNING,
        "Lehrcase is running already, but does not answer.",
        "Wait a few seconds and start it again.");
  }
}
