import { byId, el } from '../dom.js';
import { inUnits } from './words.js';

const LID = 'Open the lid when';
const ESTIMATE = 'An estimate';

/** Warnings and cautions of this firing, where they matter, in the person's units. */
export function connectNotes(store) {
  const draw = () => {
    const { answer, settings, known } = store.getState();
    if (!answer) {
      return;
    }
    const important = (line) => !line.startsWith(LID) && !line.startsWith(ESTIMATE);
    byId('warnings').replaceChildren(...answer.warnings.map((line) => el('li', { class: important(line) ? 'important' : null }, inUnits(line, settings))));
    byId('cautions').replaceChildren(...answer.cautions.map((line) => el('li', {}, inUnits(line, settings))));
    document.querySelector('.model').textContent = `Model: ${known.model}. Your local code, the makers’ instructions and a licensed electrician come before anything here.`;
  };
  store.watch((state) => state.answer, draw);
  store.watch((state) => state.settings, draw);
}
