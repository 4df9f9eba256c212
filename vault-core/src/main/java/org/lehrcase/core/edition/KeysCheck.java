package org.lehrcase.core.edition;

import java.io.IOException;
import java.nio.file.Path;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.file.FoundFile;
import org.lehrcase.core.license.KeysFile;
import org.lehrcase.core.license.TrustedRoots;

/** Looks whether the keys file of a copy is whole, which takes moments, as it is small. */
final class KeysCheck {
  private KeysCheck() {}

  /** Looks through the folders; the first whole keys file counts, else the first damaged one. */
  static PartState of(EditionFolder folder) {
    PartState state = PartState.NOT_HERE;
    for (Path root : folder.roots()) {
      PartState found = at(root, folder.frontPage());
      if (found == PartState.HERE) {
        return found;
      }
      // An older edition that completes this one has a keys file of its own, which says nothing.
      if (root.equals(folder.roots().get(0))) {
        state = found;
      }
    }
    return state;
  }

  private static PartState at(Path root, FrontPage front) {
    if (!FoundFile.exists(root.resolve(EditionLayout.KEYS_INDEX))) {
      return PartState.NOT_HERE;
    }
    try {
      var roots = TrustedRoots.pinned(front.statement().root());
      KeysFile.open(root, front.edition(), front.digest(), roots).check();
      return PartState.HERE;
    } catch (IOException | VaultException e) {
      return PartState.DAMAGED;
    }
  }
}
