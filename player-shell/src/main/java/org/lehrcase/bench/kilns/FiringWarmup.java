package org.lehrcase.bench.kilns;

import com.google.gson.JsonObject;
import java.time.Clock;
import java.util.concurrent.atomic.AtomicBoolean;
import org.lehrcase.bench.firing.FieldTrouble;
import org.lehrcase.bench.firing.FiringService;

/**
 * Computes one ordinary firing in the background, once in the life of the program, so that the
 * first answer that somebody waits for does not also have to load the classes.
 */
public final class FiringWarmup {
  private static final AtomicBoolean STARTED = new AtomicBoolean();

  private FiringWarmup() {}

  /** Starts it, unless it was started before. */
  public static void start() {
    if (STARTED.compareAndSet(false, true)) {
      Thread thread = new Thread(FiringWarmup::once, "firing warm-up");
      thread.setDaemon(true);
      thread.start();
    }
  }

  private static void once() {
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
