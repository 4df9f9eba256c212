package org.lehrcase.desk.pack;

import java.io.EOFException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CancellationException;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.PartRef;
import org.lehrcase.core.course.Rendition;
import org.lehrcase.core.edition.EditionFolder;
import org.lehrcase.core.edition.EditionLayout;
import org.lehrcase.core.edition.PartEntry;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.seal.ByteSource;
import org.lehrcase.core.seal.DigestList;
import org.lehrcase.core.seal.FileSource;
import org.lehrcase.core.seal.PartHeader;
import org.lehrcase.core.seal.SealedPart;
import org.lehrcase.desk.pack.KnownPart.KnownFile;
import org.lehrcase.desk.pack.PackPlan.PlannedFile;
import org.lehrcase.desk.pack.PackPlan.PlannedLesson;
import org.lehrcase.desk.pack.PackPlan.PlannedPart;

/**
 * Makes the parts of an edition in its staging folder: takes what is there already, copies what the
 * edition before has, seals the rest. A part is noted in the memory only when it lies under its
 * name on the disk; until then its key is nowhere, so that a part cut short is sealed anew under a
 * fresh key.
 */
final class PartWork {
  private final Path staging;
  private final PackMemory journal;
  private final PackDisk disk;
  private final SecureRandom random;
  private final Map<PlannedPart, PartRef> finished = new HashMap<>();
  private long doneBytes;
  private long copiedBytes;

  PartWork(Path staging, PackMemory journal, PackDisk disk, SecureRandom random) {
    this.staging = staging;
    this.journal = journal;
    this.disk = disk;
    this.random = random;
  }

  /** Makes every part of the plan. */
  Map<PlannedPart, PartRef> run(
      PackPlan plan, Optional<EditionFolder> before, PackListener listener)
      throws IOException, PackException {
    long total = plan.totalBytes();
    for (PlannedLesson lesson : plan.lessons()) {
      Path folder = staging.resolve(EditionLayout.folderName(lesson.entry().folder()));
      disk.folder(folder);
      for (PlannedFile file : lesson.files()) {
        for (PlannedPart part : file.parts()) {
          finished.put(
              part,
              make(
                  lesson,
                  file,
                  part,
                  before,
                  bytes -> {
                    listener.progress(doneBytes + bytes, total);
                    return listener.goOn();
                  }));
          doneBytes += part.sealedBytes();
          listener.progress(doneBytes, total);
          if (!listener.goOn()) {
            throw new CancellationException("the pack was stopped");
          }
        }
      }
    }
    return finished;
  }

  /** Returns how much was taken from the edition before or from an ended pack, in bytes. */
  long copiedBytes() {
    return copiedBytes;
  }

  private PartRef make(
      PlannedLesson lesson,
      PlannedFile file,
      PlannedPart part,
      Optional<EditionFolder> before,
      org.lehrcase.core.seal.Progress progress)
      throws IOException, PackException {
    Path folder = staging.resolve(EditionLayout.folderName(lesson.entry().folder()));
    if (part.known().isPresent()) {
      KnownPart known = part.known().get();
      if (isThere(folder, known) || copied(folder, known, before)) {
        note(
            new KnownPart(
                fileOf(lesson, file),
                known.part(),
                known.print(),
                known.ref(),
                known.sealedBytes()));
        copiedBytes += known.sealedBytes();
        return known.ref();
      }
    }
    return seal(folder, lesson, file, part, progress);
  }

  private void note(KnownPart part) throws IOException {
    boolean noted = journal.parts().getOrDefault(part.file(), java.util.List.of()).contains(part);
    if (!noted) {
      journal.add(part);
    }
  }

  private static KnownFile fileOf(PlannedLesson lesson, PlannedFile file) {
    return new KnownFile(
        lesson.entry().id(),
        file.id(),
        file.source().role(),
        file.source().name(),
        file.plainBytes(),
        file.parts().size());
  }

  private static boolean isThere(Path folder, KnownPart known) throws IOException {
    Path file = folder.resolve(EditionLayout.partName(known.ref().address()));
    Path list = folder.resolve(EditionLayout.digestsName(known.ref().address()));
    boolean single = known.sealedBytes() <= 1L << 16;
    return Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)
        && Files.size(file) == known.sealedBytes()
        && (single || Files.isRegularFile(list, LinkOption.NOFOLLOW_LINKS));
  }

  /** Copies a part of the edition before, if it is there and still is what it was. */
  private boolean copied(Path folder, KnownPart known, Optional<EditionFolder> before)
      throws IOException {
    PartEntry entry =
        new PartEntry(0, known.ref().address(), known.sealedBytes(), Rendition.COMMON);
    Optional<Path> found = before.flatMap(b -> b.locate(entry));
    if (found.isEmpty()) {
      return false;
    }
    DigestList digests;
    try (FileSource source = FileSource.open(found.get())) {
      byte[] head = new byte[PartHeader.SIZE_BYTES];
      source.readExactly(0, java.nio.ByteBuffer.wrap(head));
      int log2 = PartHeader.parse(head).log2SegmentBytes();
      digests = DigestList.provenWhole(source, log2, known.ref().address());
    } catch (VaultException e) {
      return false; // damaged there: it is sealed anew
    }
    writeDigests(folder, digests);
    disk.copy(found.get(), folder.resolve(EditionLayout.partName(known.ref().address())));
    return true;
  }

  private PartRef seal(
      Path folder,
      PlannedLesson lesson,
      PlannedFile file,
      PlannedPart part,
      org.lehrcase.core.seal.Progress progress)
      throws IOException, PackException {
    PartHeader header = part.piece().header();
    Path unfinished = folder.resolve("sealing" + RealDisk.UNFINISHED);
    disk.remove(unfinished);
    PartKey key = PartKey.random(random);
    try (ByteSource source = file.source().open()) {
      if (source.sizeBytes() != file.plainBytes()) {
        throw changed(file);
      }
      PartPrint clear =
          new PartPrint(source.slice(part.piece().from(), header.plainBytes()), header.layout());
      SealedPart sealed = disk.seal(clear, header, key, unfinished, progress);
      writeDigests(folder, sealed.digests());
      disk.move(unfinished, folder.resolve(EditionLayout.partName(sealed.address())));
      PartRef ref = new PartRef(sealed.address(), key);
      note(
          new KnownPart(
              fileOf(lesson, file), header.part(), clear.print(), ref, sealed.sealedBytes()));
      return ref;
    } catch (EOFException e) {
      throw changed(file);
    }
  }

  private void writeDigests(Path folder, DigestList digests) throws IOException {
    if (digests.segments() > 1) {
      disk.write(folder.resolve(EditionLayout.digestsName(digests.address())), digests.toBytes());
    }
  }

  private static PackException changed(PlannedFile file) {
    return new PackException(
        PackException.Reason.CHANGED_MEANWHILE,
        file.source().place()
            + " was changed while it was packed. What is finished is kept; pack again when nobody"
            + " works on the course.");
  }
}
