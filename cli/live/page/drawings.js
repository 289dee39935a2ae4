// The program's drawings as the page has them: one that is still the same does not come again.

/** @typedef {{id: string, markup: string | null}} Sent markup: null if the page said that it has it */

export class Drawings {
  constructor() {
    /** @type {Map<string, string>} those of the answer before, by their ids */
    this.kept = new Map();
  }

  /** @returns {string[]} what need not be sent */
  get have() { return [...this.kept.keys()]; }

  /**
   * The drawings of an answer as markup; what it left out is that of the answer before.
   * @param {{map: Sent, profile: Sent, clocks: Sent[], ground: any}} drawing
   */
  whole(drawing) {
    /** @type {Map<string, string>} */
    const now = new Map();
    const markup = (/** @type {Sent} */ sent) => {
      const text = sent.markup ?? this.kept.get(sent.id) ?? '';
      now.set(sent.id, text);
      return text;
    };
    const whole = { map: markup(drawing.map), profile: markup(drawing.profile), clocks: drawing.clocks.map(markup), ground: drawing.ground };
    this.kept = now;
    return whole;
  }
}
