package org.lehrcase.bench.web;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import org.lehrcase.bench.courses.Courses;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Opens the film of a lesson and its first segment while the page of the lesson is still being
 * drawn, so that the first answer of the film does not wait for it. Only the newest wish counts.
 */
final class FilmAhead {
  private static final Logger LOG = LoggerFactory.getLogger(FilmAhead.class);
  private static final int REST_SECONDS = 10;

  private final Courses courses;
  private final ThreadPoolExecutor one =
      new ThreadPoolExecutor(
          1, 1, REST_SECONDS, TimeUnit.SECONDS, new ArrayBlockingQueue<>(1), FilmAhead::thread);

  FilmAhead(Courses courses) {
    this.courses = courses;
    one.allowCoreThreadTimeOut(true);
    one.setRejectedExecutionHandler(new ThreadPoolExecutor.DiscardOldestPolicy());
  }

  private static Thread thread(Runnable work) {
    Thread thread = new Thread(work, "film-ahead");
    thread.setDaemon(true);
    return thread;
  }

  /** Begins to open a film and returns at once. */
  void open(EditionId edition, AssetId film) {
    one.execute(() -> touch(edition, film));
  }

  /**
   * What is wrong with the film is said when the page asks for it; here it only ends the attempt.
   */
  private void touch(EditionId edition, AssetId film) {
    try {
      int read = courses.file(edition, film).clear().readAt(0, ByteBuffer.allocate(1));
      LOG.debug("opened a film ahead of its page film={} read={}", film, read);
    } catch (Trouble | VaultException | IOException | RuntimeException e) {
      LOG.debug("did not open a film ahead of its page film={}", film, e);
    }
  }
}
