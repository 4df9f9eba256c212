import { isFilm, spotOf, urlOf } from '../find/result.js';

/** A paper that was asked for is held, so that the picture does not turn it away. */
function paperState(papers, { a, p, r }) {
  return papers.some((paper) => paper.id === a)
    ? { paperId: a, paperPage: Number(p) || 1, paperRow: { row: Number(r) || 0 }, held: true }
    : {};
}

/** The first state of a lesson that was opened at a second, page or row: `?t=`, `?a=&p=`, `?a=&r=`. */
export function openedAt(place, lesson, papers) {
  const seconds = Number(place.get('t'));
  if (place.has('t') && Number.isFinite(seconds)) {
    lesson.position = { seconds };
  }
  return paperState(papers, { a: place.get('a'), p: place.get('p'), r: place.get('r') });
}

/** Goes to what was found: at once in this lesson, by the other's page elsewhere. */
export function goToFind(store, find) {
  const { lesson, papers } = store.getState();
  if (find.edition !== lesson.edition || find.lesson !== lesson.lesson.id) {
    window.location.assign(urlOf(find));
  } else if (isFilm(find)) {
    store.dispatch('seek', spotOf(find).t || 0);
  } else {
    store.commit(paperState(papers, spotOf(find)));
  }
}
