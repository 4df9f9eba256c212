import { el } from '../dom.js';
import { openPdf } from '../pdf.js';
import { pixelSize, pngDotsPerMetre, svgSize } from './size.js';

const PRINT_DOTS_PER_INCH = 300;

async function pdfSheet(url, title) {
  const pdf = await openPdf(url);
  const page = await pdf.getPage(1);
  const points = page.getViewport({ scale: 1 });
  const viewport = page.getViewport({ scale: PRINT_DOTS_PER_INCH / 72 });
  const node = el('canvas', { role: 'img', 'aria-label': title, width: Math.ceil(viewport.width), height: Math.ceil(viewport.height) });
  await page.render({ canvasContext: node.getContext('2d'), canvas: node, viewport, intent: 'print' }).promise;
  return { node, widthMm: (points.width * 25.4) / 72, heightMm: (points.height * 25.4) / 72, stated: true };
}

async function picture(url, title) {
  const node = el('img', { src: url, alt: title });
  await node.decode().catch(() => undefined);
  return node;
}

async function svgSheet(url, title) {
  const [node, text] = await Promise.all([picture(url, title), fetch(url).then((r) => r.text())]);
  const size = svgSize(text) || pixelSize(node.naturalWidth, node.naturalHeight, 0);
  return { node, ...size };
}

async function pixelSheet(url, title) {
  const [node, bytes] = await Promise.all([picture(url, title), fetch(url).then((r) => r.arrayBuffer())]);
  return { node, ...pixelSize(node.naturalWidth, node.naturalHeight, pngDotsPerMetre(bytes)) };
}

/**
 * A template as a node and its true size.
 * @returns {Promise<{node: Element, widthMm: number, heightMm: number, stated: boolean}>}
 */
export function templateSheet(url, mediaType, title) {
  if (mediaType === 'application/pdf') {
    return pdfSheet(url, title);
  }
  return mediaType.startsWith('image/svg') ? svgSheet(url, title) : pixelSheet(url, title);
}
