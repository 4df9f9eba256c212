import { showSketch } from './sketch.js';
import { byId } from '../dom.js';

/** Goes to where a note is pinned; its sketch is laid over the paused picture. */
export function goToNote(store, note) {
  const { pin, sketch } = note.content;
  if (note.kind === 'loop') {
    store.dispatch('loopKept', note);
  } else if (pin.where === 'second') {
    store.dispatch('stop');
    byId('video').addEventListener('seeked', () => showSketch(sketch), { once: true });
    store.dispatch('seek', pin.at / 1000 + 0.001);
  } else if (pin.asset) {
    store.dispatch('open', { id: pin.asset, page: pin.where === 'page' ? pin.at : 1 });
    if (pin.where === 'line') {
      markLine(pin.at, 20);
    }
  }
}

function markLine(line, tries) {
  const row = byId('paper-body').querySelectorAll('.list tbody tr')[line - 1];
  if (row) {
    row.classList.add('noted');
    row.scrollIntoView({ block: 'nearest' });
  } else if (tries > 0) {
    setTimeout(markLine, 100, line, tries - 1);
  }
}

/** Every line of the lesson's firing schedules: ["asset line", words]. */
export const lineOptions = (papers) => papers.filter((paper) => paper.kind === 'firing').flatMap((paper) =>
  paper.data.segments.map((segment, i) => [`${paper.id} ${i + 1}`, `${paper.title}: line ${i + 1}`]));

/** The student's own photos of this lesson, as papers that can lie beside the picture. */
export const photoPapers = (notes, lessonId) => notes
  .filter((note) => note.lesson === lessonId)
  .flatMap((note) => note.content.pictures.map((id, i) => ({
    id: `photo-${id}`, kind: 'own', role: 'OWN', picture: id, mayPrint: false,
    title: `My photo${note.content.text ? `: ${note.content.text.slice(0, 40).split('\n')[0]}` : ` ${i + 1}`}`,
  })));
