package org.lehrcase.core.file;

import java.io.IOException;
import java.lang.reflect.InvocationHandler;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.Proxy;
import java.nio.channels.FileChannel;
import java.nio.channels.SeekableByteChannel;
import java.nio.file.AccessMode;
import java.nio.file.CopyOption;
import java.nio.file.DirectoryStream;
import java.nio.file.FileStore;
import java.nio.file.FileSystem;
import java.nio.file.LinkOption;
import java.nio.file.OpenOption;
import java.nio.file.Path;
import java.nio.file.PathMatcher;
import java.nio.file.StandardOpenOption;
import java.nio.file.WatchService;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileAttribute;
import java.nio.file.attribute.FileAttributeView;
import java.nio.file.attribute.UserPrincipalLookupService;
import java.nio.file.spi.FileSystemProvider;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * The real disk, seen through paths that pass every act by a fault first. So a file that cannot be
 * read, a stick that only reads, or a disk that does not say its room can be had without rights,
 * mounts or drivers.
 */
public final class FaultyDisk {
  /** What is done to a path. */
  public enum Act {
    /** A file is opened for reading. */
    READ,
    /** A file is opened for writing. */
    WRITE,
    /** A file is given a name; the path is the new one. */
    MOVE,
    /** A file or folder is removed. */
    DELETE,
    /** A folder is listed. */
    LIST,
    /** A folder is made. */
    FOLDER,
    /** The disk is asked for its room. */
    STORE
  }

  /** Decides whether an act fails. */
  @FunctionalInterface
  public interface Fault {
    /** Throws, or lets the act happen on the real disk. */
    void before(Act act, Path real) throws IOException;
  }

  private final Fault fault;
  private final Provider provider = new Provider();
  private final Disk disk = new Disk();

  private FaultyDisk(Fault fault) {
    this.fault = fault;
  }

  /** Returns a path to the same file or folder, seen through the fault. */
  public static Path at(Path real, Fault fault) {
    return new FaultyDisk(fault).wrap(real);
  }

  private Path wrap(Path real) {
    return (Path)
        Proxy.newProxyInstance(
            FaultyDisk.class.getClassLoader(), new Class<?>[] {Path.class}, new Seen(real));
  }

  private static Path real(Path path) {
    return Proxy.isProxyClass(path.getClass())
            && Proxy.getInvocationHandler(path) instanceof FaultyDisk.Seen seen
        ? seen.path
        : path;
  }

  /** Hands every question on to the real path, and wraps the paths that come back. */
  private final class Seen implements InvocationHandler {
    private final Path path;

    Seen(Path path) {
      this.path = path;
    }

    @Override
    public Object invoke(Object self, Method method, Object[] given) throws Throwable {
      if (method.getName().equals("getFileSystem")) {
        return disk;
      }
      Object[] handed = given == null ? new Object[0] : given.clone();
      for (int i = 0; i < handed.length; i++) {
        handed[i] = handed[i] instanceof Path other ? real(other) : handed[i];
      }
      try {
        Object answer = method.invoke(path, handed);
        return answer instanceof Path found ? wrap(found) : answer;
      } catch (InvocationTargetException e) {
        throw e.getCause();
      }
    }
  }

  private final class Disk extends FileSystem {
    private final FileSystem below = Path.of("").getFileSystem();

    @Override
    public FileSystemProvider provider() {
      return provider;
    }

    @Override
    public void close() {
      throw new UnsupportedOperationException();
    }

    @Override
    public boolean isOpen() {
      return true;
    }

    @Override
    public boolean isReadOnly() {
      return false;
    }

    @Override
    public String getSeparator() {
      return below.getSeparator();
    }

    @Override
    public Iterable<Path> getRootDirectories() {
      return below.getRootDirectories();
    }

    @Override
    public Iterable<FileStore> getFileStores() {
      return below.getFileStores();
    }

    @Override
    public Set<String> supportedFileAttributeViews() {
      return below.supportedFileAttributeViews();
    }

    @Override
    public Path getPath(String first, String... more) {
      return wrap(below.getPath(first, more));
    }

    @Override
    public PathMatcher getPathMatcher(String pattern) {
      return below.getPathMatcher(pattern);
    }

    @Override
    public UserPrincipalLookupService getUserPrincipalLookupService() {
      return below.getUserPrincipalLookupService();
    }

    @Override
    public WatchService newWatchService() throws IOException {
      return below.newWatchService();
    }
  }

  private final class Provider extends FileSystemProvider {
    private final FileSystemProvider below = Path.of("").getFileSystem().provider();

    private void open(Path path, Set<? extends OpenOption> options) throws IOException {
      fault.before(options.contains(StandardOpenOption.WRITE) ? Act.WRITE : Act.READ, real(path));
    }

    @Override
    public String getScheme() {
      return "faulty";
    }

    @Override
    public FileSystem newFileSystem(java.net.URI uri, Map<String, ?> settings) {
      throw new UnsupportedOperationException();
    }

    @Override
    public FileSystem getFileSystem(java.net.URI uri) {
      return disk;
    }

    @Override
    public Path getPath(java.net.URI uri) {
      return wrap(below.getPath(uri));
    }

    @Override
    public FileChannel newFileChannel(
        Path path, Set<? extends OpenOption> options, FileAttribute<?>... attributes)
        throws IOException {
      open(path, options);
      return below.newFileChannel(real(path), options, attributes);
    }

    @Override
    public SeekableByteChannel newByteChannel(
        Path path, Set<? extends OpenOption> options, FileAttribute<?>... attributes)
        throws IOException {
      open(path, options);
      return below.newByteChannel(real(path), options, attributes);
    }

    @Override
    public DirectoryStream<Path> newDirectoryStream(
        Path folder, DirectoryStream.Filter<? super Path> filter) throws IOException {
      fault.before(Act.LIST, real(folder));
      List<Path> inside = new ArrayList<>();
      try (var files = below.newDirectoryStream(real(folder), file -> filter.accept(wrap(file)))) {
        files.forEach(file -> inside.add(wrap(file)));
      }
      return new Listed(inside);
    }

    @Override
    public void createDirectory(Path folder, FileAttribute<?>... attributes) throws IOException {
      fault.before(Act.FOLDER, real(folder));
      below.createDirectory(real(folder), attributes);
    }

    @Override
    public void delete(Path path) throws IOException {
      fault.before(Act.DELETE, real(path));
      below.delete(real(path));
    }

    @Override
    public void copy(Path from, Path to, CopyOption... options) throws IOException {
      fault.before(Act.WRITE, real(to));
      below.copy(real(from), real(to), options);
    }

    @Override
    public void move(Path from, Path to, CopyOption... options) throws IOException {
      fault.before(Act.MOVE, real(to));
      below.move(real(from), real(to), options);
    }

    @Override
    public boolean isSameFile(Path one, Path other) throws IOException {
      return below.isSameFile(real(one), real(other));
    }

    @Override
    public boolean isHidden(Path path) throws IOException {
      return below.isHidden(real(path));
    }

    @Override
    public FileStore getFileStore(Path path) throws IOException {
      fault.before(Act.STORE, real(path));
      return below.getFileStore(real(path));
    }

    @Override
    public void checkAccess(Path path, AccessMode... modes) throws IOException {
      if (Arrays.asList(modes).contains(AccessMode.WRITE)) {
        fault.before(Act.WRITE, real(path));
      }
      below.checkAccess(real(path), modes);
    }

    @Override
    public <V extends FileAttributeView> V getFileAttributeView(
        Path path, Class<V> type, LinkOption... options) {
      return below.getFileAttributeView(real(path), type, options);
    }

    @Override
    public <A extends BasicFileAttributes> A readAttributes(
        Path path, Class<A> type, LinkOption... options) throws IOException {
      return below.readAttributes(real(path), type, options);
    }

    @Override
    public Map<String, Object> readAttributes(Path path, String names, LinkOption... options)
        throws IOException {
      return below.readAttributes(real(path), names, options);
    }

    @Override
    public void setAttribute(Path path, String name, Object value, LinkOption... options)
        throws IOException {
      below.setAttribute(real(path), name, value, options);
    }
  }

  private record Listed(List<Path> inside) implements DirectoryStream<Path> {
    @Override
    public Iterator<Path> iterator() {
      return inside.iterator();
    }

    @Override
    public void close() {
      // read at once, nothing is open
    }
  }
}
