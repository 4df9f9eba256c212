import { button, el, icon } from '../dom.js';
import { errorNotice } from '../notice.js';
import { proseFrom } from '../prose.js';
import { noteKeeper } from './keeper.js';
import { removeNote, undoNote } from './notes.js';
import { keepPhoto, photoAddress } from './photo.js';
import { KIND_WORDS, pinWords } from './pin-words.js';
import { sketchDrawing } from './sketch-drawing.js';

const THUMB_PIXELS = 160;

function grow(area) {
  area.style.height = 'auto';
  area.style.height = `${area.scrollHeight + 4}px`;
}

function photoButton(keeper, again, fail) {
  const input = el('input', { type: 'file', accept: 'image/*', class: 'heard' });
  input.addEventListener('change', async () => {
    try {
      for (const file of Array.from(input.files)) {
        const id = await keepPhoto(file);
        keeper.change({ pictures: [...keeper.content().pictures.filter((one) => one !== id), id] });
      }
      await keeper.flush();
      again();
    } catch (error) {
      fail(error);
    }
    input.value = '';
  });
  return el('label', { class: 'button bare', title: 'Add a photo' }, input, icon('image'), el('span', {}, 'Photo'));
}

function photos(keeper, again) {
  return el('div', { class: 'note-photos' }, keeper.content().pictures.map((id) => el('figure', {},
    el('a', { href: photoAddress(id), target: '_blank', rel: 'noopener' }, el('img', { src: photoAddress(id), alt: 'My photo', loading: 'lazy' })),
    button({ label: 'Take this photo off the note', sign: 'close', kind: 'bare', onClick: () => {
      keeper.change({ pictures: keeper.content().pictures.filter((one) => one !== id) });
      keeper.flush();
      again();
    } }))));
}

/** Text that is read until it is touched, and then written; it keeps itself. */
function writing(keeper, isNote) {
  const place = el('div', { class: 'note-text' });
  const write = () => {
    const area = el(isNote ? 'textarea' : 'input', { class: 'note-area', maxlength: '20000', 'aria-label': 'Text of this note; Markdown', rows: isNote ? '3' : null });
    area.value = keeper.content().text;
    area.addEventListener('input', () => { keeper.change({ text: area.value }); grow(area); });
    area.addEventListener('blur', () => keeper.flush().then(read));
    area.addEventListener('keydown', (event) => event.key === 'Escape' && area.blur());
    place.replaceChildren(area);
    grow(area);
    area.focus();
  };
  const read = () => {
    const { html } = keeper.note();
    const prose = isNote ? el('div', { class: 'prose' }, proseFrom(html || '')) : el('p', { class: 'note-name' }, keeper.content().text);
    prose.addEventListener('click', (event) => !event.target.closest('a') && write());
    place.replaceChildren(keeper.content().text ? prose : el('p', { class: 'quiet' }, 'Nothing written yet.'));
  };
  read();
  return { place, write, read };
}

/**
 * One note, mark or loop as a card. `on`: {jump(note), kept(now, before), gone(now, before),
 * sketch(keeper, again)?, showSketch(note)?}; `title` names a paper by its id.
 */
export function noteCard(note, on, title) {
  const said = el('div', {});
  const fail = (error) => said.replaceChildren(errorNotice(error));
  const keeper = noteKeeper(note, { onKept: (now, before) => { said.replaceChildren(); on.kept(now, before); }, fail });
  const isNote = note.kind === 'note';
  const text = writing(keeper, isNote);
  const pictures = el('div', {});
  const again = () => {
    const { sketch } = keeper.content();
    pictures.replaceChildren(photos(keeper, again), sketch.length
      ? button({ label: 'Show this sketch over the picture', kind: 'note-sketch', onClick: () => on.jump(keeper.note()) }) : '');
    pictures.querySelector('.note-sketch')?.append(sketchDrawing(sketch, THUMB_PIXELS));
  };
  const undo = async () => {
    await keeper.flush();
    const before = keeper.note();
    const now = await undoNote(before);
    keeper.take(now);
    on.kept(now, before);
    text.read();
    again();
  };
  const away = async () => {
    await keeper.flush();
    const before = keeper.note();
    on.gone(await removeNote(before), before);
  };
  again();
  const node = el('article', { class: `note-card note-${note.kind}`, 'data-item': note.item },
    el('header', {}, button({ text: `${isNote ? '' : `${KIND_WORDS[note.kind]} `}${pinWords(note.content, title)}`, kind: 'bare note-pin', title: 'Go there', onClick: () => on.jump(keeper.note()) }),
      el('small', {}, new Date(note.changedAtMillis).toLocaleString([], { dateStyle: 'medium', timeStyle: 'short' }))),
    text.place, pictures,
    el('footer', { class: 'note-tools' },
      button({ text: 'Write', kind: 'bare note-write', onClick: text.write }),
      isNote ? photoButton(keeper, again, fail) : null,
      isNote && on.sketch ? button({ text: 'Sketch', kind: 'bare', sign: 'plus', onClick: () => on.sketch(keeper, again) }) : null,
      button({ text: 'Undo', kind: 'bare note-undo', title: 'What stood here before', onClick: () => undo().catch(fail) }),
      button({ label: 'Put this note away', sign: 'close', kind: 'bare note-away', onClick: () => away().catch(fail) })), said);
  return { node, write: text.write, end: keeper.end, item: note.item };
}
