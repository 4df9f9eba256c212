package org.lehrcase.core.course;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.LessonId;
import org.lehrcase.core.id.Octets;
import org.lehrcase.core.id.PartAddress;
import org.lehrcase.core.keys.PartKey;
import org.lehrcase.core.message.CborReader;
import org.lehrcase.core.message.CborWriter;

/**
 * The one encoding of a lesson, the same in the sealed contents and, for lessons that play without
 * a license, on the front page: {@code docs/format.md}, section "Lesson".
 *
 * <pre>
 * lesson = [id b16, number, folder, title, summary, open, block / null, [asset…], [moment…]]
 * asset  = [id b16, role, rendition, name, media type, language, clear length, [[address b32, key b32]…]]
 * moment = [milliseconds, text, target, asset b16 / null, page]
 * </pre>
 */
public final class LessonCodec {

  private static final int LESSON_FIELDS = 9;
  private static final int ASSET_FIELDS = 8;
  private static final int MOMENT_FIELDS = 5;

  /** UTF-8 needs at most three bytes for a UTF-16 unit. */
  private static final int MAX_TAG_BYTES = 128;

  private LessonCodec() {}

  /** Writes a lesson with the keys of its parts. */
  public static void write(CborWriter out, Lesson lesson) {
    out.array(LESSON_FIELDS)
        .bytes(lesson.id().octets())
        .uint(lesson.number())
        .uint(lesson.folder())
        .text(lesson.title())
        .text(lesson.summary())
        .bool(lesson.open());
    lesson.block().ifPresentOrElse(out::text, out::nil);
    out.array(lesson.assets().size());
    lesson.assets().forEach(a -> writeAsset(out, a));
    out.array(lesson.moments().size());
    lesson.moments().forEach(m -> writeMoment(out, m));
  }

  /**
   * Reads a lesson.
   *
   * @throws VaultException if anything is not exactly as {@link #write} writes it
   */
  public static Lesson read(CborReader in) throws VaultException {
    in.arrayOf(LESSON_FIELDS);
    LessonId id = new LessonId(in.octets(LessonId.BYTES));
    int number = in.smallUint(Lesson.MAX_NUMBER);
    int folder = in.smallUint(Lesson.MAX_NUMBER);
    String title = in.characters(CourseText.MAX_NAME);
    String summary = in.characters(CourseText.MAX_PARAGRAPH);
    boolean open = in.bool();
    Optional<String> block =
        in.skipNull() ? Optional.empty() : Optional.of(in.characters(CourseText.MAX_NAME));
    int assetCount = in.array(Lesson.MAX_ASSETS);
    List<Asset> assets = new ArrayList<>(assetCount);
    for (int i = 0; i < assetCount; i++) {
      assets.add(readAsset(in));
    }
    int momentCount = in.array(Lesson.MAX_MOMENTS);
    List<Moment> moments = new ArrayList<>(momentCount);
    for (int i = 0; i < momentCount; i++) {
      moments.add(readMoment(in));
    }
    try {
      return new Lesson(id, number, folder, title, summary, open, assets, moments, block);
    } catch (IllegalArgumentException e) {
      throw new VaultException.Malformed("lesson " + number + ": " + e.getMessage());
    }
  }

  private static void writeAsset(CborWriter out, Asset asset) {
    out.array(ASSET_FIELDS)
        .bytes(asset.id().octets())
        .uint(asset.role().code())
        .uint(asset.rendition().code())
        .text(asset.name())
        .text(asset.mediaType())
        .text(asset.language())
        .uint(asset.plainBytes())
        .array(asset.parts().size());
    for (PartRef part : asset.parts()) {
      out.array(2).bytes(part.address().octets());
      part.key().use(out::bytes);
    }
  }

  private static Asset readAsset(CborReader in) throws VaultException {
    in.arrayOf(ASSET_FIELDS);
    AssetId id = new AssetId(in.octets(AssetId.BYTES));
    AssetRole role = known(AssetRole.ofCode(in.uint(Integer.MAX_VALUE)), "role");
    Rendition rendition = known(Rendition.ofCode(in.uint(Integer.MAX_VALUE)), "rendition");
    String name = in.characters(CourseText.MAX_NAME);
    String mediaType = in.text(MAX_TAG_BYTES);
    String language = in.text(MAX_TAG_BYTES);
    long plainBytes = in.uint(Long.MAX_VALUE);
    int count = in.array(Asset.MAX_PARTS);
    List<PartRef> parts = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      in.arrayOf(2);
      PartAddress address = new PartAddress(in.octets(PartAddress.BYTES));
      parts.add(new PartRef(address, key(in)));
    }
    try {
      return new Asset(id, role, rendition, name, mediaType, language, plainBytes, parts);
    } catch (IllegalArgumentException e) {
      throw new VaultException.Malformed("a file of a lesson: " + e.getMessage());
    }
  }

  private static PartKey key(CborReader in) throws VaultException {
    byte[] raw = in.bytes(PartKey.BYTES);
    try {
      return PartKey.ofBytes(raw);
    } catch (IllegalArgumentException e) {
      throw new VaultException.Malformed("a part key of the wrong length");
    } finally {
      Arrays.fill(raw, (byte) 0);
    }
  }

  private static void writeMoment(CborWriter out, Moment moment) {
    out.array(MOMENT_FIELDS)
        .uint(moment.atMillis())
        .text(moment.text())
        .uint(moment.target().code());
    moment.asset().ifPresentOrElse(id -> out.bytes(id.octets()), out::nil);
    out.uint(moment.page());
  }

  private static Moment readMoment(CborReader in) throws VaultException {
    in.arrayOf(MOMENT_FIELDS);
    long atMillis = in.uint(Moment.MAX_MILLIS);
    String text = in.characters(Moment.MAX_TEXT);
    MomentTarget target = known(MomentTarget.ofCode(in.uint(Integer.MAX_VALUE)), "target");
    Optional<Octets> asset = in.octetsOrNull(AssetId.BYTES);
    int page = in.smallUint(Moment.MAX_PAGE);
    try {
      return new Moment(atMillis, text, target, asset.map(AssetId::new), page);
    } catch (IllegalArgumentException e) {
      throw new VaultException.Malformed("a moment of a lesson: " + e.getMessage());
    }
  }

  private static <T> T known(Optional<T> value, String what) throws VaultException {
    return value.orElseThrow(
        () -> new VaultException.Malformed("an unknown " + what + " in a lesson"));
  }
}
