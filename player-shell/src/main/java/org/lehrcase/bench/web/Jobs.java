package org.lehrcase.bench.web;

import com.google.gson.JsonElement;
import com.google.gson.JsonNull;
import com.google.gson.JsonObject;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
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
public final class Jobs implements AutoCloseable {
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

  /** How far a job has come, and what it has to say on its way. */
  public interface Report extends Progress {
    /**
     * Corrects how much there is to do.
     *
     * @param bytes the total
     */
    void total(long bytes);

    /**
     * Says a sentence to the person who waits.
     *
     * @param sentence only the newest few are kept
     */
    void say(String sentence);

    /**
     * Says whether the person wants it to go on.
     *
     * @return false once it was stopped
     */
    boolean wanted();
  }

  /** What a job does. */
  @FunctionalInterface
  public interface Work {
    /**
     * Does it.
     *
     * @param progress told how it goes
     * @return what came out
     * @throws CancellationException if the progress said to stop
     * @throws Trouble what the person has to know
     * @throws VaultException if something does not verify
     * @throws IOException if a file cannot be used
     */
    Outcome run(Report progress) throws Trouble, VaultException, IOException;
  }

  /**
   * What came out.
   *
   * @param message one sentence
   * @param details for the page
   */
  public record Outcome(String message, JsonElement details) {}

  private enum State {
    RUNNING,
    DONE,
    FAILED,
    STOPPED
  }

  private static final class Job implements Report {
    private final Deque<String> said = new ArrayDeque<>();
    private volatile long totalBytes;
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

    @Override
    public void total(long bytes) {
      totalBytes = bytes;
    }

    @Override
    public void say(String sentence) {
      synchronized (said) {
        said.addLast(sentence);
        if (said.size() > MAX_KEPT) {
          said.removeFirst();
        }
      }
    }

    @Override
    public boolean wanted() {
      return !stop;
    }

    JsonObject answer() {
      JsonObject answer = new JsonObject();
      answer.addProperty("state", state.name().toLowerCase(Locale.ROOT));
      answer.addProperty("doneBytes", doneBytes);
      answer.addProperty("totalBytes", totalBytes);
      synchronized (said) {
        answer.add("said", Json.tree(List.copyOf(said)));
      }
      answer.addProperty("message", outcome.message());
      answer.add("result", outcome.details());
      return answer;
    }
  }

  /**
   * Starts work.
   *
   * @param totalBytes how much there is to do
   * @param work what to do
   * @return its id
   */
  public synchronized String start(long totalBytes, Work work) {
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

  /**
   * Says how a job stands.
   *
   * @param id its id
   * @return state, progress and outcome
   * @throws Trouble if it is not known
   */
  public JsonElement answer(String id) throws Trouble {
    return find(id).answer();
  }

  /**
   * Asks a job to stop.
   *
   * @param id its id
   * @return how it stands
   * @throws Trouble if it is not known
   */
  public JsonElement stop(String id) throws Trouble {
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
