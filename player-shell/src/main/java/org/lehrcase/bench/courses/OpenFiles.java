package org.lehrcase.bench.courses;

import java.io.Closeable;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.EditionId;

/**
 * The few files that are held open between requests. The one not used for longest is closed when
 * there are too many; an answer that is still being sent from it ends, and the browser asks again.
 */
final class OpenFiles implements Closeable {
  private static final int MAX_OPEN = 12;

  /** Names a file. */
  record Key(EditionId edition, AssetId asset) {}

  private final Map<Key, CourseFile> files = new LinkedHashMap<>(16, 0.75f, true);

  synchronized Optional<CourseFile> find(Key key) {
    return Optional.ofNullable(files.get(key));
  }

  /** Keeps a file; if another thread was faster, closes this one and returns the other. */
  synchronized CourseFile keep(Key key, CourseFile file) throws IOException {
    CourseFile earlier = files.get(key);
    if (earlier != null) {
      file.clear().close();
      return earlier;
    }
    files.put(key, file);
    if (files.size() > MAX_OPEN) {
      Iterator<CourseFile> oldest = files.values().iterator();
      CourseFile leaving = oldest.next();
      oldest.remove();
      leaving.clear().close();
    }
    return file;
  }

  synchronized void forget(EditionId edition) {
    List<Key> gone = new ArrayList<>();
    for (Key key : files.keySet()) {
      if (key.edition().equals(edition)) {
        gone.add(key);
      }
    }
    for (Key key : gone) {
      CourseFile file = files.remove(key);
      if (file != null) {
        try {
          file.clear().close();
        } catch (IOException e) {
          throw new UncheckedIOException(e);
        }
      }
    }
  }

  @Override
  public synchronized void close() throws IOException {
    for (CourseFile file : files.values()) {
      file.clear().close();
    }
    files.clear();
  }
}
