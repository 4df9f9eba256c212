package org.lehrcase.desk.media;

/**
 * Reads a sequence parameter set in the order of ITU-T H.264, 7.3.2.1.1, as far as the flag that
 * says whether every frame is a whole picture. For one use.
 */
final class AvcParameterSet {
  private static final int HEAD_BITS = 8 + 8 + 8 + 8; // NAL header, profile, constraints, level
  private static final int MAX_CYCLE = 255;

  private final BitReader bits;
  private final boolean high;

  /** Takes a set without the bytes that keep start codes out; {@code high} if its profile is. */
  AvcParameterSet(Slice set, boolean high) {
    this.bits = new BitReader(set);
    this.high = high;
  }

  PictureFormat format(int width, int height) throws MediaException {
    bits.bits(HEAD_BITS);
    bits.exp(); // seq_parameter_set_id
    int depth = 8;
    int lists = 0;
    var chroma = Chroma.HALF;
    if (high) {
      int idc = bits.exp();
      if (idc == 3) {
        bits.bit(); // separate_colour_plane_flag
      }
      chroma = Chroma.ofIdc(idc);
      depth += bits.exp();
      bits.exp(); // bit_depth_chroma_minus8
      lists = idc == 3 ? 12 : 8;
    }
    return new PictureFormat(width, height, depth, chroma, saysInterlaced(lists));
  }

  /** A set that ends before the flag says nothing of it; what came before it still holds. */
  private boolean saysInterlaced(int scalingLists) {
    try {
      if (high) {
        bits.bit(); // qpprime_y_zero_transform_bypass_flag
        skipScaling(scalingLists);
      }
      return isInterlaced();
    } catch (MediaException e) {
      return false;
    }
  }

  /** 7.3.2.1.1.1: a matrix ends early when its next scale becomes 0. */
  private void skipScaling(int lists) throws MediaException {
    if (bits.bit() == 0) {
      return;
    }
    for (int list = 0; list < lists; list++) {
      if (bits.bit() == 1) {
        skipList(list < 6 ? 16 : 64);
      }
    }
  }

  private void skipList(int size) throws MediaException {
    int last = 8;
    for (int i = 0; i < size; i++) {
      int next = (last + signed() + 256) % 256;
      if (next == 0) {
        return;
      }
      last = next;
    }
  }

  private boolean isInterlaced() throws MediaException {
    bits.exp(); // log2_max_frame_num_minus4
    int order = bits.exp(); // pic_order_cnt_type
    if (order == 0) {
      bits.exp();
    } else if (order == 1) {
      skipCycle();
    }
    bits.exp(); // max_num_ref_frames
    bits.bit(); // gaps_in_frame_num_value_allowed_flag
    bits.exp(); // pic_width_in_mbs_minus1
    bits.exp(); // pic_height_in_map_units_minus1
    return bits.bit() == 0; // frame_mbs_only_flag
  }

  private void skipCycle() throws MediaException {
    bits.bit(); // delta_pic_order_always_zero_flag
    bits.longExp();
    bits.longExp();
    int cycle = bits.exp();
    if (cycle > MAX_CYCLE) {
      throw MediaException.broken("a picture header in the file makes no sense");
    }
    for (int i = 0; i < cycle; i++) {
      bits.longExp();
    }
  }

  /** Reads {@code se(v)} (ITU-T H.264, 9.1.1). */
  private int signed() throws MediaException {
    int code = bits.exp();
    return code % 2 == 0 ? -code / 2 : (code + 1) / 2;
  }
}
