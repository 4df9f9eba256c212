import { address, post } from '../api.js';
import { button, byId, el } from '../dom.js';
import { errorNotice } from '../notice.js';
import { openPanel } from '../panel.js';
import { choice } from '../settings-form.js';
import { kilnOf, requestOf } from './setup.js';
import { inWords } from './words.js';

/** What is taken to the kiln: one page of paper, and the times for a calendar. */

export function titleOf(state) {
  const { piece, lesson } = state;
  return piece ? piece.name : lesson ? `${lesson.number}. ${lesson.title}` : 'Kiln sheet';
}

function glassName({ known, glasses, setup }) {
  return ([...glasses, ...known.kinds].find((glass) => glass.id === setup.glass) || {}).name || '';
}

function paperOf(state, kind, size) {
  const kiln = kilnOf(state);
  const beside = state.second ? 'the second plan' : state.schedule ? `the lesson's schedule (${state.schedule.name.replace(/\.firing\.csv$/i, '')})` : '';
  return {
    kind, size, title: titleOf(state).slice(0, 100), glass: glassName(state), kiln: kiln ? kiln.name : 'an ordinary kiln, not described', beside,
    temperature: state.settings.temperatureUnit, length: state.settings.lengthUnit,
  };
}

/** Lets the browser fetch a file that the bench has made. */
export function fetchMade(made) {
  el('a', { href: address(made.address), download: '' }).click();
}

function openPrint(store) {
  let size = store.getState().settings.lengthUnit === 'in' ? 'Letter' : 'A4';
  const said = el('div', { role: 'status' });
  const make = (kind) => async () => {
    const state = store.getState();
    try {
      const made = await post('api/firing/paper', { ...requestOf(state), paper: paperOf(state, kind, size) });
      if (made.problem) {
        said.replaceChildren(el('p', { class: 'notice bad' }, `${made.problem.field}: ${inWords(made.problem.said, state.settings)}`));
        return;
      }
      fetchMade(made);
      said.replaceChildren(el('p', { class: 'notice' }, kind === 'pdf' ? 'The sheet is among your downloads. Print it, and leave the laptop away from the kiln.' : 'The calendar file is among your downloads; open it with your calendar.'));
    } catch (error) {
      said.replaceChildren(errorNotice(error));
    }
  };
  openPanel('Paper and calendar',
    el('p', {}, 'One page: curve, lines, clock, block, cautions, and a column for the times that you see.'),
    choice({ key: 'paper-size', title: 'Paper', options: [['A4', 'A4'], ['Letter', 'Letter']] }, size, (patch) => { size = patch['paper-size']; }),
    el('div', { class: 'row' },
      button({ id: 'make-pdf', text: 'Kiln sheet (PDF)', sign: 'print', kind: 'main', onClick: make('pdf') }),
      button({ id: 'make-calendar', text: 'Times for my calendar', sign: 'clock', onClick: make('calendar') })),
    said);
}

export function connectPapers(store) {
  byId('print-button').addEventListener('click', () => openPrint(store));
}
