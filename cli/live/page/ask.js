// Everything that is asked of the server. The key stands in the fragment of the address, which no
// browser sends along; it goes into a header of each request.
import { Drawings } from './drawings.js';

/**
 * @typedef {{op: string, path: string, value?: unknown}} Edit
 * @typedef {{place: string, text: string}} Problem
 */

const key = location.hash.slice(1);

/** An answer that is a refusal. */
export class Refused extends Error {
  /** @param {number} status @param {any} body */
  constructor(status, body) {
    super(body.error || 'refused');
    this.status = status;
    this.body = body;
    /** @type {Problem[]} */
    this.problems = body.problems || [];
  }
}

/**
 * @param {string} path
 * @param {unknown} [body] left out: GET
 * @returns {Promise<any>}
 */
export async function ask(path, body) {
  const answer = await fetch(path, {
    method: body === undefined ? 'GET' : 'POST',
    headers: { Authorization: 'Bearer ' + key, 'Content-Type': 'application/json' },
    body: body === undefined ? undefined : JSON.stringify(body),
  });
  const json = await answer.json();
  if (!answer.ok) throw new Refused(answer.status, json);
  return json;
}

/**
 * Asks what is told line by line; ends when all is told, or with `signal`.
 * @param {string} path @param {unknown} body @param {AbortSignal} signal @param {(line: any) => void} told
 */
export async function hearLines(path, body, signal, told) {
  const answer = await fetch(path, {
    method: 'POST', headers: { Authorization: 'Bearer ' + key, 'Content-Type': 'application/json' }, body: JSON.stringify(body), signal,
  });
  if (!answer.ok || !answer.body) throw new Refused(answer.status, await answer.json());
  for await (const line of pieces(answer.body, '\n')) told(JSON.parse(line));
}

/**
 * What is told, piece by piece, each ended by `end`.
 * @param {ReadableStream<Uint8Array>} body @param {string} end
 */
async function* pieces(body, end) {
  const reader = body.pipeThrough(new TextDecoderStream()).getReader();
  let rest = '';
  for (;;) {
    const { value, done } = await reader.read();
    if (done) return;
    const whole = (rest + value).split(end);
    rest = whole.pop() || '';
    yield* whole;
  }
}

/**
 * Asks for plans one at a time: while one is under way only the newest question waits, so that a
 * drag never queues.
 * @param {() => string} ground the id of the ground that the page has already
 * @param {(answer: any, edits: Edit[]) => void} show
 * @param {(error: unknown) => void} fail
 */
export function planner(ground, show, fail) {
  /** @type {Edit[] | null} */
  let waiting = null;
  let busy = false;
  /** @type {Edit[] | null} */
  let under_way = null;
  const drawings = new Drawings();

  async function run() {
    busy = true;
    while (waiting) {
      const edits = waiting;
      under_way = edits;
      waiting = null;
      try {
        const narrow = matchMedia('(max-width: 40rem)').matches;
        const answer = await ask('/api/plan', { edits, want: ['view', 'drawing'], narrow, ground: ground(), have: drawings.have });
        answer.drawing = drawings.whole(answer.drawing);
        if (!waiting) show(answer, edits);
      } catch (error) {
        if (!waiting) fail(error);
      }
    }
    busy = false;
    under_way = null;
  }

  return (/** @type {Edit[]} */ edits) => {
    // a slider tells its move and then its end: one answer is enough
    if (under_way && !waiting && edits.length && JSON.stringify(edits) === JSON.stringify(under_way)) return;
    waiting = edits;
    if (!busy) run();
  };
}

/**
 * Listens for changes of the file.
 * @param {(seen: string) => void} changed @param {() => void} lost
 */
export async function listen(changed, lost) {
  try {
    const answer = await fetch('/api/events', { headers: { Authorization: 'Bearer ' + key } });
    if (!answer.ok || !answer.body) throw new Error('no events');
    for await (const event of pieces(answer.body, '\n\n'))
      if (event.startsWith('data: ')) changed(JSON.parse(event.slice(6)).seen);
  } catch {
    // the server has ended, or the machine slept
  }
  lost();
}
