// The page as a whole: asks for the plan of the edits as they are, and shows it.
import { listen, planner, Refused } from './ask.js';
import { noCompare, wantCompare } from './compare.js';
import { rememberFile, showConditions } from './conditions.js';
import { showDays } from './days.js';
import { Edits } from './edits.js';
import { at, changed, make, tell } from './made.js';
import { Ground } from './map.js';
import { askNights, keepNights } from './nights.js';
import { stopOdds, wantOdds } from './odds.js';
import { showChoices, showPacks } from './packs.js';
import { showProblems, showVerdict } from './verdict.js';
import { prepareWriting } from './write.js';

/** @typedef {import('./ask.js').Edit} Edit */

const edits = new Edits();
/** @type {any} */
let answer = null;
/** @type {any} */
let pinned = null;
/** @type {{edits: Edit[], seen: string}} what was pinned */
let pin = { edits: [], seen: '' };
/** @type {Edit[]} with which the plan that is shown was made */
let shownWith = [];
let leg = 0;
/** Whether problems stand there instead of a new plan. */
let refused = false;
/** The text of the file that was asked about last. */
let known = '';

const request = planner(() => ground.id, (fresh, asked) => {
  answer = fresh;
  shownWith = asked;
  refused = false;
  known = fresh.seen;
  if (!asked.length) rememberFile(fresh.view.conditions);
  showProblems([]);
  show();
}, fail);

/** @param {unknown} error */
function fail(error) {
  refused = true;
  stopOdds();
  if (error instanceof Refused && error.problems.length) showProblems(error.problems);
  else if (error instanceof Refused) showProblems([{ text: error.message }]);
  else showProblems([{ text: 'The program that serves this page does not answer. Start it again with: tumpline live TRIP' }]);
}

/** @param {Edit[]} more */
function preview(more) { request(edits.with(more)); }

/** @param {Edit[]} more @param {string} words @param {string} [by] the control */
function change(more, words, by) {
  edits.add(more, words, by);
  tell(words);
  again();
}

function again() {
  tools();
  keepNights(edits.now, known);
  request(edits.now);
}

function tools() {
  const count = edits.now.length;
  /** @type {HTMLButtonElement} */ (at('undo')).disabled = !edits.canUndo;
  /** @type {HTMLButtonElement} */ (at('redo')).disabled = !edits.canRedo;
  /** @type {HTMLButtonElement} */ (at('write')).disabled = count === 0;
  const history = /** @type {HTMLSelectElement} */ (at('history'));
  history.disabled = edits.steps.length < 2;
  history.replaceChildren(...edits.steps.map((one, i) => make('option', { value: String(i), selected: i === edits.step }, (i ? i + '. ' : '') + one.words)));
  at('write').textContent = 'Write to the trip file' + (count ? ': ' + count + (count === 1 ? ' change' : ' changes') : '');
}

/** @param {string[]} nights @returns {Edit[]} */
function nightEdits(nights) { return [{ op: 'add', path: '/days/nights', value: nights }]; }

const ground = new Ground(
  (nights) => preview(nightEdits(nights)),
  (nights) => change(nightEdits(nights), 'Nights: ' + nights.join(', ')));

function nightTools() {
  const { nights, places } = answer.view.nights;
  const choice = /** @type {HTMLSelectElement} */ (make('select', { 'aria-label': 'Add a night at' }, make('option', { value: '' }, 'Add a night at …'),
    ...places.filter((/** @type {any} */ place) => !nights.some((/** @type {any} */ night) => night.name === place.name))
      .map((/** @type {any} */ place) => make('option', { value: place.name }, place.text))));
  choice.addEventListener('change', () => {
    const more = ground.nightsWith(choice.value);
    if (more) change(nightEdits(more), 'Night added at ' + choice.value);
  });
  const auto = make('button', { type: 'button', 'aria-pressed': String(answer.view.nights.auto) }, 'Let the plan choose the nights');
  auto.addEventListener('click', () => {
    change([{ op: 'add', path: '/days/nights', value: 'auto' }], 'The plan chooses the nights');
    askNights(edits.now, known, change, fail);
  });
  const tools = [choice, auto];
  if (ground.crowded()) {
    const held = ground.raised;
    const which = /** @type {HTMLSelectElement} */ (make('select', { id: 'night-to-move', 'aria-label': 'Night to move' }, make('option', { value: '' }, 'Night to move …'),
      ...nights.map((/** @type {any} */ night, /** @type {number} */ i) => make('option', { value: String(i), selected: held === i }, night.night + ' ' + night.name))));
    which.addEventListener('change', () => ground.raise(which.value === '' ? null : Number(which.value)));
    tools.unshift(which);
  }
  at('night-tools').replaceChildren(...tools);
}

/** @param {number} next */
function chooseLeg(next) {
  leg = next;
  show();
}

/** @param {{day: number | null, leg: number | null}} place */
function lead(place) {
  const found = answer.view.legs.findIndex((/** @type {any} */ one) => (!place.leg || one.leg === place.leg) && (!place.day || one.day === place.day));
  if (found >= 0) chooseLeg(found);
  at('packs').scrollIntoView({ block: 'nearest' });
}

function show() {
  const { view, drawing } = answer;
  leg = Math.min(leg, view.legs.length - 1);
  document.title = view.name;
  at('name').textContent = view.name;
  at('headline').textContent = view.headline;
  if (changed('verdict', [view.verdict, pinned?.verdict])) showVerdict(view, pinned, lead);
  ground.show(view, drawing);
  for (const band of document.querySelectorAll('[data-leg]'))
    band.classList.toggle('of-leg', band.getAttribute('data-leg') === String(leg));
  if (!document.activeElement?.closest('#night-tools')) nightTools();
  showDays(view, drawing.clocks, pinned, view.legs[leg].day, (day) => chooseLeg(Math.max(0, answer.view.legs.findIndex((/** @type {any} */ one) => one.day === day))));
  const names = view.legs.map((/** @type {any} */ one) => one.title);
  if (!document.querySelector('.chip.lifted') && changed('packs', [leg, names, view.legs[leg], view.things, pinned?.legs]))
    showPacks(view, pinned, leg, chooseLeg, change);
  if (changed('choices', view.legs.map((/** @type {any} */ one) => [one.name, one.day, one.choices, one.hands]))) showChoices(view, change);
  showConditions(view.conditions, preview, change);
  keepNights(edits.now, answer.seen);
  if (pinned) wantCompare(shownWith, pin.edits, answer.seen, pin.seen !== answer.seen);
  wantOdds(shownWith, answer.seen);
  document.body.dataset.shown = String(Number(document.body.dataset.shown || '0') + 1);
}

/** @param {number} step @param {string} words */
function go(step, words) {
  edits.go(step);
  tell(words);
  again();
}

at('undo').addEventListener('click', () => go(edits.step - 1, 'Undone: ' + edits.steps[edits.step].words));
at('redo').addEventListener('click', () => go(edits.step + 1, 'Done again: ' + edits.steps[Math.min(edits.step + 1, edits.steps.length - 1)].words));
at('history').addEventListener('change', (event) => {
  const step = Number(/** @type {HTMLSelectElement} */ (event.target).value);
  go(step, 'Back to: ' + edits.steps[step].words);
});
at('pin').addEventListener('click', () => {
  pinned = pinned ? null : answer?.view;
  pin = { edits: shownWith, seen: answer?.seen || '' };
  if (!pinned) noCompare();
  ground.pinned = pinned ? pinned.nights.nights : [];
  at('pin').setAttribute('aria-pressed', String(Boolean(pinned)));
  at('pin').textContent = pinned ? 'Unpin the plan' : 'Pin this plan';
  if (answer) show();
});
document.addEventListener('keydown', (event) => {
  if (!(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z') return;
  event.preventDefault();
  at(event.shiftKey ? 'redo' : 'undo').click();
});
prepareWriting(() => edits.now, fail, () => { edits.clear(); again(); });
matchMedia('(max-width: 40rem)').addEventListener('change', again);

function hear() {
  listen((now) => {
    const first = !known && !refused;
    if (first || now === known) {
      known = now;
      return;
    }
    known = now; // asked once, whatever the answer
    tell('The trip file has changed; this is the plan of the file as it is now, with your changes on top.');
    again();
  }, () => setTimeout(hear, 2000));
}
tools();
again();
hear();
