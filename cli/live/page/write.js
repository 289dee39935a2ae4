// Writing what was found into the trip file, after showing what changes there.
import { ask, Refused } from './ask.js';
import { at, make, tell } from './made.js';

/** @typedef {import('./ask.js').Edit} Edit */

/**
 * @param {() => Edit[]} edits
 * @param {(error: unknown) => void} fail @param {() => void} done called when written or overtaken
 */
export function prepareWriting(edits, fail, done) {
  const dialog = /** @type {HTMLDialogElement} */ (at('writing'));
  let seen = '';
  at('write').addEventListener('click', async () => {
    try {
      const answer = await ask('/api/difference', { edits: edits() });
      seen = answer.seen;
      at('writing-words').textContent = answer.lines.length ? 'These lines change; all others stay as they are.' : 'Nothing changes in the file.';
      at('difference').replaceChildren(...answer.lines.map((/** @type {any} */ line) => make('span', { class: line.sign === '+' ? 'added' : 'taken' }, line.sign + ' ' + line.text + '\n')));
      dialog.showModal();
    } catch (error) {
      fail(error);
    }
  });
  at('write-not').addEventListener('click', () => dialog.close());
  at('write-now').addEventListener('click', async () => {
    dialog.close();
    try {
      await ask('/api/write', { edits: edits(), seen });
      tell('Written to the trip file.');
      done();
    } catch (error) {
      if (!(error instanceof Refused && error.status === 409)) return fail(error);
      tell('Another hand has changed the trip file meanwhile: nothing was written. The page shows the file as it is now, with your changes on top.');
    }
  });
}
