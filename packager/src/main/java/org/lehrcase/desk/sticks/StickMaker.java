package org.lehrcase.desk.sticks;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;
import org.lehrcase.desk.pack.PackListener;
import org.lehrcase.desk.sticks.StickException.Reason;

/** Makes several sticks at once; one that fails does not hold up the others. */
public final class StickMaker {
  private static final int AT_ONCE = 8;

  private final StickDisk disk;
  private final Function<Path, PackListener> listeners;

  /**
   * Prepares to make sticks.
   *
   * @param disk what sticks can do
   * @param listeners gives for each stick who is told how it goes, on a thread of its own
   */
  public StickMaker(StickDisk disk, Function<Path, PackListener> listeners) {
    this.disk = disk;
    this.listeners = listeners;
  }

  /**
   * Makes sticks.
   *
   * @param orders one for each stick
   * @return what came of each, in the same order
   * @throws IOException if the waiting was interrupted
   */
  List<StickResult> make(List<StickOrder> orders) throws IOException {
    ExecutorService workers =
        Executors.newFixedThreadPool(Math.max(1, Math.min(AT_ONCE, orders.size())));
    try {
      List<Future<StickResult>> running = new ArrayList<>();
      for (StickOrder order : orders) {
        running.add(workers.submit(() -> one(order)));
      }
      List<StickResult> results = new ArrayList<>();
      for (Future<StickResult> each : running) {
        results.add(each.get());
      }
      return results;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IOException("The making of sticks was interrupted; start it again.", e);
    } catch (ExecutionException e) {
      throw new IllegalStateException("a stick ended in a fault of the program", e.getCause());
    } finally {
      workers.shutdownNow();
    }
  }

  private StickResult one(StickOrder order) {
    try {
      StickNames.check(order.files());
      return new StickRun(disk, order, listeners.apply(order.stick())).make();
    } catch (StickException e) {
      return failed(order, e);
    } catch (IOException e) {
      return failed(order, trouble(order.stick(), e));
    }
  }

  private static StickResult failed(StickOrder order, StickException why) {
    return new StickResult(
        order.stick(), order.recipient(), order.bytes(), 0, false, List.of(), Optional.of(why));
  }

  private static StickException trouble(Path stick, IOException e) {
    String why = e instanceof FileSystemException f ? String.valueOf(f.getReason()) : "";
    String words = (why + " " + e.getMessage()).toLowerCase(Locale.ROOT);
    String safe = " Nothing unfinished stands under its name; ";
    if (words.contains("no space") || words.contains("not enough space")) {
      return new StickException(
          Reason.FULL, "it is full." + safe + "clear it or take another, and start again.");
    }
    if (words.contains("read-only") || e instanceof java.nio.file.AccessDeniedException) {
      return new StickException(
          Reason.READ_ONLY,
          "it may not be written; some sticks have a small switch." + safe + "start again.");
    }
    return new StickException(
        Reason.GONE,
        (StickGround.isStick(stick) ? "it cannot be used any more" : "it was pulled")
            + " ("
            + e.getMessage()
            + ")."
            + safe
            + "put it in again and start again: only what is missing is written.");
  }
}
