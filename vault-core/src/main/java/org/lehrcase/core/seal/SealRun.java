package org.lehrcase.core.seal;

import java.io.IOException;
import java.io.InterruptedIOException;
import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.Collections;
import java.util.concurrent.Callable;
import java.util.concurrent.CancellationException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicInteger;
import org.lehrcase.core.primitive.Sha256;

/**
 * One sealing on its way. Each worker claims the next group of segments, reads, seals, hashes and
 * writes it at its computed place; there is no queue and no order, and memory is two groups per
 * worker whatever the size of the part.
 */
final class SealRun {
  /** File bytes that a worker takes at once, 1 MiB: one or more whole segments. */
  static final int GROUP_BYTES = 1 << SegmentLayout.MAX_LOG2;

  private final PartStream stream;
  private final SegmentLayout layout;
  private final ByteSource clear;
  private final SealTarget target;
  private final Progress progress;
  private final byte[] digests;
  private final int segmentsPerGroup;
  private final AtomicInteger nextGroup = new AtomicInteger();
  private volatile boolean stopped;
  private long doneBytes;

  SealRun(PartStream stream, ByteSource clear, SealTarget target, Progress progress) {
    this.stream = stream;
    this.layout = stream.layout();
    this.clear = clear;
    this.target = target;
    this.progress = progress;
    this.digests = new byte[layout.segments() * DigestList.DIGEST_BYTES];
    this.segmentsPerGroup = GROUP_BYTES >> layout.log2SegmentBytes();
  }

  /**
   * Seals the whole part and returns when it is written, but not yet forced to the medium.
   *
   * @throws CancellationException if the progress callback said so
   * @throws IOException if reading or writing failed; the first worker that failed tells why
   */
  DigestList run(int workers) throws IOException {
    int groups = (layout.segments() + segmentsPerGroup - 1) / segmentsPerGroup;
    if (groups == 1 || workers == 1) {
      work();
    } else {
      runTogether(Math.min(workers, groups));
    }
    return DigestList.of(layout, digests);
  }

  private void runTogether(int workers) throws IOException {
    ExecutorService pool =
        Executors.newFixedThreadPool(
            workers,
            task -> {
              Thread thread = new Thread(task, "sealing");
              thread.setDaemon(true);
              return thread;
            });
    try {
      Callable<Boolean> worker = this::work;
      for (Future<Boolean> finished : pool.invokeAll(Collections.nCopies(workers, worker))) {
        finished.get();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new InterruptedIOException("sealing was interrupted");
    } catch (ExecutionException e) {
      throw unwrapped(e);
    } finally {
      stopped = true;
      pool.shutdownNow();
    }
  }

  /** Returns what a worker threw, as it was thrown there. */
  private static IOException unwrapped(ExecutionException failure) {
    Throwable cause = failure.getCause();
    if (cause instanceof RuntimeException unchecked) {
      throw unchecked;
    }
    if (cause instanceof Error error) {
      throw error;
    }
    return cause instanceof IOException io ? io : new IOException(failure);
  }

  /** Claims groups until none is left or somebody stopped the run. */
  private boolean work() throws IOException {
    int room = (int) Math.min(GROUP_BYTES, layout.sealedBytes());
    byte[] clearGroup = new byte[room];
    byte[] sealedGroup = new byte[room];
    SegmentCipher cipher = stream.cipher();
    boolean good = false;
    try {
      int first = claim();
      while (first < layout.segments() && !stopped) {
        sealGroup(first, cipher, clearGroup, sealedGroup);
        first = claim();
      }
      good = true;
    } finally {
      if (!good) {
        stopped = true;
      }
      Arrays.fill(clearGroup, (byte) 0);
    }
    return good;
  }

  private int claim() {
    return nextGroup.getAndIncrement() * segmentsPerGroup;
  }

  private void sealGroup(int first, SegmentCipher cipher, byte[] clearGroup, byte[] sealedGroup)
      throws IOException {
    int end = Math.min(first + segmentsPerGroup, layout.segments());
    long clearFrom = layout.clearStart(first);
    int clearBytes = (int) (layout.clearStart(end - 1) + layout.clearSize(end - 1) - clearFrom);
    clear.readExactly(clearFrom, ByteBuffer.wrap(clearGroup, 0, clearBytes));
    MessageDigest sha256 = Sha256.start();
    int sealedAt = 0;
    for (int segment = first; segment < end; segment++) {
      int clearAt = (int) (layout.clearStart(segment) - clearFrom);
      cipher.seal(segment, clearGroup, clearAt, sealedGroup, sealedAt);
      sha256.update(sealedGroup, sealedAt, layout.sealedSize(segment));
      byte[] digest = sha256.digest();
      System.arraycopy(
          digest, 0, digests, segment * DigestList.DIGEST_BYTES, DigestList.DIGEST_BYTES);
      sealedAt += layout.sealedSize(segment);
    }
    target.writeAt(layout.sealedStart(first), ByteBuffer.wrap(sealedGroup, 0, sealedAt));
    advance(clearBytes);
  }

  private synchronized void advance(int clearBytes) {
    doneBytes += clearBytes;
    if (!stopped && !progress.goOn(doneBytes)) {
      throw new CancellationException("sealing was stopped");
    }
  }
}
