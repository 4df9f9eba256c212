package org.lehrcase.desk.pack;

import java.io.IOException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.Arrays;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.Contents;
import org.lehrcase.core.edition.ContentsSeal;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.EditionTitle;
import org.lehrcase.core.edition.FrontPage;
import org.lehrcase.core.edition.FrontPageFacts;
import org.lehrcase.core.edition.OpenedEdition;
import org.lehrcase.core.keys.EditionKey;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.license.DeskSigner;
import org.lehrcase.core.license.KeysFileDraft;
import org.lehrcase.core.seal.ByteSource;
import org.lehrcase.core.seal.DigestList;
import org.lehrcase.core.seal.PartHeader;
import org.lehrcase.core.seal.PartSealer;
import org.lehrcase.desk.answering.KeyRows;
import org.lehrcase.desk.author.SourceCourse;
import org.lehrcase.desk.home.DeskHome;
import org.lehrcase.desk.home.DeskKeys;
import org.lehrcase.desk.sales.EditionEntry;

/** Writes what stands around the parts: sealed contents, front page, keys file. */
final class EditionWriter {
  private static final int FIRST_ISSUE = 1;

  private final DeskHome home;
  private final DeskKeys keys;
  private final PackDisk disk;
  private final SecureRandom random;

  EditionWriter(DeskHome home, DeskKeys keys, PackDisk disk, SecureRandom random) {
    this.home = home;
    this.keys = keys;
    this.disk = disk;
    this.random = random;
  }

  /** Writes everything but the parts into the staging folder; the front page comes last. */
  FrontPage write(Path staging, EditionEntry entry, SourceCourse course, EditionDraft draft)
      throws IOException {
    try (EditionKey key = keys.master(entry.epoch()).editionKey(entry.id())) {
      byte[] sealed = seal(draft.contents(entry.id(), entry.day()), key);
      DigestList digests =
          DigestList.ofFile(ByteSource.of(sealed), PartHeader.parse(sealed).log2SegmentBytes());
      FrontPageFacts facts =
          new FrontPageFacts(
              title(entry, course),
              ContentsSeal.of(entry.id(), digests, key, keys.closing(entry.epoch())),
              draft.outline(),
              draft.parts(),
              draft.openLessons());
      FrontPage front = FrontPage.sign(facts, home.statement(), keys.desk());
      disk.write(staging.resolve(EditionLayout.CONTENTS), sealed);
      writeKeys(staging, entry, front);
      disk.write(staging.resolve(EditionLayout.FRONT_PAGE), front.toBytes());
      return front;
    } catch (VaultException e) {
      throw new IllegalStateException("what was just sealed and signed must verify", e);
    }
  }

  private byte[] seal(Contents contents, EditionKey key) {
    byte[] clear = contents.encode();
    try (PartKey contentsKey = key.contentsKey(contents.edition())) {
      PartHeader header = OpenedEdition.contentsHeader(contents.edition(), clear.length);
      return new PartSealer(random).sealBytes(clear, header, contentsKey);
    } finally {
      Arrays.fill(clear, (byte) 0);
    }
  }

  private static EditionTitle title(EditionEntry entry, SourceCourse course) {
    return new EditionTitle(
        entry.id(),
        entry.series(),
        entry.restores(),
        entry.number(),
        course.title(),
        course.description(),
        course.whereToBuy());
  }

  private void writeKeys(Path staging, EditionEntry entry, FrontPage front) throws IOException {
    KeysFileDraft draft = KeysFileDraft.start(entry.id(), random);
    new KeyRows(home.book(), keys).addTo(draft, entry);
    draft.write(
        staging, front.digest(), FIRST_ISSUE, new DeskSigner(home.statement(), keys.desk()));
  }
}
