// What was changed and not yet written, with undo and redo.

/** @typedef {import('./ask.js').Edit} Edit */

export class Edits {
  constructor() {
    /** @type {Edit[][]} */
    this.steps = [[]];
    this.step = 0;
  }

  /** @returns {Edit[]} */
  get now() { return this.steps[this.step]; }

  get canUndo() { return this.step > 0; }

  get canRedo() { return this.step + 1 < this.steps.length; }

  /** What there would be with `more`: a later edit of one path takes the place of the earlier. @param {Edit[]} more */
  with(more) {
    const paths = new Set(more.map((edit) => edit.path));
    return [...this.now.filter((edit) => !paths.has(edit.path)), ...more];
  }

  /** @param {Edit[]} more */
  add(more) {
    const next = this.with(more);
    if (JSON.stringify(next) === JSON.stringify(this.now)) return;
    this.steps = [...this.steps.slice(0, this.step + 1), next];
    this.step += 1;
  }

  undo() { if (this.canUndo) this.step -= 1; }

  redo() { if (this.canRedo) this.step += 1; }

  clear() {
    this.steps = [[]];
    this.step = 0;
  }
}
