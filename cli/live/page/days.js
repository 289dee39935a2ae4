// The days as cards, each with its clock bar.
import { at, make } from './made.js';

/**
 * @param {any} view @param {string[]} clocks the program's drawings
 * @param {any} pinned the view of the pinned plan, or null
 * @param {number} chosen @param {(day: number) => void} choose
 */
export function showDays(view, clocks, pinned, chosen, choose) {
  const focused = document.activeElement?.closest('.day')?.getAttribute('data-day');
  const cards = view.days.map((/** @type {any} */ day, /** @type {number} */ i) => {
    const was = pinned?.days[i];
    const key = JSON.stringify([day, clocks[i], was?.figures, day.day === chosen]);
    const known = /** @type {HTMLElement | undefined} */ (at('days').children[i]);
    if (known?.dataset.of === key) return known;
    const card = make('button', { type: 'button', class: 'day', 'data-day': String(day.day), 'aria-pressed': String(day.day === chosen) },
      make('span', { class: 'title' }, make('span', { class: 'disc' }, String(day.day)), make('bdi', {}, day.from), day.rest_day ? `: ${day.still}` : ' to ', day.rest_day ? '' : make('bdi', {}, day.to)));
    const clock = make('span', { class: 'clock' });
    clock.innerHTML = clocks[i] || ''; // the program's own markup
    const figures = make('span', { class: 'numbers' });
    for (const [j, figure] of day.figures.entries()) {
      const before = was?.figures[j]?.value;
      figures.append(make('span', {}, make('small', {}, figure.label), make('b', {}, figure.value), make('small', {}, figure.more),
        before && before !== figure.value ? make('small', { class: 'ghost' }, 'pinned ' + before) : ''));
    }
    const left = day.left.map((/** @type {string} */ line) => make('span', { class: 'laid' }, line));
    card.dataset.of = key;
    card.append(clock, make('span', { class: 'odds' }), figures, ...left);
    card.addEventListener('click', () => choose(day.day));
    return card;
  });
  const appointments = view.appointments.map((/** @type {any} */ one) => make('p', { class: one.short ? 'appointment short' : 'appointment' }, one.text));
  at('days').replaceChildren(...cards, ...appointments);
  if (focused && document.activeElement !== at('days').querySelector(`[data-day="${focused}"]`)) /** @type {HTMLElement | null} */ (at('days').querySelector(`[data-day="${focused}"]`))?.focus();
}
