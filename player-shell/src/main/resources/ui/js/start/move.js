import { dropFile, post } from '../api.js';
import { codesView } from '../code.js';
import { button, el } from '../dom.js';
import { errorNotice, guarded } from '../notice.js';
import { openPanel } from '../panel.js';
import { saveText } from '../save-text.js';
import { several } from '../units.js';

const spokenLine = (spoken) => el('p', { class: 'spoken', id: 'spoken' }, spoken);

/** On the new laptop: shows the ask, and where its answer goes. */
export async function askForPlace(trouble) {
  const ask = await guarded(trouble, () => post('api/move/ask'));
  if (ask) {
    openPanel('Ask another laptop for its place',
      el('ol', {},
        el('li', {}, 'Save this ask to a stick.'),
        el('li', {}, 'On the laptop that opens the course now, drop it on the start page.'),
        el('li', {}, 'Both screens must show these characters:', spokenLine(ask.spoken)),
        el('li', {}, 'Bring the file that comes back and drop it here. No internet is needed.')),
      el('div', { class: 'row' }, button({ text: 'Save the ask', sign: 'save', kind: 'main', onClick: () => saveText(ask.text, ask.fileName) })),
      codesView(ask.codes, 'The ask as a code', 'Or show this code to the camera of the other laptop: on its start page, “Read a code with the camera”.'),
      el('pre', { class: 'card-text', tabindex: '0', 'aria-label': 'Text of the ask' }, ask.text));
  }
}

function passedPanel(file) {
  openPanel('Passed on',
    el('p', {}, 'This laptop gave its place away. Bring this file to the new laptop and drop it on its start page.'),
    el('p', {}, 'It is kept here too: under the license you can save it again, as often as you like.'),
    el('div', { class: 'row' }, button({ text: 'Save the file', sign: 'save', kind: 'main', onClick: () => saveText(file.text, file.fileName) })),
    codesView(file.codes, 'The place that is passed on', 'Or show these codes to the camera of the new laptop: on its start page, “Read a code with the camera”.'),
    el('pre', { class: 'card-text', tabindex: '0', 'aria-label': 'Text of the move' }, file.text));
}

function placeChoice(place, spoken, text, refresh) {
  const trouble = el('div', {});
  const same = el('input', { type: 'checkbox' });
  const pass = button({
    text: 'Pass this place on',
    kind: 'main',
    disabled: true,
    onClick: async () => {
      const file = await guarded(trouble, () => post('api/move/pass', { ask: text, spoken, license: place.license }));
      if (file) {
        passedPanel(file);
        refresh();
      }
    },
  });
  same.addEventListener('change', () => { pass.disabled = !same.checked; });
  return el('section', { class: 'choices' }, el('h3', {}, `${place.name}: ${place.series.join(', ')}`),
    place.left < 1 ? el('p', {}, 'No move is left for this place. Send the card of the new laptop to your teacher.') : [
      el('p', {}, `${several(place.left, 'move')} left. Afterwards this laptop opens nothing of it; your notes stay here.`),
      el('p', {}, 'If the new laptop is lost before the file arrives, only your teacher can help.'),
      el('label', {}, same, 'Both screens show the same characters'), trouble, el('div', { class: 'row' }, pass)]);
}

/** On the old laptop: an ask was handed over. */
export async function answerAsk(blob, refresh) {
  try {
    const text = await blob.text();
    const look = await lookAt(blob);
    openPanel('Move to another laptop',
      el('p', {}, 'Another laptop asks for a place. Compare its screen with this one:'), spokenLine(look.spoken),
      look.places.length ? look.places.map((place) => placeChoice(place, look.spoken, text, refresh))
        : el('p', {}, 'No course is open on this laptop, so there is no place to pass on.'));
  } catch (error) {
    openPanel('Move to another laptop', errorNotice(error));
  }
}

const lookAt = (blob) => dropFile(blob, 'ask', 'api/move/look');

/** Under a license that went away: the file once more. */
export async function passedAgain(license, trouble) {
  const file = await guarded(trouble, () => post('api/move/again', { license }));
  if (file) {
    passedPanel(file);
  }
}
