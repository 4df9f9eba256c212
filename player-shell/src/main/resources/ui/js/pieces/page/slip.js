import { get } from '../../api.js';
import { byId, el } from '../../dom.js';
import { savePaper } from '../../sheets/papers.js';
import { clock } from '../../units.js';

const KEPT = (piece) => `question-${piece.id}`;

/** Lesson and time, as the student stopped there; both can be changed. */
async function lessonWords(piece) {
  if (!piece.lesson) {
    return '';
  }
  try {
    const lesson = await get('api/lesson', { e: piece.edition, l: piece.lesson });
    const seconds = lesson.lesson.positionSeconds || lesson.positionSeconds || 0;
    return `${lesson.lesson.title}${seconds >= 1 ? `, at ${clock(seconds)}` : ''}`;
  } catch (notHere) {
    return '';
  }
}

/** Text that is being written stays in this browser until the slip is saved. */
function draft(piece) {
  try {
    return window.localStorage.getItem(KEPT(piece)) || '';
  } catch (forbidden) {
    return '';
  }
}

function keepDraft(piece, text) {
  try {
    window.localStorage.setItem(KEPT(piece), text);
  } catch (forbidden) {
    // Private windows have no storage; the text stays on the page.
  }
}

export async function showSlip(state) {
  const { piece, settings } = state;
  const question = el('textarea', { id: 'slip-question', rows: 4, maxlength: 4000 });
  question.value = draft(piece);
  question.addEventListener('input', () => keepDraft(piece, question.value));
  const lesson = el('input', { type: 'text', id: 'slip-lesson', maxlength: 150 });
  const trouble = el('p', { class: 'field-trouble', id: 'slip-trouble', role: 'alert' });
  const said = el('div', { role: 'status' });
  const save = () => {
    trouble.textContent = question.value.trim() ? '' : 'Write what happened first.';
    if (trouble.textContent) {
      question.focus();
      return;
    }
    savePaper(`api/pieces/${piece.id}/slip`, {
      question: question.value, lesson: lesson.value,
      paper: { size: settings.lengthUnit === 'in' ? 'Letter' : 'A4', length: settings.lengthUnit, temperature: settings.temperatureUnit },
    }, said, 'The question slip is among your downloads. Look through it before you send it.');
  };
  byId('slip').replaceChildren(
    el('p', { class: 'hint' }, 'One PDF with your question, lesson and time, plan, schedule as typed, readings and pictures. Send it from any phone or computer.'),
    el('div', { class: 'field' }, el('label', { for: 'slip-question' }, 'What happened?'), question, trouble),
    el('div', { class: 'field' }, el('label', { for: 'slip-lesson' }, 'Lesson and time'), lesson),
    el('button', { type: 'button', class: 'main', id: 'save-slip', on: { click: save } }, 'Save the question slip'), said);
  lesson.value = await lessonWords(piece);
}
