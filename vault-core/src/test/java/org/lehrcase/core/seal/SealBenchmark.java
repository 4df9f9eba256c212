package org.lehrcase.core.seal;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.io.PrintStream;
import java.lang.management.ManagementFactory;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToLongFunction;
import javax.crypto.Cipher;
import javax.crypto.spec.GCMParameterSpec;
import javax.crypto.spec.SecretKeySpec;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.keys.PartKey;

/**
 * Measures sealing and opening against the bare cipher over the same bytes, for each segment size;
 * the ratios, not the rates, say something on a shared machine. Reading and writing go through a
 * file, without forcing it to the medium. Run it with the test class path, a folder for the file
 * and a size in MiB.
 */
final class SealBenchmark {
  private static final int ROUNDS = 5;
  private static final String BARE = "bare cipher";

  private final SecureRandom random = new SecureRandom();
  private final PartKey key = PartKey.random(random);
  private final Path file;
  private final byte[] clear;
  private final Map<String, List<Cost>> costs = new LinkedHashMap<>();

  private SealBenchmark(Path folder, int mib) {
    this.file = folder.resolve("benchmark.part");
    this.clear = Samples.clear(mib << 20, 1);
  }

  /** What one run took: on the clock, and of both processors, which other programs disturb less. */
  private record Cost(long wallNanos, long cpuNanos) {}

  /** Something to be timed. */
  private interface Work {
    void run() throws IOException, VaultException, GeneralSecurityException;
  }

  /** Prints one line per segment size and kind of work: the median rate and its ratio. */
  public static void main(String[] arguments) throws Exception {
    var benchmark = new SealBenchmark(Path.of(arguments[0]), Integer.parseInt(arguments[1]));
    CipherWarmup.run();
    for (int log2 = SegmentLayout.MIN_LOG2; log2 <= SegmentLayout.MAX_LOG2; log2++) {
      benchmark.measure(log2);
      benchmark.report(log2, System.out);
    }
  }

  private void measure(int log2) throws Exception {
    costs.clear();
    var header = new PartHeader(PartKind.ASSET, AssetId.random(random), clear.length, log2, 0, 1);
    for (int round = 0; round < ROUNDS; round++) {
      time(BARE, () -> bareCipher(1 << log2));
      time("seal, one worker", () -> seal(1, header));
      time("seal, two workers", () -> seal(2, header));
      DigestList digests;
      try (FileSource source = FileSource.open(file)) {
        digests = DigestList.ofFile(source, log2);
      }
      time(
          "open, tags only",
          () -> readAll(PartReader.openWithoutDigests(FileSource.open(file), key, header)));
      time(
          "open, first touch with digests",
          () -> readAll(PartReader.open(FileSource.open(file), key, header, digests)));
    }
    Files.deleteIfExists(file);
  }

  private void time(String what, Work work) throws Exception {
    long wall = System.nanoTime();
    long cpu = cpuNanos();
    work.run();
    var cost = new Cost(System.nanoTime() - wall, cpuNanos() - cpu);
    costs.computeIfAbsent(what, any -> new ArrayList<>()).add(cost);
  }

  private static long cpuNanos() {
    var system = (OperatingSystemMXBean) ManagementFactory.getOperatingSystemMXBean();
    return system.getProcessCpuTime();
  }

  private void report(int log2, PrintStream out) {
    double bareWall = rate(BARE, Cost::wallNanos);
    double bareCpu = rate(BARE, Cost::cpuNanos);
    for (String what : costs.keySet()) {
      double wall = rate(what, Cost::wallNanos);
      double cpu = rate(what, Cost::cpuNanos);
      out.printf(
          Locale.ROOT,
          "%4d KiB  %-31s %6.0f MB/s %5.2f   %6.0f MB per CPU s %5.2f%n",
          1 << (log2 - 10),
          what,
          wall,
          wall / bareWall,
          cpu,
          cpu / bareCpu);
    }
  }

  /** Megabytes per second of the median round. */
  private double rate(String what, ToLongFunction<Cost> nanos) {
    long[] sorted = costs.get(what).stream().mapToLong(nanos).sorted().toArray();
    return clear.length * 1e3 / sorted[ROUNDS / 2];
  }

  /** Encrypts everything chunk by chunk with the platform's cipher, and does nothing else. */
  private void bareCipher(int chunkBytes) throws GeneralSecurityException {
    byte[] raw = new byte[32];
    random.nextBytes(raw);
    var spec = new SecretKeySpec(raw, "AES");
    Cipher cipher = Cipher.getInstance("AES/GCM/NoPadding", "SunJCE");
    byte[] sealed = new byte[chunkBytes + 16];
    ByteBuffer nonce = ByteBuffer.allocate(12);
    for (int at = 0; at < clear.length; at += chunkBytes) {
      nonce.putInt(0, at);
      cipher.init(Cipher.ENCRYPT_MODE, spec, new GCMParameterSpec(128, nonce.array()));
      cipher.doFinal(clear, at, Math.min(chunkBytes, clear.length - at), sealed, 0);
    }
  }

  private void seal(int workers, PartHeader header) throws IOException {
    Files.deleteIfExists(file);
    try (SealTarget target = SealTarget.newFile(file, header.layout().sealedBytes())) {
      PartStream stream = PartStream.fresh(header, key, random);
      new SealRun(stream, ByteSource.of(clear), target, Progress.NONE).run(workers);
    }
  }

  private static void readAll(PartReader opened) throws IOException, VaultException {
    try (PartReader reader = opened) {
      byte[] buffer = new byte[reader.bufferBytes()];
      long position = 0;
      while (position < reader.sizeBytes()) {
        position += reader.readSegment(position, buffer).remaining();
      }
    }
  }
}
