// Odds: drawn by the program while the page is at rest, shown as bands of arrival on the days. While others
// are drawn, those of the plan before stay, and say so.
import { hearLines } from './ask.js';
import { at, make } from './made.js';

/** @typedef {import('./ask.js').Edit} Edit */

const rest_ms = 300;

/** @type {any} what is shown: the view of the program */
let view = null;
let of = ''; // what it is of
let wanted = '';
let words = '';
/** @type {AbortController | null} */
let under_way = null;
/** @type {ReturnType<typeof setTimeout> | undefined} */
let waiting;

/** @param {Edit[]} edits @param {string} seen */
export function wantOdds(edits, seen) {
  const key = seen + JSON.stringify(edits);
  if (key !== wanted) {
    stopOdds();
    wanted = key;
    if (key !== of) waiting = setTimeout(() => draw(edits, key), rest_ms);
  }
  showOdds();
}

export function stopOdds() {
  clearTimeout(waiting);
  under_way?.abort(); // the program hears of it and draws no more
  under_way = null;
  wanted = '';
  words = '';
}

/** @param {Edit[]} edits @param {string} key */
async function draw(edits, key) {
  const own = new AbortController();
  under_way = own;
  try {
    await hearLines('/api/odds', { edits }, own.signal, (line) => {
      if (wanted !== key) return;
      if (line.view) {
        view = line.view;
        of = key;
        words = '';
      } else {
        words = line.draws ? line.done + ' of ' + line.draws : 'cannot be drawn: ' + (line.problems?.[0]?.text || line.error);
      }
      showOdds();
    });
  } catch {
    if (!own.signal.aborted && wanted === key) {
      words = 'cannot be drawn now';
      showOdds();
    }
  }
  if (under_way === own) under_way = null;
}

function showOdds() {
  const stale = Boolean(view) && of !== wanted;
  for (const slot of document.querySelectorAll('.day .odds')) {
    const one = view?.days.find((/** @type {any} */ day) => String(day.day) === slot.closest('.day')?.getAttribute('data-day'));
    slot.classList.toggle('stale', stale);
    const key = one ? one.drawing + one.text + one.also : '';
    if (/** @type {HTMLElement} */ (slot).dataset.of === key) continue;
    /** @type {HTMLElement} */ (slot).dataset.of = key;
    if (!one) {
      slot.replaceChildren();
      continue;
    }
    const drawing = make('span', { class: 'band-of' });
    drawing.innerHTML = one.drawing; // the program's own markup
    slot.replaceChildren(drawing, make('small', {}, one.text), make('small', {}, one.also));
  }
  const holder = at('odds');
  holder.hidden = !view && !words;
  holder.classList.toggle('stale', stale);
  holder.dataset.stale = String(stale);
  at('odds-state').textContent = (stale ? 'of the plan before; those of this one are being drawn' : view ? '' : 'being drawn') + (words ? (stale || !view ? ': ' : '') + words : '');
  if (!view || holder.dataset.of === of) return;
  holder.dataset.of = of;
  const item = (/** @type {string} */ text) => make('li', {}, text);
  at('odds-words').replaceChildren(make('p', {}, view.words),
    make('ul', {}, ...view.appointments.map(item), ...view.food.map(item)),
    make('details', {}, make('summary', {}, 'What these odds do not say'), make('ul', {}, ...view.remarks.map(item))));
}
