// Sliders: each a row of stops that the program made; the mark shows the stop of the trip file.
import { at, make } from './made.js';

/** @typedef {import('./ask.js').Edit} Edit */

/** @type {Map<string, number>} */
const fileStops = new Map();

/** @param {any[]} sliders of the plan without edits */
export function rememberFile(sliders) {
  fileStops.clear();
  for (const slider of sliders) fileStops.set(slider.id, slider.at);
}

/**
 * @param {any[]} sliders @param {(edits: Edit[]) => void} preview
 * @param {(edits: Edit[], words: string, by: string) => void} change
 */
export function showConditions(sliders, preview, change) {
  const holder = at('conditions');
  if (holder.dataset.made !== sliders.map((one) => one.id).join()) {
    holder.dataset.made = sliders.map((one) => one.id).join();
    holder.replaceChildren(make('h2', {}, 'Conditions'), ...sliders.map((one) => make('label', { class: 'slider', 'data-slider': one.id },
      make('span', { class: 'label' }), make('output', {}), make('input', { type: 'range', min: '0', step: '1' }), make('span', { class: 'file-mark' }))));
  }
  for (const slider of sliders) {
    const row = holder.querySelector(`[data-slider="${slider.id}"]`);
    const input = /** @type {HTMLInputElement | null} */ (row?.querySelector('input'));
    if (!row || !input) continue;
    const output = /** @type {HTMLElement} */ (row.querySelector('output'));
    const last = slider.stops.length - 1;
    const label = /** @type {HTMLElement} */ (row.querySelector('.label'));
    label.textContent = slider.label;
    label.title = slider.label;
    input.max = String(last);
    const held = input.matches(':active');
    if (!held) {
      input.value = String(slider.at);
      output.textContent = slider.value;
    }
    input.setAttribute('aria-valuetext', slider.value);
    const mark = fileStops.get(slider.id);
    const line = /** @type {HTMLElement} */ (row.querySelector('.file-mark'));
    line.hidden = mark === undefined;
    if (mark !== undefined) line.style.left = `calc(.5rem + ${mark / Math.max(1, last)} * (100% - 1rem))`;
    input.oninput = () => {
      const stop = slider.stops[Number(input.value)];
      output.textContent = stop.text;
      preview(stop.edits);
    };
    input.onchange = () => {
      const stop = slider.stops[Number(input.value)];
      change(stop.edits, slider.label + ' ' + stop.text, slider.id);
    };
  }
}
