package org.lehrcase.desk.pack;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Path;
import java.security.SecureRandom;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.seal.ByteSource;
import org.lehrcase.core.seal.PartHeader;
import org.lehrcase.core.seal.Progress;
import org.lehrcase.core.seal.SealedPart;

/** A disk that fails at its n-th use, as a full or pulled one does; before or after the act. */
final class FailingDisk implements PackDisk {
  private final PackDisk real = new RealDisk(new SecureRandom());
  private final boolean afterTheAct;
  private int usesLeft;
  private boolean failed;

  FailingDisk(int goodUses, boolean afterTheAct) {
    this.usesLeft = goodUses;
    this.afterTheAct = afterTheAct;
  }

  boolean failed() {
    return failed;
  }

  private interface Act<T> {
    T run() throws IOException;
  }

  private <T> T use(Path path, Act<T> act) throws IOException {
    boolean last = usesLeft-- <= 0;
    if (last && !afterTheAct) {
      throw full(path);
    }
    T result = act.run();
    if (last) {
      throw full(path);
    }
    return result;
  }

  private FileSystemException full(Path path) {
    failed = true;
    return new FileSystemException(path.toString(), null, "No space left on device");
  }

  @Override
  public void folder(Path folder) throws IOException {
    use(
        folder,
        () -> {
          real.folder(folder);
          return true;
        });
  }

  @Override
  public long freeBytes(Path folder) throws IOException {
    return real.freeBytes(folder);
  }

  @Override
  public SealedPart seal(
      ByteSource clear, PartHeader header, PartKey key, Path target, Progress progress)
      throws IOException {
    return use(target, () -> real.seal(clear, header, key, target, progress));
  }

  @Override
  public void write(Path file, byte[] bytes) throws IOException {
    use(
        file,
        () -> {
          real.write(file, bytes);
          return true;
        });
  }

  @Override
  public void copy(Path from, Path file) throws IOException {
    use(
        file,
        () -> {
          real.copy(from, file);
          return true;
        });
  }

  @Override
  public void move(Path from, Path to) throws IOException {
    use(
        to,
        () -> {
          real.move(from, to);
          return true;
        });
  }

  @Override
  public void remove(Path path) throws IOException {
    use(
        path,
        () -> {
          real.remove(path);
          return true;
        });
  }
}
