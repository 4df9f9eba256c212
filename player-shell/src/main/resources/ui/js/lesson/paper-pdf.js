import { address } from '../api.js';
import { button, el } from '../dom.js';
import { openPdf } from '../pdf.js';

const LARGE = 1.8;

/** Draws one page as wide as the paper; its words also go to a text that only screen readers see. */
async function draw(parts, page, large) {
  const { canvas, words, sheet } = parts;
  const base = page.getViewport({ scale: 1 });
  const wide = Math.max(200, sheet.clientWidth) * (large ? LARGE : 1) * (window.devicePixelRatio || 1);
  const viewport = page.getViewport({ scale: wide / base.width });
  canvas.width = Math.floor(viewport.width);
  canvas.height = Math.floor(viewport.height);
  const content = page.getTextContent();
  const task = page.render({ canvasContext: canvas.getContext('2d'), canvas, viewport });
  await task.promise;
  words.textContent = (await content).items.map((item) => item.str + (item.hasEOL ? '\n' : '')).join(' ');
}

/** A PDF in the page: one page at a time, turned by the foot, the keys or the picture. */
export async function showPdf(body, paper) {
  const pdf = await openPdf(address(paper.url));
  const canvas = el('canvas', { 'aria-hidden': 'true' });
  const words = el('div', { class: 'heard' });
  const sheet = el('div', { class: 'pdf-page' }, canvas, words);
  const parts = { canvas, words, sheet };
  let current = 1;
  let queue = Promise.resolve();
  body.replaceChildren(sheet);

  const show = () => {
    const wanted = current;
    queue = queue.then(async () => {
      if (wanted === current) {
        await draw(parts, await pdf.getPage(wanted), sheet.classList.contains('large'));
        sheet.dataset.page = String(wanted);
      }
    }).catch(() => undefined);
    return queue;
  };

  const larger = button({
    label: 'Larger', sign: 'plus', kind: 'bare', 'aria-pressed': 'false',
    onClick: () => {
      const on = sheet.classList.toggle('large');
      larger.setAttribute('aria-pressed', String(on));
      show();
    },
  });
  let width = 0;
  const observer = new ResizeObserver(() => {
    if (Math.abs(sheet.clientWidth - width) > 8) {
      width = sheet.clientWidth;
      show();
    }
  });
  observer.observe(sheet);
  return {
    pages: pdf.numPages,
    tools: [larger],
    goTo: (page) => {
      current = page;
      body.parentElement?.scrollTo(0, 0);
      return show();
    },
    dispose: () => {
      observer.disconnect();
      pdf.destroy?.();
    },
  };
}
