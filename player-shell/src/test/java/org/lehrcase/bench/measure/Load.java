package org.lehrcase.bench.measure;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Asks servers for much, with clients that cost little: curl for a whole file, wrk for ranges. */
final class Load {
  private static final int RANGE_BYTES = 1 << 20;
  private static final String SCRIPT =
      """
      local counter = 0
      function setup(thread) counter = counter + 1; thread:set("number", counter) end
      function init(args) math.randomseed(%d * 8 + number) end
      function request()
        local from = math.random(0, %d)
        wrk.headers["Range"] = string.format("bytes=%%d-%%d", from, from + %d)
        return wrk.format("GET", "%s")
      end
      function done(summary, latency, requests)
        local e = summary.errors
        io.write(string.format("RESULT %%d %%d %%d\\n", summary.bytes, summary.duration,
          e.connect + e.read + e.write + e.status + e.timeout))
      end
      """;

  private final Path work;
  private final long fileBytes;
  private int seed;

  Load(Path work, long fileBytes) {
    this.work = work;
    this.fileBytes = fileBytes;
  }

  /**
   * What came over the wire.
   *
   * @param bytes how many bytes
   * @param seconds in how long
   */
  record Flow(double bytes, double seconds) {
    double megabytesPerSecond() {
      return bytes / 1e6 / seconds;
    }
  }

  /** Gets the whole file over one connection. */
  Flow whole(Target target) throws IOException, InterruptedException {
    String format = "%{http_code} %{size_download} %{time_total}";
    String said =
        ChildProcess.run(
            List.of(
                "curl",
                "-s",
                "-k",
                "-o",
                "/dev/null",
                "-w",
                format,
                "-b",
                target.cookie(),
                target.address().toString()));
    String[] words = said.strip().split(" ");
    if (!words[0].equals("200") || Long.parseLong(words[1]) != fileBytes) {
      throw new IOException(target.address() + " answered " + said);
    }
    return new Flow(fileBytes, Double.parseDouble(words[2]));
  }

  /** Gets ranges of 1 MiB from anywhere in the file. */
  Flow ranges(Target target, int connections, int seconds)
      throws IOException, InterruptedException {
    Path script = work.resolve("ranges.lua");
    long last = fileBytes - RANGE_BYTES;
    Files.writeString(
        script, SCRIPT.formatted(++seed, last, RANGE_BYTES - 1, target.address().getRawPath()));
    String said =
        ChildProcess.run(
            List.of(
                "wrk",
                "-t" + Math.min(2, connections),
                "-c" + connections,
                "-d" + seconds,
                "-H",
                "Cookie: " + target.cookie(),
                "-s",
                script.toString(),
                target.address().toString()));
    String[] result = said.substring(said.indexOf("RESULT ")).strip().split("\\s+");
    if (!result[3].equals("0")) {
      throw new IOException(target.address() + " answered with failures: " + said);
    }
    return new Flow(Double.parseDouble(result[1]), Double.parseDouble(result[2]) / 1e6);
  }
}
