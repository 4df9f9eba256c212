package org.lehrcase.desk.answering;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.LuminanceSource;
import com.google.zxing.NotFoundException;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.Result;
import com.google.zxing.common.GlobalHistogramBinarizer;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.multi.qrcode.QRCodeMultiReader;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.imageio.IIOException;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.stream.ImageInputStream;

/**
 * Reads the codes in a photo of a screen or a paper. What a picture claims to measure is read
 * before any of it is decoded, and large pictures are decoded coarsely.
 */
public final class CodePhoto {
  /** The largest photo that is read, in bytes. */
  public static final int MAX_BYTES = 24 << 20;

  private static final long MAX_PIXELS = 120_000_000;
  private static final int FINE_SIDE = 2_400;
  private static final int COARSE_SIDE = 1_000;
  private static final Map<DecodeHintType, ?> HINTS = Map.of(DecodeHintType.TRY_HARDER, true);
  private static final Set<String> HEIC_BRANDS = Set.of("heic", "heix", "mif1", "msf1", "heif");
  private static final String ASK_AGAIN =
      " Nothing was changed; ask for the card's text, or for a sharper photo that shows the whole"
          + " code and nothing else.";

  private CodePhoto() {}

  /**
   * Says whether bytes are a picture, by how they begin.
   *
   * @param bytes whatever came
   * @return whether {@link #text} is the way to read them
   */
  public static boolean isPicture(byte[] bytes) {
    return begins(bytes, 0, "\u00ff\u00d8\u00ff")
        || begins(bytes, 0, "\u0089PNG\r\n")
        || isHeic(bytes);
  }

  private static boolean isHeic(byte[] bytes) {
    return begins(bytes, 4, "ftyp")
        && HEIC_BRANDS.stream().anyMatch(brand -> begins(bytes, 8, brand));
  }

  private static boolean begins(byte[] bytes, int at, String latin) {
    byte[] start = latin.getBytes(StandardCharsets.ISO_8859_1);
    return bytes.length >= at + start.length
        && Arrays.equals(bytes, at, at + start.length, start, 0, start.length);
  }

  /**
   * Reads every code of a photo.
   *
   * @param photo a JPEG or PNG file
   * @return the texts of the codes, one a line
   * @throws RefusedException if there is no code to be read in it; says what to ask the buyer for
   */
  public static String text(byte[] photo) throws RefusedException {
    if (isHeic(photo)) {
      throw unreadable(
          "This photo is in the HEIC form, which the desk does not read. A screenshot"
              + " of the photo, or the photo sent as JPEG, will do.");
    }
    for (int side : new int[] {FINE_SIDE, COARSE_SIDE}) {
      Set<String> texts = codes(decoded(photo, side));
      if (!texts.isEmpty()) {
        return String.join("\n", texts);
      }
    }
    throw unreadable("There is no code to be read in this photo.");
  }

  private static BufferedImage decoded(byte[] photo, int side) throws RefusedException {
    try (ImageInputStream in = ImageIO.createImageInputStream(new ByteArrayInputStream(photo))) {
      Iterator<ImageReader> readers = ImageIO.getImageReaders(in);
      if (!readers.hasNext()) {
        throw unreadable("This photo cannot be read.");
      }
      ImageReader reader = readers.next();
      try {
        reader.setInput(in, true, true);
        return decoded(reader, side);
      } finally {
        reader.dispose();
      }
    } catch (IIOException | IllegalArgumentException | IndexOutOfBoundsException e) {
      throw unreadable("This photo is damaged.");
    } catch (IOException e) {
      throw unreadable("This photo cannot be read.");
    }
  }

  private static BufferedImage decoded(ImageReader reader, int side)
      throws IOException, RefusedException {
    long width = reader.getWidth(0);
    long height = reader.getHeight(0);
    if (width * height > MAX_PIXELS) {
      throw unreadable("This picture of " + width + " x " + height + " pixels is too large.");
    }
    int step = (int) Math.max(1, (Math.max(width, height) + side - 1) / side);
    ImageReadParam coarse = reader.getDefaultReadParam();
    coarse.setSourceSubsampling(step, step, 0, 0);
    return reader.read(0, coarse);
  }

  private static Set<String> codes(BufferedImage picture) {
    int width = picture.getWidth();
    int height = picture.getHeight();
    int[] pixels = picture.getRGB(0, 0, width, height, null, 0, width);
    LuminanceSource seen = new RGBLuminanceSource(width, height, pixels);
    return Stream.of(new HybridBinarizer(seen), new GlobalHistogramBinarizer(seen))
        .map(BinaryBitmap::new)
        .map(CodePhoto::found)
        .filter(results -> !results.isEmpty())
        .findFirst()
        .orElse(List.of())
        .stream()
        .map(Result::getText)
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static List<Result> found(BinaryBitmap bitmap) {
    try {
      return List.of(new QRCodeMultiReader().decodeMultiple(bitmap, HINTS));
    } catch (NotFoundException e) {
      return List.of();
    }
  }

  private static RefusedException unreadable(String what) {
    return new RefusedException(Refusal.NOT_A_CARD, what + ASK_AGAIN);
  }
}
