package org.lehrcase.core.edition;

import java.time.DateTimeException;
import java.time.LocalDate;
import org.lehrcase.core.VaultException;
import org.lehrcase.core.course.CourseText;
import org.lehrcase.core.course.Moment;
import org.lehrcase.core.id.AssetId;
import org.lehrcase.core.id.LessonId;
import org.lehrcase.core.message.CborReader;
import org.lehrcase.core.message.CborWriter;
import org.lehrcase.core.message.Verified;

/**
 * The clear text of a correction: {@code [1, lesson b16, pin, position, asset b16 / null, text,
 * day]}.
 */
final class CorrectionCodec {

  /** Most bytes of the clear text. */
  static final int MAX_BYTES = 16 << 10;

  private static final int FIELDS = 7;
  private static final int MAX_DAY_BYTES = 10;

  private CorrectionCodec() {}

  static byte[] encode(CorrectionNote note) {
    var out = new CborWriter();
    out.array(FIELDS)
        .uint(1)
        .bytes(note.lesson().octets())
        .uint(note.pin().code())
        .uint(note.position());
    note.asset().ifPresentOrElse(id -> out.bytes(id.octets()), out::nil);
    out.text(note.text()).text(note.day().toString());
    return out.toBytes();
  }

  static CorrectionNote decode(byte[] clear) throws VaultException {
    CborReader in = Verified.fields(clear, FIELDS);
    LessonId lesson = new LessonId(in.octets(LessonId.BYTES));
    CorrectionPin pin =
        CorrectionPin.ofCode(in.uint(Integer.MAX_VALUE))
            .orElseThrow(() -> new VaultException.Malformed("an unknown pin of a correction"));
    long position = in.uint(Moment.MAX_MILLIS);
    var asset = in.octetsOrNull(AssetId.BYTES).map(AssetId::new);
    String text = in.characters(CourseText.MAX_PARAGRAPH);
    String day = in.text(MAX_DAY_BYTES);
    in.end();
    try {
      var note = new CorrectionNote(lesson, pin, position, asset, text, LocalDate.parse(day));
      if (note.day().toString().equals(day)) {
        return note;
      }
    } catch (IllegalArgumentException | DateTimeException e) {
      throw new VaultException.Malformed("correction: " + e.getMessage());
    }
    throw new VaultException.Malformed("correction: a day is not of the form 2026-01-31");
  }
}
