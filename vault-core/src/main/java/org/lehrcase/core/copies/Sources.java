package org.lehrcase.core.copies;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.NoSuchFileException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalLong;
import org.lehrcase.core.VaultException;

/** All places to fetch from, in the order in which they are asked. For one thread. */
final class Sources {
  /** So many failures behind each other, and the places are given up. */
  private static final int MAX_FAILURES = 4;

  private static final String NOT_THERE = "a part is not there";

  private final List<CopySource> sources;
  private int failures;
  private String trouble = "";

  Sources(List<CopySource> sources) {
    this.sources = List.copyOf(sources);
  }

  /** Decides whether bytes are what was signed. */
  @FunctionalInterface
  interface Proof {
    void of(byte[] bytes) throws VaultException, IOException;
  }

  List<CopySource.Candidate> find(String path, long exactBytes) throws IOException {
    return find(path, OptionalLong.of(exactBytes));
  }

  private List<CopySource.Candidate> find(String path, OptionalLong exactBytes) throws IOException {
    List<CopySource.Candidate> found = new ArrayList<>();
    for (CopySource source : sources) {
      try {
        found.addAll(source.find(path, exactBytes));
      } catch (IOException e) {
        failed(e);
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

  private Optional<byte[]> read(List<CopySource.Candidate> found, int maxBytes, Proof proof)
      throws IOException {
    for (CopySource.Candidate candidate : found) {
      try (InputStream in = candidate.from(0)) {
        byte[] bytes = in.readNBytes(maxBytes + 1);
        if (bytes.length > maxBytes) {
          trouble = "a file there is longer than it may be";
          continue;
        }
        proof.of(bytes);
        failures = 0;
        return Optional.of(bytes);
      } catch (VaultException e) {
        trouble =
            candidate.isGuess()
                ? NOT_THERE
                : "other bytes than the teacher signed: " + e.getMessage();
      } catch (NoSuchFileException e) {
        trouble = "not there: " + e.getFile();
      } catch (IOException e) {
        failed(e);
      }
    }
    return Optional.empty();
  }

  /** Takes note of how a part went. */
  void note(SegmentSupply supply, boolean whole) throws IOException {
    if (whole) {
      failures = 0;
    } else if (supply.failure().isPresent()) {
      failed(supply.failure().get());
    } else {
      trouble = supply.lied() ? "other bytes than the teacher signed" : NOT_THERE;
    }
  }

  private void failed(IOException e) throws IOException {
    failures++;
    trouble =
        Optional.ofNullable(e.getMessage()).orElse("a file there ends before its time or fails");
    if (failures >= MAX_FAILURES) {
      throw e;
    }
  }

  /** Returns what went wrong last, in a few words; empty if nothing did. */
  String trouble() {
    return trouble;
  }
}
