package org.lehrcase.bench.measure;

import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.SplittableRandom;
import java.util.concurrent.locks.LockSupport;

/** One kept connection that jumps about in a file, as somebody does who drags the slider. */
final class SeekClient implements AutoCloseable {
  private static final int RANGE_BYTES = 1 << 20;

  private final Target target;
  private final Socket socket;
  private final InputStream in;
  private final SplittableRandom chance;
  private final byte[] buffer = new byte[256 << 10];

  SeekClient(Target target, long seed) throws IOException {
    this.target = target;
    this.socket = new Socket("127.0.0.1", target.address().getPort());
    socket.setTcpNoDelay(true);
    this.in = socket.getInputStream();
    this.chance = new SplittableRandom(seed);
  }

  /** Jumps somewhere; returns the nanoseconds from asking to the first byte of the film. */
  long seek(long fileBytes) throws IOException {
    return from(chance.nextLong(fileBytes - RANGE_BYTES));
  }

  /** Jumps many times, with a rest between. */
  long[] seeks(int count, long fileBytes, int restMillis) throws IOException {
    long[] nanos = new long[count];
    for (int i = 0; i < count; i++) {
      if (restMillis > 0) {
        LockSupport.parkNanos(restMillis * 1_000_000L);
      }
      nanos[i] = seek(fileBytes);
    }
    return nanos;
  }

  /** Asks for 1 MiB from a position and takes all of it. */
  long from(long position) throws IOException {
    String ask =
        "GET "
            + target.address().getRawPath()
            + " HTTP/1.1\r\n"
            + "Host: "
            + target.address().getAuthority()
            + "\r\n"
            + "Cookie: "
            + target.cookie()
            + "\r\n"
            + "Range: bytes="
            + position
            + "-"
            + (position + RANGE_BYTES - 1)
            + "\r\n\r\n";
    long began = System.nanoTime();
    socket.getOutputStream().write(ask.getBytes(StandardCharsets.ISO_8859_1));
    int got = 0;
    int body = -1;
    while (body <= 0) {
      got += more(got);
      body = got - bodyStart(got);
    }
    final long firstByte = System.nanoTime() - began;
    if (!new String(buffer, 0, 12, StandardCharsets.ISO_8859_1).equals("HTTP/1.1 206")) {
      throw new IOException("not a range: " + new String(buffer, 0, 80, StandardCharsets.UTF_8));
    }
    while (body < RANGE_BYTES) {
      body += more(0);
    }
    return firstByte;
  }

  private int more(int at) throws IOException {
    int read = in.read(buffer, at, buffer.length - at);
    if (read < 0) {
      throw new EOFException("the answer ended early");
    }
    return read;
  }

  /** Returns where the body begins, or more than was read if the head is not whole. */
  private int bodyStart(int got) {
    for (int i = 3; i < got; i++) {
      if (buffer[i] == '\n' && buffer[i - 1] == '\r' && buffer[i - 2] == '\n') {
        return i + 1;
      }
    }
    return got + 1;
  }

  @Override
  public void close() throws IOException {
    socket.close();
  }
}
