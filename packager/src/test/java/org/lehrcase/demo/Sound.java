package org.lehrcase.demo;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.List;

/** Soft synthesised sound: struck tones over a very quiet swell; mono, 16 bits, 44,100 Hz. */
final class Sound {
  static final int RATE = 44_100;
  private static final double[] SWELL_HERTZ = {98.0, 146.83, 196.0};

  private Sound() {}

  /** Returns little-endian samples. */
  static byte[] render(List<Film.Tone> tones, int seconds) {
    float[] wave = new float[seconds * RATE];
    for (Film.Tone tone : tones) {
      strike(wave, tone);
    }
    swell(wave);
    ByteBuffer bytes = ByteBuffer.allocate(wave.length * 2).order(ByteOrder.LITTLE_ENDIAN);
    for (int i = 0; i < wave.length; i++) {
      double end = Ease.rise(wave.length - i, 0, 2.0 * RATE) * Ease.rise(i, 0, RATE);
      bytes.putShort((short) Math.round(Math.tanh(wave[i] * end) * 32_000));
    }
    return bytes.array();
  }

  private static void strike(float[] wave, Film.Tone tone) {
    int start = (int) (tone.atSeconds() * RATE);
    int length = Math.min(4 * RATE, wave.length - start);
    double[][] partials = {{1, 0.17, 1.3}, {2.0, 0.05, 0.7}, {3.01, 0.018, 0.4}, {0.5, 0.04, 1.6}};
    for (int i = 0; i < length; i++) {
      double s = (double) i / RATE;
      double attack = Math.min(1, s / 0.012);
      double sum = 0;
      for (double[] p : partials) {
        sum += p[1] * Math.exp(-s / p[2]) * Math.sin(2 * Math.PI * tone.hertz() * p[0] * s);
      }
      wave[start + i] += (float) (sum * attack);
    }
  }

  private static void swell(float[] wave) {
    for (int i = 0; i < wave.length; i++) {
      double s = (double) i / RATE;
      for (int k = 0; k < SWELL_HERTZ.length; k++) {
        double breath = 0.5 + 0.5 * Math.sin(2 * Math.PI * s / (9.0 + 2.3 * k) + k);
        wave[i] += (float) (0.011 * breath * Math.sin(2 * Math.PI * SWELL_HERTZ[k] * s));
      }
    }
  }
}
