import { byId, el } from '../dom.js';
import { inWords } from './words.js';

/** Said of every firing. */
const ALWAYS = ['LID', 'ESTIMATE'];

/** Warnings and cautions of this firing, where they matter, in the person's units. */
export function connectNotes(store) {
  const draw = () => {
    const { answer, settings, known } = store.getState();
    if (!answer) {
      return;
    }
    byId('warnings').replaceChildren(...answer.notes.map((note) => el('li', { class: ALWAYS.includes(note.topic) ? null : 'important' }, inWords(note, settings))));
    byId('cautions').replaceChildren(...answer.cautions.map((line) => el('li', {}, inWords(line, settings))));
    document.querySelector('.model').textContent = `Model: ${known.model}. Your local code, the makers’ instructions and a licensed electrician come before anything here.`;
  };
  store.watch((state) => state.answer, draw);
  store.watch((state) => state.settings, draw);
}
