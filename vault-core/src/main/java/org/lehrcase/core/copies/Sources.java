package org.lehrcase.core.copies;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.NoSuchFileException;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import org.lehrcase.core.VaultException;

/**
 * All places to fetch from, in the order in which they are asked. A place that fails again and
 * again is asked no more; when all have failed so, fetching ends. For one thread.
 */
final class Sources {
  /** So many failures of one place behind each other, and it is given up. */
  private static final int MAX_FAILURES = 4;

  private static final String NOT_THERE = "a part is not there";

  private final List<CopySource> sources;
  private final Map<CopySource, Integer> failures = new IdentityHashMap<>();
  private String trouble = "";

  Sources(List<CopySource> sources) {
    this.sources = List.copyOf(sources);
  }

  /**
   * What may be a file, and who offers it.
   *
   * @param source the place
   * @param candidate the bytes
   */
  record Offer(CopySource source, CopySource.Candidate candidate) {}

  /** Decides whether bytes are what was signed. */
  @FunctionalInterface
  interface Proof {
    void of(byte[] bytes) throws VaultException, IOException;
  }

  List<Offer> find(String path, long exactBytes) throws IOException {
    return find(path, OptionalLong.of(exactBytes));
  }

  private List<Offer> find(String path, OptionalLong exactBytes) throws IOException {
    List<Offer> found = new ArrayList<>();
    for (CopySource source : sources) {
      if (isGivenUp(source)) {
        continue;
      }
      try {
        source.find(path, exactBytes).forEach(c -> found.add(new Offer(source, c)));
      } catch (IOException e) {
        failed(source, e);
      }
    }
    return found;
  }

  /** Reads a small file of known length from the first place where it proves right. */
  Optional<byte[]> read(String path, int exactBytes, Proof proof) throws IOException {
    return read(find(path, OptionalLong.of(exactBytes)), exactBytes, proof);
  }

  /** Reads a small file of unknown length from the first place where it proves right. */
  Optional<byte[]> readUpTo(String path, int maxBytes, Proof proof) throws IOException {
    return read(find(path, OptionalLong.empty()), maxBytes, proof);
  }

  private Optional<byte[]> read(List<Offer> found, int maxBytes, Proof proof) throws IOException {
    for (Offer offer : found) {
      try (InputStream in = offer.candidate().from(0)) {
        byte[] bytes = in.readNBytes(maxBytes + 1);
        if (bytes.length > maxBytes) {
          trouble = "a file there is longer than it may be";
          continue;
        }
        proof.of(bytes);
        failures.remove(offer.source());
        return Optional.of(bytes);
      } catch (VaultException e) {
        trouble =
            offer.candidate().isGuess()
                ? NOT_THERE
                : "other bytes than the teacher signed: " + e.getMessage();
      } catch (NoSuchFileException e) {
        trouble = "not there: " + e.getFile();
      } catch (IOException e) {
        failed(offer.source(), e);
      }
    }
    return Optional.empty();
  }

  /** Takes note of how a part went. */
  void note(SegmentSupply supply, boolean whole) throws IOException {
    supply.right().forEach(failures::remove);
    if (!whole && supply.failures().isEmpty()) {
      trouble = supply.lied() ? "other bytes than the teacher signed" : NOT_THERE;
    }
    for (var failed : supply.failures().entrySet()) {
      if (!supply.right().contains(failed.getKey())) {
        failed(failed.getKey(), failed.getValue());
      }
    }
  }

  private void failed(CopySource source, IOException e) throws IOException {
    failures.merge(source, 1, Integer::sum);
    trouble =
        Optional.ofNullable(e.getMessage()).orElse("a file there ends before its time or fails");
    if (sources.stream().allMatch(this::isGivenUp)) {
      throw e;
    }
  }

  private boolean isGivenUp(CopySource source) {
    return failures.getOrDefault(source, 0) >= MAX_FAILURES;
  }

  /** Returns what went wrong last, in a few words; empty if nothing did. */
  String trouble() {
    return trouble;
  }
}
