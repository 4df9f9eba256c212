package org.lehrcase.bench.courses;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Asset;
import org.lehrcase.core.course.AssetRole;
import org.lehrcase.core.course.Captions;
import org.lehrcase.core.course.PartRef;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.primitive.Sha256;
import org.lehrcase.core.seal.ClearSource;
import org.lehrcase.core.table.PlainText;

/** Opens the files of editions as what the pages read. Safe for many threads. */
final class AssetFiles {
  private final DamageLog damage;
  private final Map<Path, MediumPace> paces = new ConcurrentHashMap<>();

  AssetFiles(DamageLog damage) {
    this.damage = damage;
  }

  /** Opens a file; {@code gone} is called when its stick goes away while it is read. */
  CourseFile open(OpenedEdition edition, Asset asset, Runnable gone)
      throws VaultException, IOException {
    Path root = edition.folder().roots().get(0);
    return new CourseFile(
        MediaTypes.of(asset),
        tag(asset),
        source(edition, asset, gone),
        paces.computeIfAbsent(root, path -> new MediumPace()),
        position -> damage.note(asset.id(), position));
  }

  /** Captions of every kind are read whole and given as WebVTT; all else is read where asked. */
  private static ClearSource source(OpenedEdition edition, Asset asset, Runnable gone)
      throws VaultException, IOException {
    if (asset.role() == AssetRole.CAPTIONS) {
      String written = PlainText.decode(edition.read(asset, Captions.MAX_BYTES));
      return new ClearBytes(Captions.parse(written).toWebVtt().getBytes(StandardCharsets.UTF_8));
    }
    return new WatchedSource(edition.open(asset), edition.frontPage().title().title(), gone);
  }

  /** The tag names the sealed bytes, so it changes whenever the clear bytes do. */
  private static String tag(Asset asset) {
    byte[][] addresses =
        asset.parts().stream().map(PartRef::address).map(a -> a.toBytes()).toArray(byte[][]::new);
    return Octets.of(Sha256.of16(addresses)).hex();
  }
}
