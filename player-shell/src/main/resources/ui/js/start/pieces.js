import { address } from '../api.js';
import { button, byId, el, icon } from '../dom.js';
import { errorNotice } from '../notice.js';
import { several } from '../units.js';
import { beginForm } from '../pieces/begin-form.js';
import { fetchPieces, keepsItself, savePiece, takeUpPiece } from '../pieces/pieces.js';
import { stepLine } from '../pieces/step-line.js';
import { lessonUrl } from './go-on.js';

const day = (millis) => new Date(millis).toLocaleDateString();

function lessonLink(piece) {
  return piece.lesson
    ? el('a', { class: 'button', href: lessonUrl(piece.edition, piece.lesson), 'aria-label': `To the lesson of ${piece.name}` }, icon('go'), 'Its lesson')
    : null;
}

/** The kiln sheet of a piece: its own block, beside its lesson's schedule. */
function kilnLink(piece) {
  const query = new URLSearchParams({ piece: piece.id, ...(piece.lesson ? { e: piece.edition, l: piece.lesson } : {}) });
  return el('a', { class: 'button bare', href: `kiln.html?${query}`, 'aria-label': `Kiln sheet of ${piece.name}` }, icon('firing'), 'Kiln sheet');
}

/** Sheets, firings, pictures and questions of a piece have a page of their own. */
const pageLink = (piece) => el('a', { class: 'button', href: address('ui/piece.html', { piece: piece.id }), 'aria-label': `Sheets, firings and pictures of ${piece.name}` }, icon('image'), 'Its page');

function stepsBehind(piece) {
  return piece.steps.length
    ? el('details', {}, el('summary', {}, `${several(piece.steps.length, 'step')} done`),
      el('ol', {}, piece.steps.map((step) => el('li', {}, `${step.text} `, el('small', {}, day(step.doneAtMillis))))))
    : null;
}

function activePiece(piece, tools) {
  const name = el('input', {
    type: 'text', class: 'piece-title', maxlength: 200, required: true, value: piece.name, 'aria-label': 'Name of the piece',
  });
  keepsItself(name, async (value, leaving) => tools.put(await savePiece(piece, 'name')(value, leaving)), tools.fail);
  return el('li', { class: 'piece-card', 'data-piece': piece.id },
    name,
    el('div', { class: 'piece-row' },
      ...stepLine(piece, { onChange: tools.put, onFinish: (changed) => { tools.put(changed); tools.render(); }, fail: tools.fail }),
      pageLink(piece), lessonLink(piece), kilnLink(piece)),
    stepsBehind(piece));
}

function finishedPieces(pieces, tools) {
  return pieces.length
    ? el('details', { class: 'finished' }, el('summary', {}, `${several(pieces.length, 'finished piece')}`),
      el('ul', {}, pieces.map((piece) => el('li', {}, piece.name, ' ', pageLink(piece), ' ', button({
        text: 'Take it up again', kind: 'bare', 'aria-label': `Take ${piece.name} up again`,
        onClick: () => takeUpPiece(piece).then((changed) => { tools.put(changed); tools.render(); }).catch(tools.fail),
      }), stepsBehind(piece)))))
    : null;
}

/** What the student is making, with the next step of each piece; first on the page while there is one in work. */
export function connectPieces(section) {
  const list = byId('piece-list');
  let pieces = [];
  const tools = {
    put: (changed) => { pieces = pieces.map((piece) => (piece.id === changed.id ? changed : piece)); },
    fail: (error) => list.prepend(errorNotice(error)),
    render,
  };
  const beginButton = () => button({
    id: 'piece-begin', text: pieces.length ? 'Start another piece' : 'Start a piece', sign: 'plus', kind: pieces.length ? 'bare' : null, onClick: begin,
  });

  function begin() {
    const { form, focus } = beginForm({
      place: {},
      onBegun: (piece) => { pieces = [piece, ...pieces]; render(); list.querySelector('.piece-step').focus(); },
      onCancel: () => { render(); byId('piece-begin').focus(); },
    });
    byId('piece-begin').replaceWith(form);
    focus();
  }

  function render() {
    const active = pieces.filter((piece) => piece.state === 'active');
    const rest = [
      active.length ? null : el('p', { class: 'quiet' }, 'What you are making, and its next step, from the first sheet to the last firing. It is kept on this laptop.'),
      beginButton(),
      finishedPieces(pieces.filter((piece) => piece.state === 'done'), tools),
    ];
    list.replaceChildren(...(active.length ? [el('ul', { class: 'piece-cards' }, active.map((piece) => activePiece(piece, tools)))] : []), ...rest.filter(Boolean));
    byId(active.length ? 'pieces-first' : 'pieces-last').append(section);
    section.hidden = false;
  }

  const load = () => fetchPieces().then((found) => { pieces = found; render(); }).catch(tools.fail);
  window.addEventListener('pageshow', (event) => event.persisted && load());
  load();
}
