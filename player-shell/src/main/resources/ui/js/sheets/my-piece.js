import { address, get, put } from '../api.js';
import { byId, el } from '../dom.js';
import { errorNotice } from '../notice.js';
import { beginPiece, fetchPieces } from '../pieces/pieces.js';
import { shownPlan } from './plan.js';

/** The plan as somebody's piece: kept with it, and its block opened in the kiln sheet. */

/** What the kiln sheet opens with: the fused height follows from the volume of glass in its bed. */
export function blockOf({ own, answer }) {
  const { bed_mm: bed, liner_height_mm: linerHigh } = answer.block;
  return {
    task: 'fuse', by: 'volume', dams: true, sheets: own.sheets, sheet_mm: own.thickness,
    sheet_length_mm: Math.max(own.width, own.height), sheet_width_mm: Math.min(own.width, own.height),
    bed_length_mm: Math.max(...bed), bed_width_mm: Math.min(...bed), liner_mm: linerHigh > 0 ? (bed[0] - own.width) / 2 : 0,
  };
}

async function openKiln(state) {
  const id = state.piece ? state.piece.id : 'last';
  const before = (await get(`api/blocks/${id}`)).figures || (await get('api/blocks/last')).figures || {};
  const kept = await put(`api/blocks/${id}`, { name: '', figures: { ...before, ...blockOf(state) } });
  if (kept.problem) {
    throw Object.assign(new Error(kept.problem.message), { happened: kept.problem.message });
  }
  const follows = state.from || {};
  window.location.href = address('kiln.html', state.piece ? { piece: id, ...(follows.l ? { e: follows.e, l: follows.l } : {}) } : {});
}

async function keep(state) {
  const { from, plan } = state;
  if (!state.piece) {
    state.piece = await beginPiece(plan.name || 'My piece', from && from.l ? { edition: from.e, lesson: from.l } : {});
  }
  const kept = await put(`api/pieces/${state.piece.id}/plan`, { ...shownPlan(state) });
  if (kept.problem) {
    throw Object.assign(new Error(kept.problem.message), { happened: kept.problem.message, safe: 'The plan that was kept before is kept.' });
  }
  await put(`api/blocks/${state.piece.id}`, { name: '', figures: { ...((await get(`api/blocks/${state.piece.id}`)).figures || {}), ...blockOf(state) } });
}

function show(state) {
  byId('keep-words').textContent = state.piece ? `Keep with ${state.piece.name}` : 'Make this my piece';
  const link = byId('to-piece');
  link.hidden = !state.piece;
  if (state.piece) {
    link.href = address('ui/piece.html', { piece: state.piece.id });
  }
}

/** Takes the piece that the address names, with the plan that was kept with it. */
export async function pieceOf(place) {
  const id = place.get('piece');
  if (!id) {
    return null;
  }
  const [pieces, follow] = await Promise.all([fetchPieces(), get(`api/pieces/${id}/follow`)]);
  const piece = pieces.find((one) => one.id === id);
  return piece ? { piece, plan: follow.plan } : null;
}

export function connectMyPiece(state) {
  const said = byId('piece-said');
  const doing = (work) => async () => {
    if (!state.answer) {
      return;
    }
    try {
      await work(state);
    } catch (error) {
      said.replaceChildren(error.happened ? errorNotice(error) : el('p', { class: 'notice bad' }, error.message));
    }
  };
  byId('keep-piece').addEventListener('click', doing(async () => {
    await keep(state);
    show(state);
    said.replaceChildren(el('p', { class: 'notice' }, `This plan is kept with ${state.piece.name}; it stands on the first page.`));
  }));
  byId('to-kiln').addEventListener('click', doing(openKiln));
  state.showPiece = () => show(state);
  show(state);
}

