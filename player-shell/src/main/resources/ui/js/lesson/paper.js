import { address } from '../api.js';
import { byId, button, el, icon, setIcon } from '../dom.js';
import { errorNotice } from '../notice.js';
import { closePanel, openPanel } from '../panel.js';
import { loops } from './loop.js';
import { momentAt } from './moments.js';
import { isOwn, kindWords, paperFor, signOf } from './papers.js';
import { showPaper } from './paper-views.js';
import { noteCorrections } from './corrections.js';
import { showRow } from './paper-row.js';

/** One paper lies open; it turns with the picture unless it is held. */
export const paperEffects = {
  /** What is the student's own stays open; a paper of the course turns again afterwards. */
  open: ({ detail, state, commit }) => commit({
    paperId: detail.id, paperPage: detail.page || 1, paperRow: null, held: isOwn(detail.id) || (state.held && !isOwn(state.paperId)),
  }),
  openMoment: ({ detail, state, commit }) => {
    const paper = paperFor(detail, state.papers);
    if (paper) {
      commit({ paperId: paper.id, paperPage: detail.page || 1, paperRow: null });
    }
  },
  turn: ({ detail, state, commit }) => commit({ paperPage: Math.max(1, state.paperPage + detail) }),
  page: ({ detail, commit }) => commit({ paperPage: detail }),
  hold: ({ state, commit }) => commit({ held: !state.held }),
};

function choosePaper(store) {
  const { papers } = store.getState();
  const line = (paper) => el('li', {}, el('button', {
    type: 'button',
    on: { click: () => { closePanel(); store.dispatch('open', { id: paper.id }); } },
  }, icon(signOf(paper)), el('span', {}, paper.title, el('small', {}, kindWords(paper)))));
  openPanel('Papers of this lesson', el('ul', { class: 'paper-list' }, papers.map(line)));
}

function connectHold(store) {
  const held = byId('held');
  held.addEventListener('click', () => store.dispatch('hold'));
  store.watch((state) => state.held, (on) => {
    held.setAttribute('aria-pressed', String(on));
    const words = on ? 'The paper is held: let it turn with the picture' : 'The paper turns with the picture: hold it';
    held.setAttribute('aria-label', words);
    held.title = words;
    byId('held-words').textContent = on ? 'held' : 'turns';
    setIcon(held.querySelector('.icon'), on ? 'hold' : 'turns');
  });
}

/** The foot: turn pages, and what may be printed. */
function foot(store, paper, view) {
  const parts = [];
  if (view.pages > 1) {
    const words = el('span', { id: 'page-words', role: 'status' });
    parts.push(el('div', { class: 'page-turn' },
      button({ label: 'Page before', sign: 'prev', kind: 'bare', onClick: () => store.dispatch('turn', -1) }), words,
      button({ label: 'Next page', sign: 'next', kind: 'bare', onClick: () => store.dispatch('turn', 1) })));
  }
  parts.push(...(view.tools || []));
  if (paper.mayPrint) {
    parts.push(
      el('a', { class: 'button push', id: 'save-for-printing', href: address(`print/${store.getState().lesson.edition}/${paper.id}`), download: '' },
        icon('save'), 'Save for printing'),
      el('p', { class: 'plain-copy' }, 'Saving makes a plain copy, with your name on it, that opens without Lehrcase. Your teacher allows it for printing.'));
  }
  byId('paper-foot').replaceChildren(...parts);
}

function pageShown(view, page) {
  const words = byId('page-words');
  if (words) {
    words.textContent = `${page} of ${view.pages}`;
  }
}

function connectBody(store) {
  const body = byId('paper-body');
  let view = null;
  let shown = null;
  const noteLast = (page) => !isOwn(shown) && store.commit({ lastPaper: { id: shown, page, pages: view.pages } });
  const rowTo = (wanted) => {
    const { papers, paperId } = store.getState();
    if (view && shown === paperId) {
      showRow(body, papers.find((paper) => paper.id === shown), wanted?.row);
    }
  };
  const turnTo = (page) => {
    if (view && view.pages) {
      const inside = Math.min(view.pages, Math.max(1, page));
      pageShown(view, inside);
      if (inside !== page) {
        store.dispatch('page', inside);
      } else {
        view.goTo(inside);
        noteLast(inside);
      }
    }
  };
  const open = async (id) => {
    const paper = store.getState().papers.find((candidate) => candidate.id === id);
    if (!paper) {
      return;
    }
    shown = id;
    view?.dispose?.();
    view = null;
    byId('paper-title').textContent = paper.title;
    body.setAttribute('aria-label', `${kindWords(paper)}: ${paper.title}`);
    const place = el('div', { class: 'paper-place' }, el('p', { class: 'size-words' }, 'Opening …'));
    body.replaceChildren(place);
    body.scrollTop = 0;
    byId('paper-foot').replaceChildren();
    const opened = await showPaper(place, paper, store).catch((error) => {
      place.replaceChildren(errorNotice(error));
      return { pages: 0 };
    });
    if (shown !== id) {
      opened.dispose?.();
      return;
    }
    view = opened;
    foot(store, paper, view);
    turnTo(store.getState().paperPage);
    rowTo(store.getState().paperRow);
  };
  store.watch((state) => state.paperId, open);
  store.watch((state) => state.paperPage, turnTo);
  store.watch((state) => state.paperRow, rowTo);
}

/** The open paper beside the picture. */
export function connectPaper(store) {
  const { papers, moments } = store.getState();
  connectHold(store);
  connectBody(store);
  byId('notes-button').addEventListener('click', () => store.dispatch('open', { id: 'notes' }));
  byId('papers-button').addEventListener('click', () => choosePaper(store));
  const papered = moments.filter((moment) => paperFor(moment, papers));
  store.watch((state) => momentAt(papered, state.time), (index, state) => {
    if (!state.held && !loops(state.loop) && index >= 0) {
      store.dispatch('openMoment', papered[index]);
    }
  });
  if (!store.getState().paperId) {
    store.dispatch('open', { id: (papered.length ? paperFor(papered[0], papers) : papers[0]).id });
  }
  noteCorrections(store);
}
