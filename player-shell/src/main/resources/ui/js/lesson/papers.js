/** Everything that can lie open beside the picture, as one list. */

const SIGNS = {
  pdf: 'page', markdown: 'page', text: 'page', template: 'template', image: 'image', firing: 'firing', materials: 'materials', layers: 'whole', notes: 'moment', own: 'image',
};
const KINDS = {
  pdf: 'Handout', markdown: 'Reading', text: 'Plan', template: 'Template', image: 'Picture', firing: 'Firing schedule', materials: 'Materials list', layers: 'Plan of sheets', notes: 'Written by me', own: 'My own picture',
};

export const signOf = (paper) => SIGNS[paper.kind];
export const kindWords = (paper) => (paper.role === 'FAULT_CARD' ? 'Fault card' : KINDS[paper.kind]);

function kindOf(role, mediaType) {
  if (role === 'TEMPLATE') {
    return 'template';
  }
  if (role === 'LAYER_PLAN') {
    return 'layers';
  }
  if (mediaType.startsWith('image/')) {
    return 'image';
  }
  if (mediaType === 'application/pdf') {
    return 'pdf';
  }
  return mediaType === 'text/markdown' ? 'markdown' : 'text';
}

const bareName = (name) => name.replace(/\.(firing|materials)\.csv$/i, '').replace(/\.layers\.yaml$/i, '').replace(/\.(template\.)?[a-z0-9]+$/i, '');

/** The list in the order a person meets it: handouts, templates, lists, firing, pictures. */
export function collectPapers(lesson) {
  const stated = new Map((lesson.papers || []).map((paper) => [paper.asset, paper]));
  const lists = (items, kind) => (items || []).map((item) => {
    const paper = stated.get(item.asset) || {};
    stated.delete(item.asset);
    return {
      id: item.asset, kind, role: paper.role || kind.toUpperCase(), title: paper.title || bareName(item.name), data: item, mayPrint: Boolean(paper.mayPrint || item.mayPrint),
    };
  });
  const firing = lists(lesson.firing, 'firing');
  const materials = lists(lesson.materials, 'materials');
  const others = Array.from(stated.values()).map((paper) => {
    const role = String(paper.role).toUpperCase();
    return {
      id: paper.asset,
      kind: kindOf(role, paper.mediaType),
      role,
      title: paper.title || bareName(paper.name),
      url: paper.url,
      mediaType: paper.mediaType,
      mayPrint: Boolean(paper.mayPrint),
    };
  });
  const rank = ['pdf', 'markdown', 'template', 'layers', 'text', 'image'];
  others.sort((a, b) => rank.indexOf(a.kind) - rank.indexOf(b.kind));
  const upto = others.filter((paper) => ['pdf', 'markdown', 'template', 'layers'].includes(paper.kind));
  return [...upto, ...materials, ...firing, ...others.filter((paper) => !upto.includes(paper))];
}

/** The student's notes of the lesson lie beside the picture like a paper. */
export const NOTES_PAPER = Object.freeze({ id: 'notes', kind: 'notes', role: 'OWN', title: 'My notes', mayPrint: false });

/** Whether a paper is the student's own. */
export const isOwn = (id) => id === 'notes' || String(id).startsWith('photo-');

/** The paper a moment hangs up, or undefined. A page without an asset means the first handout. */
export function paperFor(moment, papers) {
  if (!moment || moment.target === 'none') {
    return undefined;
  }
  const byAsset = papers.find((paper) => paper.id === moment.asset);
  const kinds = { page: ['pdf', 'markdown'], template: ['template'], materials: ['materials'], firing: ['firing'], image: ['image'] };
  return byAsset || papers.find((paper) => (kinds[moment.target] || []).includes(paper.kind));
}
