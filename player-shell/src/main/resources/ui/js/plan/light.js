/** Colours mixed as light mixes: sRGB is decoded first and coded again afterwards (IEC 61966-2-1). */

const linear = (coded) => (coded <= 0.04045 ? coded / 12.92 : ((coded + 0.055) / 1.055) ** 2.4);
const coded = (light) => (light <= 0.0031308 ? light * 12.92 : 1.055 * light ** (1 / 2.4) - 0.055);

const LIGHT = Float64Array.from({ length: 256 }, (_, value) => linear(value / 255));

/** For each channel what becomes of its 256 values when `kept` of the contrast is left before air of that light. */
export function fadeTables(kept, air) {
  return air.map((horizon) => Uint8ClampedArray.from(LIGHT, (light) => Math.round(255 * coded(kept * light + (1 - kept) * horizon))));
}

/** The mean light of what is painted on a layer; white if nothing is. */
export function meanLight(pen, { width, height }) {
  const { data } = pen.getImageData(0, 0, width, height);
  const sum = [0, 0, 0];
  let count = 0;
  for (let i = 0; i < data.length; i += 16) {
    if (data[i + 3] > 127) {
      count += 1;
      sum.forEach((_, channel) => { sum[channel] += LIGHT[data[i + channel]]; });
    }
  }
  return count ? sum.map((light) => light / count) : [1, 1, 1];
}
