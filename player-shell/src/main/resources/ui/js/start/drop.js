import { dropFile } from '../api.js';
import { button, byId, el } from '../dom.js';
import { errorNotice } from '../notice.js';
import { cameraButton } from './camera.js';
import { answerAsk } from './move.js';

const MAX_BYTES = 16 * 1024 * 1024;
const FOLDER = {
  happened: 'That is a folder; a browser may not hand over where a folder lies.',
  safe: 'Nothing was changed.',
  next: 'Press “Look again” under “Course sticks and folders”, or type the folder’s place there.',
};
const FRONT_PAGE = 'lehrcase.front';
const TOO_LARGE = {
  happened: 'That file is too large to be a license, card or letter.',
  safe: 'Nothing was changed.',
  next: 'A course is brought in under “Course sticks and folders”, without copying it through the browser.',
};

const KIND = { accepted: 'notice', known: 'notice', refused: 'notice bad' };

function answerNotice(answer) {
  return el('div', { class: KIND[answer.outcome] || 'notice care' },
    el('p', {}, el('strong', {}, answer.message)),
    answer.next ? el('p', {}, answer.next) : null);
}

function say(node) {
  const place = byId('drop-answers');
  place.prepend(node);
  place.scrollIntoView({ block: 'nearest' });
}

async function handOver(blob, name, refresh) {
  try {
    if (blob.size > MAX_BYTES) {
      throw TOO_LARGE;
    }
    const answer = await dropFile(blob, name);
    if (answer.kind === 'ask') {
      await answerAsk(blob, refresh);
    } else {
      say(answerNotice(answer));
    }
    refresh();
  } catch (error) {
    say(errorNotice(error));
  }
}

async function handOverAll(files, refresh) {
  byId('drop-answers').replaceChildren();
  for (const file of Array.from(files)) {
    await handOver(file, file.name, refresh);
  }
}

/** A text without a file: pasted, typed, or read from codes. */
async function handOverText(text, refresh) {
  byId('drop-answers').replaceChildren();
  await handOver(new Blob([text], { type: 'text/plain' }), 'text.txt', refresh);
}

/** Opens the system's file window; whatever is chosen goes to the one drop place. */
export function chooseFile(refresh) {
  const input = el('input', { type: 'file', multiple: true });
  input.addEventListener('change', () => handOverAll(input.files, refresh));
  input.click();
}

function pasteForm(refresh) {
  const text = el('textarea', { id: 'pasted', spellcheck: 'false', 'aria-label': 'The text of a license, card or key letter, or its lines typed from paper' });
  const form = el('div', { hidden: true }, text,
    button({
      text: 'Hand over this text', kind: 'main',
      onClick: async () => {
        await handOverText(text.value, refresh);
        text.value = '';
      },
    }));
  return { form, text };
}

const folderIn = (item) => {
  const entry = item.kind === 'file' ? item.webkitGetAsEntry?.() : null;
  return entry && entry.isDirectory ? entry : null;
};

/** A browser tells no place, but lets us read: by its front page the bench finds the folder itself. */
function handOverFolder(folder, refresh) {
  byId('drop-answers').replaceChildren();
  folder.getFile(FRONT_PAGE, {},
    (entry) => entry.file((file) => handOver(file, FRONT_PAGE, refresh), () => say(errorNotice(FOLDER))),
    () => say(errorNotice(FOLDER)));
}

function listenToDrops(place, refresh) {
  const over = (on) => (event) => {
    event.preventDefault();
    place.classList.toggle('over', on);
  };
  document.addEventListener('dragover', over(true));
  document.addEventListener('dragleave', over(false));
  document.addEventListener('drop', (event) => {
    over(false)(event);
    const folder = Array.from(event.dataTransfer.items || []).map(folderIn).find(Boolean);
    if (folder) {
      handOverFolder(folder, refresh);
    } else if (event.dataTransfer.files.length) {
      handOverAll(event.dataTransfer.files, refresh);
    } else {
      const text = event.dataTransfer.getData('text/plain');
      handOver(new Blob([text], { type: 'text/plain' }), 'dropped.txt', refresh);
    }
  });
}

/** The one place that takes everything, recognised by content: a whole page to aim at, or two buttons. */
export function dropPlace(place, refresh) {
  const { form, text } = pasteForm(refresh);
  const paste = button({
    text: 'Paste a text', 'aria-expanded': 'false',
    onClick: () => {
      form.hidden = !form.hidden;
      paste.setAttribute('aria-expanded', String(!form.hidden));
      if (!form.hidden) {
        text.focus();
      }
    },
  });
  place.append(
    el('p', {}, 'License, key letter, a laptop card, a correction, the folder of a course: drop it anywhere on this page. It is recognised by what is in it.'),
    el('div', { class: 'row' }, button({ text: 'Choose a file', kind: 'main', onClick: () => chooseFile(refresh) }), paste,
      cameraButton((code) => handOverText(code, refresh))),
    form,
    el('div', { id: 'drop-answers', 'aria-live': 'polite' }));
  listenToDrops(place, refresh);
}
