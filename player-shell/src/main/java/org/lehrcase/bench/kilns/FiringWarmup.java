package org.lehrcase.bench.kilns;

import com.google.gson.JsonObject;
import java.time.Clock;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.locks.LockSupport;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.FiringService;

/**
 * Computes one ordinary firing in the background, once in the life of the program, so that the
 * first answer that somebody waits for does not also have to load the classes.
 */
public final class FiringWarmup {
  private static final AtomicBoolean STARTED = new AtomicBoolean();
  private static final Thread THREAD = new Thread(FiringWarmup::once, "firing warm-up");

  /** So long the first page has the processor for itself. */
  private static final long PATIENCE_NANOS = 4_000_000_000L;

  private FiringWarmup() {}

  /** Starts it in a few seconds, when the first page has been drawn. */
  public static void later() {
    if (STARTED.compareAndSet(false, true)) {
      THREAD.setDaemon(true);
      THREAD.setPriority(Thread.MIN_PRIORITY);
      THREAD.start();
    }
  }

  /** Starts it at once, unless it has run before. */
  public static void start() {
    later();
    LockSupport.unpark(THREAD);
  }

  private static void once() {
    LockSupport.parkNanos(PATIENCE_NANOS);
    var request = new JsonObject();
    request.addProperty("glass", "coe-90");
    request.addProperty("thickness_mm", 18);
    var kiln = new JsonObject();
    kiln.addProperty("lines", 8);
    request.add("kiln", kiln);
    try {
      FiringService.prices(KilnSheet.of(request, Clock.systemUTC()).mine());
    } catch (FieldTrouble e) {
      throw new IllegalStateException("the firing for warming up is wrong", e);
    }
  }
}
