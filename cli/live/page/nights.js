// Where the plan would sleep, and what the next best choices cost more.
import { ask } from './ask.js';
import { at, make } from './made.js';

/** @typedef {import('./ask.js').Edit} Edit */

let of = '';

/** @param {Edit[]} edits @param {string} seen what the choice hangs on: all but the nights themselves */
function keyOf(edits, seen) { return seen + JSON.stringify(edits.filter((edit) => edit.path !== '/days/nights')); }

/**
 * @param {Edit[]} edits @param {string} seen
 * @param {(edits: Edit[], words: string) => void} change @param {(error: unknown) => void} fail
 */
export async function askNights(edits, seen, change, fail) {
  const key = keyOf(edits, seen);
  of = key;
  at('night-choices').replaceChildren(make('p', { class: 'aside' }, 'Choosing nights …'));
  try {
    const { view } = await ask('/api/nights', { edits });
    if (of !== key) return;
    at('night-choices').replaceChildren(make('p', { class: 'aside' }, view.words), make('ul', {}, ...view.options.map((/** @type {any} */ one) => {
      const take = make('button', { type: 'button', class: 'link' }, one.which + ', ' + one.cost + ': ', make('bdi', {}, one.names));
      take.addEventListener('click', () => change(one.edits, 'Nights: ' + one.names));
      return make('li', {}, take, make('small', {}, one.verdict), ...one.stops.map((/** @type {string} */ text) => make('small', { class: 'short' }, text)));
    })));
  } catch (error) {
    if (of !== key) return;
    of = '';
    at('night-choices').replaceChildren();
    fail(error);
  }
}

/**
 * Lets the choices go once they hold no more.
 * @param {Edit[]} edits @param {string} seen
 */
export function keepNights(edits, seen) {
  if (!of || of === keyOf(edits, seen)) return;
  of = '';
  at('night-choices').replaceChildren();
}
