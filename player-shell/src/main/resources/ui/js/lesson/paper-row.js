const HEADINGS = 'h1, h2, h3, h4, h5, h6';

/** The first section of a text stands before its first heading; rows are counted from 1. */
function rowOf(body, paper, row) {
  return paper.kind === 'markdown' ? body.querySelectorAll(HEADINGS)[row - 2] : body.querySelectorAll('tbody tr')[row - 1];
}

/** Brings a row of a table or a heading of a text into sight and marks it. */
export function showRow(body, paper, row) {
  body.querySelectorAll('.found').forEach((node) => node.classList.remove('found'));
  const node = row && paper ? rowOf(body, paper, row) : null;
  if (node) {
    node.classList.add('found');
    node.scrollIntoView({ block: 'center' });
  }
}
