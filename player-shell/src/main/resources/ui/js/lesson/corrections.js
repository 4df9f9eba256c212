import { byId, button, el } from '../dom.js';
import { correctionList, whereOf } from '../corrections.js';
import { closePanel, openPanel } from '../panel.js';
import { several } from '../units.js';

const NEAR_MILLIS = 15000;

function belongs(note, state) {
  if (note.page !== undefined && note.page !== null && note.page > 0) {
    const paper = state.papers.find((candidate) => candidate.id === state.paperId);
    const rightPaper = note.asset ? note.asset === state.paperId : Boolean(paper && paper.kind === 'pdf');
    return rightPaper && note.page === state.paperPage;
  }
  return note.atMillis !== undefined && note.atMillis !== null && Math.abs(note.atMillis - state.time * 1000) < NEAR_MILLIS;
}

function slip(note) {
  return el('div', { class: 'notice bad' },
    el('p', {}, el('strong', {}, `Correction, ${whereOf(note)}${note.day ? ` (${note.day})` : ''}: `), note.text));
}

function goTo(store, note) {
  closePanel();
  if (note.page) {
    const pdf = store.getState().papers.find((paper) => (note.asset ? paper.id === note.asset : paper.kind === 'pdf'));
    if (pdf) {
      store.dispatch('open', { id: pdf.id, page: note.page });
    }
  } else {
    store.dispatch('seek', note.atMillis / 1000);
  }
}

/** The list of all corrections of the lesson, behind a red button in the bar. */
export function connectCorrections(store) {
  const notes = store.getState().lesson.corrections || [];
  const open = byId('corrections-button');
  open.hidden = !notes.length;
  byId('corrections-words').textContent = several(notes.length, 'correction');
  open.addEventListener('click', () => openPanel('Corrections from your teacher', correctionList(notes, (note) => button({
    text: `Go to ${note.page ? '' : 'the film '}${whereOf(note)}`, onClick: () => goTo(store, note),
  }))));
}

/** Shows a teacher's correction while its page lies open or its time is near. */
export function noteCorrections(store) {
  const notes = store.getState().lesson.corrections || [];
  store.watch((state) => notes.map((note) => (belongs(note, state) ? '1' : '0')).join(''), (bits) => {
    byId('paper-notes').replaceChildren(...notes.filter((_, i) => bits[i] === '1').map(slip));
  });
}
