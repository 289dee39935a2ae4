// Where the plan would sleep, and what the next best choices cost more.
import { hearLines, Refused } from './ask.js';
import { at, make } from './made.js';

/** @typedef {import('./ask.js').Edit} Edit */

let of = '';
/** @type {AbortController | null} */
let under_way = null;

/** Whatever is being searched is searched no longer: the program hears of it. */
function leave() {
  under_way?.abort();
  under_way = null;
}

/** @param {Edit[]} edits @param {string} seen what the choice hangs on: all but the nights themselves */
function keyOf(edits, seen) { return seen + JSON.stringify(edits.filter((edit) => edit.path !== '/days/nights')); }

/**
 * @param {Edit[]} edits @param {string} seen
 * @param {(edits: Edit[], words: string) => void} change @param {(error: unknown) => void} fail
 */
export async function askNights(edits, seen, change, fail) {
  const key = keyOf(edits, seen);
  const own = new AbortController();
  leave();
  under_way = own;
  of = key;
  at('night-choices').replaceChildren(make('p', { class: 'aside' }, 'Choosing nights …'));
  try {
    /** @type {any} */
    let last = null;
    await hearLines('/api/nights', { edits }, own.signal, (line) => { last = line; });
    if (of !== key) return;
    if (!last?.view) throw new Refused(422, last || {});
    const { view } = last;
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
  } finally {
    if (under_way === own) under_way = null;
  }
}

/**
 * Lets the choices go once they hold no more.
 * @param {Edit[]} edits @param {string} seen
 */
export function keepNights(edits, seen) {
  if (!of || of === keyOf(edits, seen)) return;
  of = '';
  leave();
  at('night-choices').replaceChildren();
}
