package org.lehrcase.bench.web;

import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import org.lehrcase.bench.trouble.Trouble;
import org.lehrcase.bench.trouble.TroubleCode;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.seal.Progress;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Long work in the background, one after the other, with progress; each can be stopped. */
final class Jobs implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Jobs.class);
  private static final int MAX_KEPT = 20;

  private final ExecutorService worker =
      Executors.newSingleThreadExecutor(
          work -> {
            Thread thread = new Thread(work, "bench-job");
            thread.setDaemon(true);
            return thread;
          });
  private final Map<String, Job> jobs = new LinkedHashMap<>();
  private int count;

  /** What a job does. */
  @FunctionalInterface
  interface Work {
    /**
     * Does it.
     *
     * @throws CancellationException if the progress said to stop
     */
    Outcome run(Progress progress) throws Trouble, VaultException, IOException;
  }

  /** What came out: one sentence and the details. */
  record Outcome(String message, JsonElement details) {}

  private enum State {
    RUNNING,
    DONE,
    FAILED,
    STOPPED
  }

  private static final class Job implements Progress {
    private final long totalBytes;
    private volatile long doneBytes;
    private volatile boolean stop;
    private volatile State state = State.RUNNING;
    private volatile Outcome outcome = new Outcome("", JsonNull.INSTANCE);

    Job(long totalBytes) {
      this.totalBytes = totalBytes;
    }

    @Override
    public boolean goOn(long done) {
      doneBytes = done;
      return !stop;
    }

    JsonObject answer() {
      JsonObject answer = new JsonObject();
      answer.addProperty("state", state.name().toLowerCase(Locale.ROOT));
      answer.addProperty("doneBytes", doneBytes);
      answer.addProperty("totalBytes", totalBytes);
      answer.addProperty("message", outcome.message());
      answer.add("result", outcome.details());
      return answer;
    }
  }

  /** Starts work and returns its id. */
  synchronized String start(long totalBytes, Work work) {
    count++;
    String id = "j" + count;
    Job job = new Job(totalBytes);
    jobs.put(id, job);
    if (jobs.size() > MAX_KEPT) {
      jobs.remove(jobs.keySet().iterator().next());
    }
    worker.execute(() -> run(job, work));
    return id;
  }

  private static void run(Job job, Work work) {
    try {
      job.outcome = work.run(job);
      job.state = State.DONE;
    } catch (CancellationException e) {
      job.outcome = new Outcome("Stopped.", JsonNull.INSTANCE);
      job.state = State.STOPPED;
    } catch (Trouble e) {
      fail(job, e);
    } catch (VaultException e) {
      fail(job, Trouble.of(e));
    } catch (IOException e) {
      fail(job, Trouble.of(e));
    } catch (RuntimeException e) {
      LOG.error("a background job failed", e);
      fail(job, new Trouble(TroubleCode.INTERNAL, "Something went wrong.", "Try again."));
    }
  }

  private static void fail(Job job, Trouble trouble) {
    job.outcome = new Outcome(trouble.getMessage() + " " + trouble.next(), Replies.shape(trouble));
    job.state = State.FAILED;
  }

  JsonElement answer(String id) throws Trouble {
    return find(id).answer();
  }

  JsonElement stop(String id) throws Trouble {
    Job job = find(id);
    job.stop = true;
    return job.answer();
  }

  private synchronized Job find(String id) throws Trouble {
    return Optional.ofNullable(jobs.get(id))
        .orElseThrow(
            () ->
                new Trouble(
                    TroubleCode.NOT_FOUND, "This work is not known.", "Start it once more."));
  }

  @Override
  public void close() {
    worker.shutdownNow();
  }
}
