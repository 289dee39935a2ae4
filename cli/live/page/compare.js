// The pinned plan beside the one that is shown: lines and differences as the program formats them.
import { ask } from './ask.js';
import { at, make } from './made.js';

/** @typedef {import('./ask.js').Edit} Edit */

const rest_ms = 150;
let asked = '';
/** @type {ReturnType<typeof setTimeout> | undefined} */
let waiting;

export function noCompare() {
  clearTimeout(waiting);
  asked = '';
  at('compare').hidden = true;
  at('compared').replaceChildren();
}

/**
 * @param {Edit[]} edits @param {Edit[]} pinned @param {string} seen
 * @param {boolean} fileChanged since it was pinned: what is pinned can no more be planned
 */
export function wantCompare(edits, pinned, seen, fileChanged) {
  at('compare').hidden = false;
  if (fileChanged) {
    clearTimeout(waiting);
    asked = '';
    at('compared').replaceChildren(make('p', {}, 'The trip file has changed since this plan was pinned: its figures stay beside the new ones, but not the differences. Pin again.'));
    return;
  }
  const key = JSON.stringify([edits, pinned, seen]);
  if (key === asked) return;
  asked = key;
  clearTimeout(waiting);
  waiting = setTimeout(async () => {
    try {
      const answer = await ask('/api/compare', { edits, pinned });
      if (asked === key) show(answer.view);
    } catch {
      if (asked === key) {
        asked = '';
        at('compared').replaceChildren(make('p', {}, 'The two cannot be compared now.'));
      }
    }
  }, rest_ms);
}

/** @param {any} view */
function show(view) {
  const items = (/** @type {string} */ title, /** @type {string[]} */ lines) =>
    lines.length ? [make('p', {}, title), make('ul', {}, ...lines.map((line) => make('li', {}, line)))] : [];
  const rows = view.lines.map((/** @type {any} */ line) => make('tr', {}, make('th', { scope: 'row' }, make('bdi', {}, line.label)),
    ...[line.pinned, line.now, line.difference].map((text) => make('td', { class: 'n' }, text))));
  const head = make('tr', {}, make('td', {}), ...['Pinned', 'Now', 'Difference'].map((text) => make('th', { scope: 'col', class: 'n' }, text)));
  at('compared').replaceChildren(
    make('p', {}, 'Pinned: ' + view.pinned + '. Now: ' + view.now + '.'),
    rows.length ? make('div', { class: 'scrolled' }, make('table', {}, make('caption', {}, 'Figures that differ'), make('thead', {}, head), make('tbody', {}, ...rows))) : make('p', {}, 'No figure differs.'),
    ...items('New against the pinned plan:', view.breaks), ...items('No more, as in the pinned plan:', view.mends));
}
