// Packs of the chosen leg against their limits, the things in them, and the ways over a portage.
import { at, make, tell } from './made.js';

/** @typedef {import('./ask.js').Edit} Edit */

/** @param {any} load @param {any} was @param {number} most_kg */
function bar(load, was, most_kg) {
  const share = (/** @type {number} */ kg) => 100 * kg / most_kg + '%';
  const parts = load.parts.map((/** @type {any} */ part) => {
    const piece = make('span', { class: 'part ' + part.part, title: part.part + ' ' + part.text });
    piece.style.width = share(part.kg);
    return piece;
  });
  const holder = make('div', { class: 'bar', role: 'img', 'aria-label': load.member + ' ' + load.text + (load.limit ? ' of ' + load.limit : '') + ': ' + load.parts.map((/** @type {any} */ part) => part.part + ' ' + part.text).join(', ') }, ...parts);
  if (load.limit_kg > 0) {
    const limit = make('span', { class: 'limit' });
    limit.style.left = share(load.limit_kg);
    holder.append(limit);
  }
  if (was) {
    const ghost = make('span', { class: 'was' });
    ghost.style.width = share(was.kg);
    holder.append(ghost);
  }
  return holder;
}

/**
 * A menu of what may be done with a thing.
 * @param {HTMLElement} chip @param {any} thing @param {(edits: Edit[], words: string) => void} change
 */
function openMenu(chip, thing, change) {
  document.querySelector('.menu')?.remove();
  const menu = make('div', { class: 'menu', role: 'menu', 'aria-label': thing.name });
  menu.append(make('p', {}, thing.where + (thing.why ? ': ' + thing.why : '') + '. Carried on foot: ' + thing.price + '.'));
  let open = true; // taking a menu away takes its focus, which would take it away again
  const close = () => {
    if (!open) return;
    open = false;
    menu.remove();
    chip.setAttribute('aria-expanded', 'false');
  };
  for (const move of thing.moves) {
    const item = make('button', { type: 'button', role: 'menuitem' }, move.label);
    item.addEventListener('click', () => { close(); change(move.edits, thing.name + ': ' + move.label); });
    menu.append(item);
  }
  menu.addEventListener('keydown', (event) => {
    const items = /** @type {HTMLElement[]} */ ([...menu.querySelectorAll('button')]);
    const now = items.indexOf(/** @type {HTMLElement} */ (document.activeElement));
    if (event.key === 'Escape') { close(); chip.focus(); }
    else if (event.key === 'ArrowDown') items[(now + 1) % items.length].focus();
    else if (event.key === 'ArrowUp') items[(now + items.length - 1) % items.length].focus();
    else return;
    event.preventDefault();
  });
  menu.addEventListener('focusout', (event) => {
    if (!menu.contains(/** @type {Node | null} */ (event.relatedTarget)) && event.relatedTarget !== chip) close();
  });
  chip.setAttribute('aria-expanded', 'true');
  chip.after(menu);
  menu.querySelector('button')?.focus();
}

/** @param {any} thing @param {(edits: Edit[], words: string) => void} change */
function chipOf(thing, change) {
  const chip = make('button', { type: 'button', class: 'chip', 'data-thing': thing.id, 'aria-haspopup': 'menu', 'aria-expanded': 'false', disabled: !thing.moves.length },
    make('bdi', {}, thing.name), ' ', make('b', {}, thing.mass));
  let from = { x: 0, y: 0 };
  let moved = false;
  let down = false;
  /** @param {PointerEvent} event */
  const under = (event) => document.elementsFromPoint(event.clientX, event.clientY).map((element) => element.closest('[data-to]')).find((element) => element);
  const lift = (/** @type {Element | null | undefined} */ to) => {
    for (const element of document.querySelectorAll('[data-to]')) {
      const may = thing.moves.some((/** @type {any} */ move) => move.to === element.getAttribute('data-to'));
      element.classList.toggle('may', down && moved && may);
      element.classList.toggle('here', element === to && may);
    }
  };
  chip.addEventListener('pointerdown', (event) => {
    if (event.pointerType === 'touch' || event.button !== 0) return; // a finger taps and chooses
    down = true;
    moved = false;
    from = { x: event.clientX, y: event.clientY };
    chip.setPointerCapture(event.pointerId);
  });
  chip.addEventListener('pointermove', (event) => {
    if (!down) return;
    const x = event.clientX - from.x;
    const y = event.clientY - from.y;
    if (Math.abs(x) + Math.abs(y) > 6) moved = true;
    if (!moved) return;
    chip.classList.add('lifted');
    chip.style.transform = `translate(${x}px, ${y}px)`;
    lift(under(event));
  });
  chip.addEventListener('pointerup', (event) => {
    if (!down) return;
    down = false;
    chip.classList.remove('lifted');
    chip.style.transform = '';
    const to = under(event)?.getAttribute('data-to');
    lift(null);
    const move = moved && thing.moves.find((/** @type {any} */ one) => one.to === to);
    if (move) change(move.edits, thing.name + ': ' + move.label);
  });
  chip.addEventListener('click', () => { if (!moved) openMenu(chip, thing, change); moved = false; });
  return chip;
}

/**
 * @param {any} view @param {any} pinned @param {number} chosen index into view.legs
 * @param {(leg: number) => void} choose @param {(edits: Edit[], words: string) => void} change
 */
export function showPacks(view, pinned, chosen, choose, change) {
  const focused = document.activeElement?.getAttribute('data-thing');
  const leg = view.legs[chosen];
  const most_kg = 1.05 * Math.max(1, ...leg.loads.map((/** @type {any} */ load) => Math.max(load.kg, load.limit_kg)));
  const choice = /** @type {HTMLSelectElement} */ (make('select', { id: 'leg', 'aria-label': 'Leg' }));
  view.legs.forEach((/** @type {any} */ one, /** @type {number} */ i) => choice.append(make('option', { value: String(i), selected: i === chosen }, one.title)));
  choice.addEventListener('change', () => choose(Number(choice.value)));
  const rows = leg.loads.map((/** @type {any} */ load, /** @type {number} */ i) => make('div', { class: 'pack' + (load.over ? ' over' : ''), 'data-to': 'member:' + i },
    make('div', { class: 'row' }, make('bdi', { class: 'who' }, load.member), bar(load, pinned?.legs[chosen]?.loads[i], most_kg),
      make('span', { class: 'mass' }, make('b', {}, load.text), load.limit ? ' of ' + load.limit : '', load.over ? make('span', { class: 'flag' }, ' over') : '')),
    make('div', { class: 'chips' }, ...view.things.filter((/** @type {any} */ thing) => thing.bearer === i && thing.comes).map((/** @type {any} */ thing) => chipOf(thing, change)))));
  const boats = leg.craft.map((/** @type {any} */ one) => make('p', { class: 'boat' }, make('bdi', {}, one.craft), ' ', make('b', {}, one.text), ', left bag ' + one.left + ', right bag ' + one.right));
  const home = view.things.filter((/** @type {any} */ thing) => !thing.comes);
  const key = make('p', { class: 'key-line' }, ...['kit', 'boat', 'food', 'fuel', 'water', 'waste'].flatMap((name) => [make('span', { class: 'swatch-of part ' + name }), name + ' ']), 'dashed: limit', pinned ? '; thin line: pinned plan' : '');
  at('packs').replaceChildren(
    make('h2', {}, 'Packs'), make('div', { class: 'row' }, choice, make('span', { class: 'aside' }, 'Things as they are shared out when setting off.')),
    ...rows, ...boats,
    make('div', { class: 'row drops' }, make('span', { class: 'drop', 'data-to': 'left' }, 'left bag'), make('span', { class: 'drop', 'data-to': 'right' }, 'right bag')),
    make('div', { class: 'pack home', 'data-to': 'home' }, make('span', { class: 'who' }, 'At home'), make('div', { class: 'chips' }, ...home.map((/** @type {any} */ thing) => chipOf(thing, change)))), key);
  if (focused) /** @type {HTMLElement | null} */ (at('packs').querySelector(`[data-thing="${focused}"]`))?.focus();
}

/**
 * Ways over the portages of the trip.
 * @param {any} view @param {(edits: Edit[], words: string) => void} change
 */
export function showChoices(view, change) {
  const tables = view.legs.filter((/** @type {any} */ leg) => leg.choices.length).map((/** @type {any} */ leg) => {
    const body = make('tbody', {});
    for (const one of leg.choices) {
      const pick = make('button', { type: 'button', 'aria-pressed': String(one.chosen), disabled: !one.edits.length }, one.words);
      pick.addEventListener('click', () => { tell(leg.name + ': ' + one.words); change(one.edits, leg.name + ': ' + one.words); });
      body.append(make('tr', { class: one.chosen ? 'chosen' : '' }, make('th', { scope: 'row' }, pick),
        make('td', { class: 'n' }, one.walked), make('td', { class: 'n' }, one.time), make('td', { class: 'n' }, one.heaviest), make('td', { class: 'n' }, one.of_limit + (one.over ? ' over' : ''))));
    }
    const hands = leg.hands.map((/** @type {any} */ one) => {
      const pick = make('button', { type: 'button', 'aria-pressed': String(one.chosen) }, one.label);
      pick.addEventListener('click', () => change(one.edits, leg.name + ': ' + one.label));
      return pick;
    });
    const by = hands.length ? [make('div', { class: 'row hands', role: 'group', 'aria-label': 'Heavy pieces over ' + leg.name }, ...hands)] : [];
    return make('div', { class: 'scrolled' }, ...by, make('table', {}, make('caption', {}, 'Portage on day ' + leg.day + ', ', make('bdi', {}, leg.name)),
      make('thead', {}, make('tr', {}, make('th', { scope: 'col' }, 'Carries'), ...['Walked', 'Time', 'Heaviest load', 'Of limit'].map((text) => make('th', { scope: 'col', class: 'n' }, text)))), body));
  });
  at('choices').replaceChildren(...tables);
}
