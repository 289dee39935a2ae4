// Map and profile: the program's drawings, and over them the nights as handles.
import { at, make, tell } from './made.js';

/**
 * @typedef {{night: number, name: string, at_m: number}} Night
 * @typedef {{name: string, at_m: number, text: string}} Place
 * @typedef {{auto: boolean, nights: Night[], places: Place[]}} Nights
 * @typedef {{x: number, y: number}} Spot in parts of the drawing's width and height
 */

/** @param {SVGSVGElement} svg @param {number} along @returns {Spot} */
function onProfile(svg, along) {
  const { from, to, left, right, foot } = svg.dataset;
  const share = (along - Number(from)) / Math.max(1, Number(to) - Number(from));
  const box = svg.viewBox.baseVal;
  return { x: (Number(left) + share * (Number(right) - Number(left))) / box.width, y: Number(foot) / box.height };
}

/**
 * Where the band of the map is at a point of the route.
 * @param {SVGSVGElement} svg @param {number} along @param {any[]} legs @returns {Spot | null}
 */
function onMap(svg, along, legs) {
  const index = legs.findIndex((leg) => along <= leg.to_m + 0.5);
  const path = /** @type {SVGPathElement | null} */ (svg.querySelector(`.band[data-leg="${index}"] path.sign`));
  if (index < 0 || !path) return null;
  const leg = legs[index];
  const share = (along - leg.from_m) / Math.max(1, leg.to_m - leg.from_m);
  const point = path.getPointAtLength(share * path.getTotalLength());
  const box = svg.viewBox.baseVal;
  return { x: point.x / box.width, y: point.y / box.height };
}

/** Moves of nights. */
export class Ground {
  /**
   * @param {(nights: string[]) => void} preview
   * @param {(nights: string[]) => void} choose
   */
  constructor(preview, choose) {
    this.preview = preview;
    this.choose = choose;
    /** @type {Nights} */
    this.nights = { auto: false, nights: [], places: [] };
    /** @type {any[]} */
    this.legs = [];
    /** @type {number | null} */
    this.dragged = null;
    /** @type {Place | null} */
    this.target = null;
    /** @type {Night[]} */
    this.start = [];
    /** @type {Night[]} */
    this.pinned = [];
    /** @type {number | null} the night whose handles lie above the others */
    this.raised = null;
    this.id = ''; // of the ground under the map
    /** @type {Record<string, string>} what each holder shows */
    this.drawn = {};
    for (const id of ['map', 'profile']) {
      at(id).append(make('div', { class: 'sheet-of' }), make('div', { class: 'handles' }));
    }
  }

  /** @param {any} view @param {any} drawing */
  show(view, drawing) {
    this.nights = view.nights;
    this.legs = view.legs;
    this.ground(drawing.ground);
    this.draw('map', drawing.map);
    this.draw('profile', drawing.profile);
    this.place();
  }

  /**
   * What maps use of the ground comes once; it is kept apart, for what does not change is not drawn again.
   * @param {any} ground
   */
  ground(ground) {
    if (ground.id === this.id) return;
    this.id = ground.id;
    at('ground').innerHTML = ground.markup ? '<svg class="defs" width="0" height="0"><defs>' + ground.markup + '</defs></svg>' : '';
    const words = [ground.words, ground.credits.length ? 'Ground: ' + ground.credits.join('; ') + '.' : ''].filter((one) => one);
    at('ground-words').textContent = words.join(' ');
    this.drawn = {};
  }

  /** @param {'map' | 'profile'} id @param {string} markup the program's own, names escaped */
  draw(id, markup) {
    if (this.drawn[id] === markup) return;
    this.drawn[id] = markup;
    const sheet = /** @type {HTMLElement} */ (at(id).firstElementChild);
    // the page's policy lets no style attribute pass
    sheet.innerHTML = markup.replace(/ style="--k:([\d.]+)"/g, ' data-k="$1"');
    for (const used of /** @type {NodeListOf<SVGElement>} */ (sheet.querySelectorAll('[data-k]'))) used.style.setProperty('--k', used.dataset.k || '1');
    const box = sheet.querySelector('svg')?.viewBox.baseVal;
    if (box) at(id).style.setProperty('--aspect', String(box.width / box.height));
  }

  /** @param {'map' | 'profile'} id @param {number} along @returns {Spot | null} */
  spot(id, along) {
    const svg = /** @type {SVGSVGElement | null} */ (at(id).querySelector('.sheet-of svg'));
    if (!svg) return null;
    return id === 'map' ? onMap(svg, along, this.legs) : onProfile(svg, along);
  }

  place() {
    for (const id of /** @type {const} */ (['map', 'profile'])) {
      const holder = at(id).querySelector('.handles');
      if (!holder) continue;
      while (holder.children.length > this.nights.nights.length) holder.lastElementChild?.remove();
      while (holder.children.length < this.nights.nights.length) holder.append(this.handle(id, holder.children.length));
      this.nights.nights.forEach((night, i) => {
        const handle = /** @type {HTMLElement} */ (holder.children[i]);
        const places = this.reach(i);
        const spot = this.spot(id, night.at_m);
        handle.hidden = !spot;
        if (spot) {
          handle.style.left = 100 * spot.x + '%';
          handle.style.top = 100 * spot.y + '%';
        }
        handle.setAttribute('aria-valuemin', '0');
        handle.setAttribute('aria-valuemax', String(Math.max(0, places.length - 1)));
        handle.setAttribute('aria-valuenow', String(Math.max(0, places.findIndex((place) => place.name === night.name))));
        handle.setAttribute('aria-valuetext', night.name);
        handle.classList.toggle('raised', this.raised === i);
        handle.classList.toggle('was', this.pinned.length > i && this.pinned[i].name !== night.name);
      });
    }
  }

  /**
   * The handles that are seen, with their middles in the window.
   * @param {'map' | 'profile'} id
   */
  middles(id) {
    const handles = /** @type {HTMLElement[]} */ ([...at(id).querySelectorAll('.handle')]);
    return handles.map((handle, i) => ({ handle, i, box: handle.getBoundingClientRect() })).filter((one) => one.box.width > 0)
      .map(({ handle, i, box }) => ({ handle, i, x: box.left + box.width / 2, y: box.top + box.height / 2 }));
  }

  /** Whether handles lie on each other, so that not each has the room that a finger needs. */
  crowded() {
    return /** @type {const} */ (['map', 'profile']).some((id) => {
      const all = this.middles(id);
      return all.some((one, i) => i > 0 && Math.hypot(one.x - all[i - 1].x, one.y - all[i - 1].y) < 40);
    });
  }

  /**
   * The handle whose middle is nearest: where they lie on each other, none hides another.
   * @param {'map' | 'profile'} id @param {HTMLElement} pressed @param {PointerEvent} event
   */
  nearest(id, pressed, event) {
    const far = (/** @type {{x: number, y: number}} */ one) => Math.hypot(one.x - event.clientX, one.y - event.clientY);
    const all = this.middles(id);
    const own = all.find((one) => one.handle === pressed);
    if (!own || pressed.classList.contains('raised')) return own;
    return all.reduce((best, one) => (far(one) < far(best) ? one : best), own);
  }

  /**
   * Lays the handles of a night above the others, for whoever cannot reach it there.
   * @param {number | null} i
   */
  raise(i) {
    this.raised = i;
    this.place();
    if (i === null) return;
    /** @type {HTMLElement | undefined} */ (this.middles('profile').find((one) => one.i === i)?.handle)?.focus();
  }

  /**
   * The camps between the nights before and after.
   * @param {number} i @returns {Place[]}
   */
  reach(i) {
    const nights = this.dragged === i && this.start.length ? this.start : this.nights.nights;
    const after = i > 0 ? nights[i - 1].at_m : 0;
    const before = i + 1 < nights.length ? nights[i + 1].at_m : Infinity;
    return this.nights.places.filter((place) => place.at_m > after && place.at_m < before);
  }

  /** @param {number} i @param {string} name */
  named(i, name) {
    return this.nights.nights.map((night, j) => (j === i ? name : night.name));
  }

  /** @param {'map' | 'profile'} id @param {number} i */
  handle(id, i) {
    const handle = make('button', { type: 'button', role: 'slider', class: 'handle', 'aria-label': 'Night ' + (i + 1) + ' at' }, String(i + 1));
    handle.addEventListener('pointerdown', (event) => {
      const held = this.nearest(id, handle, event);
      if (event.button !== 0 || !held) return;
      held.handle.setPointerCapture(event.pointerId);
      held.handle.focus({ preventScroll: true });
      this.dragged = held.i;
      this.start = this.nights.nights;
      this.target = null;
      held.handle.classList.add('dragged');
    });
    handle.addEventListener('mousedown', (event) => event.preventDefault()); // the one held has the focus, not the one on top
    handle.addEventListener('pointermove', (event) => {
      if (this.dragged === i) this.drag(id, i, event);
    });
    const end = (/** @type {boolean} */ kept) => () => {
      if (this.dragged !== i) return;
      this.dragged = null;
      handle.classList.remove('dragged');
      const nights = this.start.map((night, j) => (j === i && kept && this.target ? this.target.name : night.name));
      if (this.target) (kept ? this.choose : this.preview)(nights);
    };
    handle.addEventListener('pointerup', end(true));
    handle.addEventListener('pointercancel', end(false));
    handle.addEventListener('keydown', (event) => this.key(i, event));
    return handle;
  }

  /** @param {'map' | 'profile'} id @param {number} i @param {PointerEvent} event */
  drag(id, i, event) {
    const box = at(id).querySelector('.sheet-of')?.getBoundingClientRect();
    if (!box) return;
    /** @type {Place | null} */
    let best = null;
    let least = Infinity;
    for (const place of this.reach(i)) {
      const spot = this.spot(id, place.at_m);
      if (!spot) continue;
      const x = box.left + spot.x * box.width - event.clientX;
      const y = id === 'map' ? box.top + spot.y * box.height - event.clientY : 0;
      if (x * x + y * y < least) {
        least = x * x + y * y;
        best = place;
      }
    }
    if (!best || best.name === (this.target ? this.target.name : this.start[i].name)) return;
    this.target = best;
    tell('Night ' + (i + 1) + ' at ' + best.text);
    this.preview(this.start.map((night, j) => (j === i && best ? best.name : night.name)));
  }

  /** @param {number} i @param {KeyboardEvent} event */
  key(i, event) {
    const places = this.reach(i);
    const now = places.findIndex((place) => place.name === this.nights.nights[i].name);
    /** @type {Record<string, number>} */
    const steps = { ArrowLeft: now - 1, ArrowDown: now - 1, ArrowRight: now + 1, ArrowUp: now + 1, Home: 0, End: places.length - 1 };
    if (event.key === 'Delete') {
      this.choose(this.nights.nights.filter((_, j) => j !== i).map((night) => night.name));
    } else if (event.key in steps) {
      const place = places[Math.min(places.length - 1, Math.max(0, steps[event.key]))];
      if (place && place.name !== this.nights.nights[i].name) {
        tell('Night ' + (i + 1) + ' at ' + place.text);
        this.choose(this.named(i, place.name));
      }
    } else {
      return;
    }
    event.preventDefault();
  }

  /**
   * A night more, at its place in the order.
   * @param {string} name
   */
  nightsWith(name) {
    const place = this.nights.places.find((one) => one.name === name);
    if (!place) return null;
    return [...this.nights.nights, { night: 0, name, at_m: place.at_m }]
      .sort((a, b) => a.at_m - b.at_m).map((night) => night.name);
  }
}
