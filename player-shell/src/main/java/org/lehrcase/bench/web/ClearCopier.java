package org.lehrcase.bench.web;

import java.io.IOException;
import java.nio.ByteBuffer;
import org.eclipse.jetty.io.Content;
import org.eclipse.jetty.util.Callback;
import org.eclipse.jetty.util.IteratingCallback;
import org.lehrcase.bench.courses.CourseFile;
import org.lehrcase.core.VaultException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Sends a range of clear bytes, one opened segment at a time, without holding a thread while the
 * client is slow. A segment that does not check out ends the answer short of its length.
 */
final class ClearCopier extends IteratingCallback {
  private static final Logger LOG = LoggerFactory.getLogger(ClearCopier.class);

  /** What goes out first, so that a player begins to read while the rest is still being copied. */
  private static final int FIRST_BYTES = 8 << 10;

  private final CourseFile file;
  private final Content.Sink sink;
  private final SegmentBuffers buffers;
  private final Callback done;
  private final byte[] buffer;
  private final long end;
  private long position;
  private boolean begun;

  /** Opened and checked, but not sent yet. */
  private ByteBuffer ready = ByteBuffer.allocate(0);

  ClearCopier(
      CourseFile file,
      RangeChoice.Span span,
      SegmentBuffers buffers,
      Content.Sink sink,
      Callback done) {
    this.file = file;
    this.sink = sink;
    this.buffers = buffers;
    this.done = done;
    this.position = span.from();
    this.end = span.to();
    this.buffer = buffers.take(file.clear().bufferBytes());
  }

  /** Opens the first segment, so that a failure can still be answered in words. */
  void openFirst() throws IOException, VaultException {
    try {
      ready = open();
    } catch (IOException | VaultException e) {
      buffers.giveBack(buffer);
      throw e;
    }
  }

  private ByteBuffer open() throws IOException, VaultException {
    long began = System.nanoTime();
    try {
      ByteBuffer clear = file.clear().readSegment(position, buffer);
      clear.limit(clear.position() + (int) Math.min(clear.remaining(), end - position));
      return clear;
    } catch (VaultException.Tampered | VaultException.Truncated e) {
      LOG.warn("ended an answer at a damaged segment position={}", position);
      file.damageNote().accept(position);
      throw e;
    } finally {
      file.pace().took(System.nanoTime() - began);
    }
  }

  @Override
  protected Action process() throws IOException, VaultException {
    if (position >= end) {
      return Action.SUCCEEDED;
    }
    if (!ready.hasRemaining()) {
      ready = open();
    }
    ByteBuffer now = begun ? ready.slice() : ready.slice().limit(first());
    begun = true;
    ready.position(ready.position() + now.remaining());
    position += now.remaining();
    sink.write(position >= end, now, this);
    return Action.SCHEDULED;
  }

  private int first() {
    return Math.min(ready.remaining(), FIRST_BYTES);
  }

  @Override
  protected void onCompleteSuccess() {
    buffers.giveBack(buffer);
    done.succeeded();
  }

  @Override
  protected void onCompleteFailure(Throwable cause) {
    buffers.giveBack(buffer);
    done.failed(cause);
  }

  @Override
  public InvocationType getInvocationType() {
    return file.pace().isSlow() ? InvocationType.BLOCKING : InvocationType.NON_BLOCKING;
  }
}
