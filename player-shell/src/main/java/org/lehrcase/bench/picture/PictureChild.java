package org.lehrcase.bench.picture;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataOutputStream;
import java.io.FileDescriptor;
import java.io.FileInputStream;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.InputStream;

/**
 * The program of the process that decodes one picture: the file comes in on standard input, the
 * clean picture or the refusal goes out on standard output. It opens no file and no socket.
 */
public final class PictureChild {
  static final int CLEAN = 1;
  static final int REFUSED = 2;

  private PictureChild() {}

  /**
   * Decodes.
   *
   * @param arguments none
   * @throws IOException if the parent is gone
   */
  public static void main(String[] arguments) throws IOException {
    try (InputStream in = new BufferedInputStream(new FileInputStream(FileDescriptor.in));
        var out =
            new DataOutputStream(
                new BufferedOutputStream(new FileOutputStream(FileDescriptor.out)))) {
      answer(in.readNBytes(PictureLimits.MOST_BYTES + 1), out);
    }
  }

  private static void answer(byte[] file, DataOutputStream out) throws IOException {
    try {
      if (file.length > PictureLimits.MOST_BYTES) {
        throw PictureLimits.tooManyBytes();
      }
      CleanPicture picture = PictureDecoder.decode(file);
      byte[] jpeg = picture.jpeg();
      out.writeByte(CLEAN);
      out.writeInt(picture.width());
      out.writeInt(picture.height());
      out.writeInt(picture.sourceWidth());
      out.writeInt(picture.sourceHeight());
      out.writeInt(jpeg.length);
      out.write(jpeg);
    } catch (PictureRefusal refused) {
      out.writeByte(REFUSED);
      out.writeUTF(String.valueOf(refused.getMessage()));
      out.writeUTF(refused.next());
    }
  }
}
