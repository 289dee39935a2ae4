// What was changed and not yet written: every step of it, to go back and forth.

/** @typedef {import('./ask.js').Edit} Edit */

export class Edits {
  constructor() {
    /** @type {{edits: Edit[], words: string, by: string, when: number}[]} */
    this.steps = [{ edits: [], words: 'As in the trip file', by: '', when: 0 }];
    this.step = 0;
  }

  /** @returns {Edit[]} */
  get now() { return this.steps[this.step].edits; }

  get canUndo() { return this.step > 0; }

  get canRedo() { return this.step + 1 < this.steps.length; }

  /**
   * What there would be with `more`: a later edit of one path takes the place of the earlier.
   * @param {Edit[]} more
   */
  with(more) {
    const paths = new Set(more.map((edit) => edit.path));
    return [...this.now.filter((edit) => !paths.has(edit.path)), ...more];
  }

  /**
   * @param {Edit[]} more @param {string} words what people call it
   * @param {string} [by] the control, where keys move it on and on: what it does in one go is one step
   */
  add(more, words, by = '') {
    const next = this.with(more);
    if (JSON.stringify(next) === JSON.stringify(this.now)) return;
    const when = performance.now();
    const last = this.steps[this.step];
    const on = by !== '' && last.by === by && when - last.when < 1500;
    this.steps = [...this.steps.slice(0, this.step + (on ? 0 : 1)), { edits: next, words, by, when }];
    this.step = this.steps.length - 1;
  }

  /** @param {number} step */
  go(step) { this.step = Math.min(this.steps.length - 1, Math.max(0, step)); }

  clear() {
    this.steps = this.steps.slice(0, 1);
    this.step = 0;
  }
}
