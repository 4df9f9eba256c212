import { byId, el } from '../dom.js';
import { clock } from '../units.js';

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
  const where = note.page ? `page ${note.page}` : `at ${clock(note.atMillis / 1000)}`;
  return el('div', { class: 'notice bad' },
    el('p', {}, el('strong', {}, `Correction, ${where}${note.day ? ` (${note.day})` : ''}: `), note.text));
}

/** Shows a teacher's correction while its page lies open or its time is near. */
export function noteCorrections(store) {
  const notes = store.getState().lesson.corrections || [];
  store.watch((state) => notes.map((note) => (belongs(note, state) ? '1' : '0')).join(''), (bits) => {
    byId('paper-notes').replaceChildren(...notes.filter((_, i) => bits[i] === '1').map(slip));
  });
}
