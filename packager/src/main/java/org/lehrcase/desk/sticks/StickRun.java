package org.lehrcase.desk.sticks;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.ReadableByteChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.file.Medium;
import org.lehrcase.core.file.WholeFiles;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.Sha256;
import org.lehrcase.desk.pack.PackListener;
import org.lehrcase.desk.pack.Sizes;
import org.lehrcase.desk.sticks.StickException.Reason;

/**
 * Makes one stick: looks what is there, writes what is missing under unfinished names, reads
 * everything back when the last byte is written, and only then gives the files their names. A stick
 * that is smaller than it says has by then lost what it was given first.
 */
final class StickRun {
  private final StickDisk disk;
  private final StickOrder order;
  private final PackListener listener;
  private final Set<StickFile> kept = new LinkedHashSet<>();
  private final List<StickFile> waiting = new ArrayList<>();
  private final List<StickFile> missing = new ArrayList<>();
  private final Sums sums = new Sums();
  private boolean pastTheCache = true;
  private long done;
  private long total;

  StickRun(StickDisk disk, StickOrder order, PackListener listener) {
    this.disk = disk;
    this.order = order;
    this.listener = listener;
  }

  StickResult make() throws StickException, IOException {
    StickGround ground = new StickGround(order);
    ground.requireFree();
    look();
    requireRoom();
    for (StickFile file : missing) {
      write(file);
    }
    List<StickFile> fresh = order.files().stream().filter(f -> !kept.contains(f)).toList();
    if (!fresh.isEmpty()) {
      readBack();
      settle(fresh);
    }
    List<String> notes = new ArrayList<>();
    for (String name : ground.stalePapers()) {
      disk.medium().delete(order.stick().resolve(name));
      notes.add(name + " of whoever had this stick before was removed");
    }
    ground.otherEditions().forEach(name -> notes.add(name + " was on it and was left there"));
    long written = fresh.stream().mapToLong(StickFile::bytes).sum();
    return new StickResult(
        order.stick(),
        order.recipient(),
        order.bytes(),
        written,
        pastTheCache,
        notes,
        Optional.empty());
  }

  /** Reads what has a name of ours already; what is not as it should be is written anew. */
  private void look() throws IOException {
    for (StickFile file : order.files()) {
      if (matches(place(file), file)) {
        kept.add(file);
      } else if (matches(unfinished(file), file)) {
        waiting.add(file);
      } else {
        if (FoundFile.exists(unfinished(file))) {
          disk.medium().delete(unfinished(file));
        }
        missing.add(file);
      }
    }
  }

  private boolean matches(Path at, StickFile file) throws IOException {
    if (!Sums.isFile(at) || Files.size(at) != file.bytes()) {
      return false;
    }
    try {
      Sums.Sum sum = sums.ofStick(disk, at);
      pastTheCache = pastTheCache && sum.pastTheCache();
      return sum.is(file);
    } catch (IOException e) {
      return false; // a place that cannot be read: written anew elsewhere on the stick, and read
    }
  }

  private void requireRoom() throws IOException, StickException {
    long block = disk.blockBytes(order.stick());
    long need = missing.stream().mapToLong(f -> (f.bytes() / block + 1) * block).sum();
    long free = disk.freeBytes(order.stick());
    long bytes = missing.stream().mapToLong(StickFile::bytes).sum();
    total = missing.isEmpty() && waiting.isEmpty() ? 0 : bytes + order.bytes();
    listener.say(
        order.recipient().words()
            + ": "
            + Sizes.words(order.bytes())
            + ", of which "
            + Sizes.words(bytes)
            + " are to be written; "
            + Sizes.words(free)
            + " are free");
    if (need > free) {
      throw new StickException(
          Reason.FULL,
          "there is room for "
              + Sizes.words(free)
              + ", and "
              + Sizes.words(need)
              + " are needed. Nothing was written; take a larger stick or clear this one.");
    }
  }

  private void write(StickFile file) throws IOException, StickException {
    folders(file);
    MessageDigest digest = Sha256.start();
    ByteBuffer room = sums.room();
    try (ReadableByteChannel in = file.origin().open();
        Medium.Sink sink = disk.medium().create(unfinished(file))) {
      while (in.read(sums.room()) >= 0) {
        digest.update(room.flip());
        advance(room.rewind().remaining());
        sink.write(room);
      }
      sink.force();
    }
    if (!Octets.of(digest.digest()).equals(file.sum())) {
      throw new StickException(
          Reason.SOURCE,
          file.place()
              + " was changed on this computer meanwhile. The stick has nothing unfinished"
              + " under its name; start again.");
    }
  }

  private void folders(StickFile file) throws IOException {
    Path folder = order.stick();
    String[] names = file.place().split("/", -1);
    for (int i = 0; i < names.length - 1; i++) {
      folder = new WholeFiles(disk.medium()).folder(folder, names[i]);
    }
  }

  /** Compares all of it, also what was whole before: later bytes may have taken its place. */
  private void readBack() throws IOException, StickException {
    List<String> other = new ArrayList<>();
    for (StickFile file : order.files()) {
      Path at = kept.contains(file) ? place(file) : unfinished(file);
      Sums.Sum sum = sums.ofStick(disk, at);
      pastTheCache = pastTheCache && sum.pastTheCache();
      if (!sum.is(file)) {
        other.add(file.place());
        disk.medium().delete(at);
      }
      advance(file.bytes());
    }
    if (!other.isEmpty()) {
      throw new StickException(
          Reason.FAKE,
          other.size()
              + " of "
              + order.files().size()
              + " files read back differently from how they"
              + " were written, the first is "
              + other.get(0)
              + ". The stick is smaller than it says,"
              + " or worn out. Do not send it; what was wrong on it was removed.");
    }
  }

  private void settle(List<StickFile> fresh) throws IOException {
    Set<Path> folders = new LinkedHashSet<>();
    for (StickFile file : fresh) {
      disk.medium().move(unfinished(file), place(file));
      Path folder = place(file).getParent();
      if (folder != null) {
        folders.add(folder);
      }
    }
    for (Path folder : folders) {
      disk.forceNames(folder);
    }
  }

  private void advance(long bytes) {
    done += bytes;
    listener.progress(Math.min(done, total), total);
  }

  private Path place(StickFile file) {
    return order.stick().resolve(file.place());
  }

  private Path unfinished(StickFile file) {
    return order.stick().resolve(file.place() + WholeFiles.UNFINISHED);
  }
}
