import { el } from '../dom.js';
import { openPdf } from '../pdf.js';
import { pixelSize, pngDotsPerMetre, svgSize } from './size.js';

const PRINT_DOTS_PER_INCH = 300;
const MANY_PAGES = 10;

async function pdfPage(pdf, number, title) {
  const page = await pdf.getPage(number);
  const points = page.getViewport({ scale: 1 });
  const dots = pdf.numPages > MANY_PAGES ? PRINT_DOTS_PER_INCH / 2 : PRINT_DOTS_PER_INCH; // memory of an old laptop
  const viewport = page.getViewport({ scale: dots / 72 });
  const node = el('canvas', { role: 'img', 'aria-label': title, width: Math.ceil(viewport.width), height: Math.ceil(viewport.height) });
  await page.render({ canvasContext: node.getContext('2d'), canvas: node, viewport, intent: 'print' }).promise;
  return { node, widthMm: (points.width * 25.4) / 72, heightMm: (points.height * 25.4) / 72, stated: true };
}

async function pdfSheets(url, title) {
  const pdf = await openPdf(url);
  const sheets = [];
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const name = pdf.numPages > 1 ? `${title}, page ${number} of ${pdf.numPages}` : title;
    sheets.push({ ...await pdfPage(pdf, number, name), title: name });
  }
  return sheets;
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
 * A template as nodes with their true size: one for a picture, one for each page of a PDF.
 * @returns {Promise<{node: Element, widthMm: number, heightMm: number, stated: boolean, title: string}[]>}
 */
export async function templateSheets(url, mediaType, title) {
  if (mediaType === 'application/pdf') {
    return pdfSheets(url, title);
  }
  const sheet = await (mediaType.startsWith('image/svg') ? svgSheet(url, title) : pixelSheet(url, title));
  return [{ ...sheet, title }];
}
