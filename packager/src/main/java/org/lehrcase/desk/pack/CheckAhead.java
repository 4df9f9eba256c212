package org.lehrcase.desk.pack;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.nio.file.Path;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import org.lehrcase.desk.author.CourseCheck;
import org.lehrcase.desk.author.CourseReport;

/** The check of a course folder, begun while the desk is still being opened. It needs no key. */
public final class CheckAhead {
  private final FutureTask<CourseReport> check;

  private CheckAhead(FutureTask<CourseReport> check) {
    this.check = check;
  }

  /**
   * Begins the check in a thread of its own, which ends with the program.
   *
   * @param course the folder of one series
   * @return the check on its way
   */
  public static CheckAhead of(Path course) {
    FutureTask<CourseReport> check = new FutureTask<>(() -> CourseCheck.run(course));
    Thread thread = new Thread(check, "check-ahead");
    thread.setDaemon(true);
    thread.start();
    return new CheckAhead(check);
  }

  /** Waits for the report. */
  CourseReport report() throws IOException {
    try {
      return check.get();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new InterruptedIOException("the pack was stopped while the course was checked");
    } catch (ExecutionException e) {
      if (e.getCause() instanceof IOException failed) {
        throw failed;
      }
      throw new IllegalStateException(e.getCause());
    }
  }
}
