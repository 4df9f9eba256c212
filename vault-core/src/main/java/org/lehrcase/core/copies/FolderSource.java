package org.lehrcase.core.copies;

import java.io.IOException;
import java.io.InputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.DirectoryIteratorException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;
import java.util.regex.Pattern;
import org.lehrcase.core.edition.EditionLayout;

/**
 * A folder that may have files of an edition: an edition folder, or one into which they were
 * downloaded one by one, where a browser has added numbers to their names. Names are only a hint; a
 * file of the right length may be the right one under any name.
 */
public final class FolderSource implements CopySource {
  /** More files than any edition has; what comes behind is not looked at. */
  private static final int MAX_FILES = 5000;

  private static final Pattern PART_FOLDER = Pattern.compile("[0-9]{3}");
  private static final Pattern ADDED = Pattern.compile("\\s?\\([0-9]{1,3}\\)");

  private final Path root;
  private final List<Entry> entries = new ArrayList<>();
  private boolean listed;

  private record Entry(Path file, String name, long bytes) {}

  /** Looks in a folder, which may be gone at any time. */
  public FolderSource(Path root) {
    this.root = root;
  }

  /** Returns the folder. */
  public Path root() {
    return root;
  }

  @Override
  public String label() {
    return root.toString();
  }

  @Override
  public List<Candidate> find(String path, OptionalLong exactBytes) throws IOException {
    Set<Path> named = new LinkedHashSet<>();
    Path own = root.resolve(path);
    if (isRegular(own) && !underLink(own)) {
      named.add(own);
    }
    String name = path.substring(path.lastIndexOf('/') + 1);
    boolean isChunk = path.startsWith(EditionLayout.KEYS + "/");
    if (!isChunk) {
      for (Entry entry : entries()) {
        if (entry.name.equals(name)) {
          named.add(entry.file);
        }
      }
    }
    List<Candidate> found = new ArrayList<>();
    named.forEach(file -> found.add(new FileCandidate(file, false)));
    exactBytes.ifPresent(
        size ->
            entries.stream()
                .filter(entry -> entry.bytes == size && !named.contains(entry.file))
                .forEach(entry -> found.add(new FileCandidate(entry.file, true))));
    return found;
  }

  private static boolean isRegular(Path file) {
    return Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS);
  }

  /** A folder inside the edition must be one; the root may be reached as the person likes. */
  private boolean underLink(Path file) {
    Path folder = file.getParent();
    return folder != null && !folder.equals(root) && Files.isSymbolicLink(folder);
  }

  /** Lists the folder and its numbered folders, once. */
  private synchronized List<Entry> entries() throws IOException {
    if (!listed) {
      list(root, true);
      listed = true;
    }
    return entries;
  }

  private void list(Path folder, boolean deeper) throws IOException {
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder)) {
      for (Path file : files) {
        try {
          take(file, deeper);
        } catch (AccessDeniedException | NoSuchFileException e) {
          continue; // what the system locks away, or has just removed, is no file of an edition
        }
      }
    } catch (DirectoryIteratorException e) {
      throw e.getCause();
    }
  }

  private void take(Path file, boolean deeper) throws IOException {
    String name = String.valueOf(file.getFileName());
    var facts = Files.readAttributes(file, BasicFileAttributes.class, LinkOption.NOFOLLOW_LINKS);
    if (facts.isRegularFile() && entries.size() < MAX_FILES) {
      entries.add(new Entry(file, ADDED.matcher(name).replaceAll(""), facts.size()));
    } else if (deeper && facts.isDirectory() && PART_FOLDER.matcher(name).matches()) {
      list(file, false);
    }
  }

  private record FileCandidate(Path file, boolean isGuess) implements Candidate {
    @Override
    public InputStream from(long position) throws IOException {
      FileChannel channel =
          FileChannel.open(file, Set.of(StandardOpenOption.READ, LinkOption.NOFOLLOW_LINKS));
      channel.position(position);
      return Channels.newInputStream(channel);
    }

    @Override
    public boolean isNear() {
      return true;
    }
  }
}
