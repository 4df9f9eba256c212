import { address } from '../api.js';
import { button, el, icon } from '../dom.js';
import { length } from '../units.js';
import { templateSheets } from '../template/sheet.js';

/** A template beside the picture: whole, or at its true size; printing opens its own page. */
export async function showTemplate(body, paper, store) {
  const sheets = await templateSheets(address(paper.url), paper.mediaType, paper.title);
  const [sheet] = sheets;
  const view = el('div', { class: 'template-view fit', 'data-mm-wide': sheet.widthMm, 'data-mm-high': sheet.heightMm }, sheets.map((one) => one.node));
  const words = el('p', { class: 'size-words' });
  const size = (on) => {
    sheets.forEach((one) => {
      one.node.style.width = on ? `${one.widthMm}mm` : '100%';
      one.node.style.height = on ? `${one.heightMm}mm` : 'auto';
    });
  };
  size(false);
  const unwatch = store.watch((state) => state.settings.lengthUnit, (unit) => {
    words.textContent = `${length(sheet.widthMm, unit)} wide, ${length(sheet.heightMm, unit)} high.${sheets.length > 1 ? ` ${sheets.length} pages.` : ''}${sheet.stated ? '' : ' The file states no size; this is its size at 96 dots to the inch.'}`
      + ' A screen shows true size only roughly; the print is exact.';
  });
  const trueSize = button({
    text: 'True size', 'aria-pressed': 'false',
    onClick: () => {
      const fits = view.classList.toggle('fit');
      trueSize.setAttribute('aria-pressed', String(!fits));
      size(!fits);
    },
  });
  const { lesson } = store.getState();
  const print = el('a', {
    class: 'button', id: 'print-template', target: '_blank', rel: 'noopener',
    href: address('ui/template.html', { e: lesson.edition, l: lesson.lesson.id, a: paper.id }),
  }, icon('print'), 'Print true size');
  body.replaceChildren(view, words);
  return { pages: 0, tools: [trueSize, print], dispose: unwatch };
}
