// What the plan says: the verdict and its reasons, each leading to its place; and problems of edits.
import { at, make } from './made.js';

/**
 * @param {any} view @param {any} pinned
 * @param {(reason: {day: number | null, leg: number | null}) => void} lead
 */
export function showVerdict(view, pinned, lead) {
  const verdict = view.verdict;
  const item = (/** @type {any} */ reason) => {
    const link = make('button', { type: 'button', class: 'link' }, reason.line);
    link.addEventListener('click', () => lead(reason));
    return make('li', {}, link);
  };
  const also = make('details', {}, make('summary', {}, verdict.also.length === 1 ? 'One more caution' : verdict.also.length + ' more cautions'), make('ul', {}, ...verdict.also.map(item)));
  const open = at('verdict').querySelector('details')?.open;
  if (open) also.setAttribute('open', '');
  at('verdict').className = verdict.level;
  at('verdict').replaceChildren(
    make('p', {}, make('strong', {}, verdict.sentence), pinned ? make('span', { class: 'ghost' }, ' Pinned plan: ' + pinned.verdict.sentence) : ''),
    make('ul', {}, ...verdict.reasons.map(item)),
    verdict.also.length ? also : '',
    verdict.unknown ? make('p', { class: 'aside' }, verdict.unknown) : '');
}

/** @param {{text: string}[]} problems */
export function showProblems(problems) {
  const holder = at('problems');
  holder.hidden = problems.length === 0;
  holder.replaceChildren(...problems.map((problem) => make('p', {}, problem.text)));
}
