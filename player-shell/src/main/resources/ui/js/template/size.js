/** The true size of a template file in millimetres, read from what the file itself says. */

const MM_PER = { mm: 1, cm: 10, in: 25.4, pt: 25.4 / 72, pc: 25.4 / 6, px: 25.4 / 96, '': 25.4 / 96 };
const LENGTH = /^\s*([\d.]+)\s*(mm|cm|in|pt|pc|px)?\s*$/;

function attribute(tag, name) {
  const found = new RegExp(`\\s${name}\\s*=\\s*["']([^"']*)["']`).exec(tag);
  return found ? found[1] : '';
}

function millimetres(text) {
  const found = LENGTH.exec(text);
  return found ? Number(found[1]) * MM_PER[found[2] || ''] : 0;
}

/** Size of an SVG by its width and height, else by its view box at 96 to the inch; null if neither stands there. */
export function svgSize(text) {
  const tag = (/<svg\b[^>]*>/.exec(text) || [''])[0];
  const wide = attribute(tag, 'width');
  const widthMm = millimetres(wide);
  const heightMm = millimetres(attribute(tag, 'height'));
  if (widthMm > 0 && heightMm > 0) {
    return { widthMm, heightMm, stated: /(mm|cm|in|pt|pc)\s*$/.test(wide) };
  }
  const box = attribute(tag, 'viewBox').trim().split(/[\s,]+/).map(Number);
  return box.length === 4 && box[2] > 0 && box[3] > 0
    ? { widthMm: box[2] * MM_PER.px, heightMm: box[3] * MM_PER.px, stated: false } : null;
}

/** Dots per metre of a PNG (its pHYs chunk), or 0 when it states none. */
export function pngDotsPerMetre(buffer) {
  const view = new DataView(buffer);
  let at = 8;
  while (at + 21 <= view.byteLength) {
    const size = view.getUint32(at);
    const type = String.fromCharCode(...new Uint8Array(buffer, at + 4, 4));
    if (type === 'pHYs') {
      return view.getUint8(at + 16) === 1 ? view.getUint32(at + 8) : 0;
    }
    if (type === 'IDAT') {
      return 0;
    }
    at += size + 12;
  }
  return 0;
}

/** Size of a picture with this many pixels. */
export function pixelSize(width, height, dotsPerMetre) {
  const mm = dotsPerMetre ? 1000 / dotsPerMetre : MM_PER.px;
  return { widthMm: width * mm, heightMm: height * mm, stated: dotsPerMetre > 0 };
}
