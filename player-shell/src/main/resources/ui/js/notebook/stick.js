import { get, post } from '../api.js';
import { button, el } from '../dom.js';
import { errorNotice, goodNotice } from '../notice.js';
import { several } from '../units.js';

function broughtWords(brought) {
  const words = [];
  if (brought.notebooks.length) {
    words.push(`${brought.notebooks.join(', ')}: ${several(brought.changed, 'note')} new or changed here.`);
  }
  if (brought.apart) {
    words.push(`${several(brought.apart, 'note')} had been changed on both laptops: both versions stand here. Put away the one that you do not want.`);
  }
  if (brought.shut) {
    words.push(`${several(brought.shut, 'copy').replace('copys', 'copies')} of another license stayed shut.`);
  }
  return words;
}

/** Copies the open notebook to a stick and brings copies in; `changed` is called when notes came. */
export async function connectStick(place, changed) {
  const said = el('div', {});
  const guard = (action) => () => action().catch((error) => said.replaceChildren(errorNotice(error)));
  const copy = (folder) => guard(async () => {
    const { file, name } = await post('api/notebooks/copy', { folder });
    said.replaceChildren(goodNotice(`“${name}” is copied: ${file}`, 'Only laptops of your license open it. Your teacher’s desk could open it too.'));
  })();
  const bring = (folder) => guard(async () => {
    said.replaceChildren(goodNotice(...broughtWords(await post('api/notebooks/bring', { folder }))));
    await changed();
  })();
  const typed = el('input', { type: 'text', id: 'copy-folder', 'aria-label': 'Another folder', placeholder: 'or the path of a folder' });
  const row = (folder, count) => el('div', { class: 'row stick-row' }, el('span', {}, folder),
    button({ text: 'Copy this notebook there', onClick: () => copy(folder) }),
    count ? button({ text: `Bring ${several(count, 'notebook')} in`, onClick: () => bring(folder) }) : null);
  const { places } = await get('api/notebooks/places').catch(() => ({ places: [] }));
  place.replaceChildren(
    el('h2', {}, 'Take it along'),
    el('p', { class: 'quiet' }, 'A copy on a stick is locked to your license. On another laptop of the same license, bring it in: notes are merged one by one, and where both were changed, both are kept. In a class, each takes the own notebook home like this.'),
    ...places.map((one) => row(one.folder, one.copies)),
    el('div', { class: 'row' }, typed, button({ text: 'Copy there', id: 'copy-there', onClick: () => copy(typed.value) }), button({ text: 'Bring in from there', id: 'bring-there', onClick: () => bring(typed.value) })),
    said);
}
