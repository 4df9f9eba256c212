import { button, el } from './dom.js';

const FOCUSABLE = 'a[href], button:not([disabled]), input, select, textarea, [tabindex="0"]';

let open = null;

function keepFocusInside(event, panel) {
  const stops = Array.from(panel.querySelectorAll(FOCUSABLE)).filter((node) => node.offsetParent !== null);
  if (!stops.length) {
    return;
  }
  const first = stops[0];
  const last = stops[stops.length - 1];
  if (event.shiftKey && document.activeElement === first) {
    event.preventDefault();
    last.focus();
  } else if (!event.shiftKey && document.activeElement === last) {
    event.preventDefault();
    first.focus();
  }
}

/** Closes the open panel, if any, and puts the focus back where it was. */
export function closePanel() {
  if (open) {
    const { veil, before } = open;
    open = null;
    veil.remove();
    if (before && before.isConnected) {
      before.focus();
    }
  }
}

export const panelIsOpen = () => open !== null;

/**
 * Shows one panel above the page. `<dialog>` is younger than the oldest browser we promise, so the
 * panel keeps the focus itself; Escape and a click beside it close it.
 */
export function openPanel(title, ...content) {
  closePanel();
  const panel = el('div', { class: 'panel', role: 'dialog', 'aria-modal': 'true', 'aria-labelledby': 'panel-title' },
    el('div', { class: 'panel-head' },
      el('h2', { id: 'panel-title' }, title),
      button({ label: 'Close', sign: 'close', kind: 'bare', onClick: closePanel })),
    ...content);
  const veil = el('div', { class: 'panel-veil' }, panel);
  veil.addEventListener('pointerdown', (event) => event.target === veil && closePanel());
  veil.addEventListener('keydown', (event) => {
    event.stopPropagation();
    if (event.key === 'Escape') {
      closePanel();
    } else if (event.key === 'Tab') {
      keepFocusInside(event, panel);
    }
  });
  open = { veil, before: document.activeElement };
  (document.fullscreenElement || document.body).append(veil);
  panel.querySelector('button').focus();
  return panel;
}
