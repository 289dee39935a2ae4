'use strict';
// A headless Firefox spoken to by WebDriver BiDi over its own WebSocket, so that no package and no
// driver is needed. What a client must know of RFC 6455 for texts on one machine stands here.
const { spawn } = require('node:child_process');
const crypto = require('node:crypto');
const fs = require('node:fs');
const net = require('node:net');
const os = require('node:os');
const path = require('node:path');

function frame(text) {
  const payload = Buffer.from(text);
  const mask = crypto.randomBytes(4);
  const long = payload.length > 65535 ? 127 : payload.length > 125 ? 126 : payload.length;
  const head = Buffer.alloc(long === 127 ? 10 : long === 126 ? 4 : 2);
  head[0] = 0x81;
  head[1] = 0x80 | long;
  if (long === 126) head.writeUInt16BE(payload.length, 2);
  if (long === 127) head.writeBigUInt64BE(BigInt(payload.length), 2);
  return Buffer.concat([head, mask, payload.map((byte, i) => byte ^ mask[i % 4])]);
}

// Takes whole frames from the front of `bytes`; answers their texts and what is left.
function unframed(bytes, parts) {
  const texts = [];
  for (;;) {
    if (bytes.length < 2) return { texts, rest: bytes };
    let length = bytes[1] & 0x7f;
    let at = 2;
    if (length === 126) { if (bytes.length < 4) return { texts, rest: bytes }; length = bytes.readUInt16BE(2); at = 4; }
    else if (length === 127) { if (bytes.length < 10) return { texts, rest: bytes }; length = Number(bytes.readBigUInt64BE(2)); at = 10; }
    if (bytes.length < at + length) return { texts, rest: bytes };
    if ((bytes[0] & 0x0f) <= 1) parts.push(bytes.subarray(at, at + length)); // text, or more of one
    if ((bytes[0] & 0x80) && parts.length) { texts.push(Buffer.concat(parts).toString('utf8')); parts.length = 0; }
    bytes = bytes.subarray(at + length);
  }
}

class Firefox {
  static async start(program) {
    const one = new Firefox();
    one.profile = fs.mkdtempSync(path.join(os.tmpdir(), 'tumpline-firefox-'));
    fs.writeFileSync(path.join(one.profile, 'user.js'), ['app.update.enabled', 'datareporting.policy.dataSubmissionEnabled', 'toolkit.telemetry.enabled',
      'network.captive-portal-service.enabled', 'network.connectivity-service.enabled', 'browser.safebrowsing.downloads.remote.enabled', 'extensions.update.enabled']
      .map((name) => 'user_pref("' + name + '", false);\n').join(''));
    one.process = spawn(program, ['--headless', '--no-remote', '--profile', one.profile, '--remote-debugging-port=0'],
      { stdio: ['ignore', 'ignore', 'pipe'], env: { ...process.env, HOME: one.profile } });
    const address = await new Promise((resolve, reject) => {
      let said = '';
      const slow = setTimeout(() => reject(new Error('it does not say where it listens')), 30000);
      one.process.on('error', reject);
      one.process.on('exit', () => reject(new Error('it has ended')));
      one.process.stderr.on('data', (text) => {
        said += text;
        const found = said.match(/WebDriver BiDi listening on ws:\/\/127\.0\.0\.1:(\d+)/);
        if (found) { clearTimeout(slow); resolve(Number(found[1])); }
      });
    });
    await one.connect(address);
    await one.send('session.new', { capabilities: {} });
    await one.send('session.subscribe', { events: ['log.entryAdded', 'network.beforeRequestSent'] });
    one.context = (await one.send('browsingContext.getTree', {})).contexts[0].context;
    return one;
  }

  constructor() { Object.assign(this, { next: 1, waiting: new Map(), complaints: [], requests: [] }); }

  connect(port) {
    this.socket = net.connect(port, '127.0.0.1');
    const key = crypto.randomBytes(16).toString('base64');
    this.socket.write('GET /session HTTP/1.1\r\nHost: 127.0.0.1:' + port + '\r\nUpgrade: websocket\r\nConnection: Upgrade\r\nSec-WebSocket-Version: 13\r\nSec-WebSocket-Key: ' + key + '\r\n\r\n');
    let bytes = Buffer.alloc(0);
    let open = false;
    const parts = [];
    return new Promise((resolve, reject) => {
      this.socket.on('error', reject);
      this.socket.on('data', (block) => {
        bytes = Buffer.concat([bytes, block]);
        if (!open) {
          const end = bytes.indexOf('\r\n\r\n');
          if (end < 0) return;
          if (!bytes.toString('latin1').startsWith('HTTP/1.1 101')) return reject(new Error('it takes no WebSocket'));
          open = true;
          bytes = bytes.subarray(end + 4);
          resolve();
        }
        const { texts, rest } = unframed(bytes, parts);
        bytes = rest;
        for (const text of texts) this.take(JSON.parse(text));
      });
    });
  }

  take(message) {
    if (message.method === 'log.entryAdded' && message.params.level === 'error') this.complaints.push(message.params.text);
    if (message.method === 'network.beforeRequestSent') this.requests.push(message.params.request.url);
    const waiting = this.waiting.get(message.id);
    if (!waiting) return;
    this.waiting.delete(message.id);
    if (message.type === 'error') waiting.reject(new Error(message.error + ': ' + message.message));
    else waiting.resolve(message.result);
  }

  send(method, params) {
    const id = this.next++;
    this.socket.write(frame(JSON.stringify({ id, method, params })));
    return new Promise((resolve, reject) => this.waiting.set(id, { resolve, reject }));
  }

  open(url) { return this.send('browsingContext.navigate', { context: this.context, url, wait: 'complete' }); }

  size(width, height) { return this.send('browsingContext.setViewport', { context: this.context, viewport: { width, height } }); }

  // Runs a function in the page; arguments and answer are JSON.
  async ask(work, ...args) {
    const answer = await this.send('script.evaluate', { expression: 'Promise.resolve((' + work + ')(...' + JSON.stringify(args) + ')).then((it) => JSON.stringify(it ?? null))',
      target: { context: this.context }, awaitPromise: true });
    if (answer.type === 'exception') throw new Error(answer.exceptionDetails.text);
    return JSON.parse(answer.result.value);
  }

  // Runs a script as it stands.
  run(script) { return this.send('script.evaluate', { expression: script + '\n;0', target: { context: this.context }, awaitPromise: false }); }

  key(key) {
    const codes = { ArrowLeft: '\uE012', ArrowRight: '\uE014' };
    const value = codes[key] || key;
    return this.send('input.performActions', { context: this.context, actions: [{ type: 'key', id: 'keys', actions: [{ type: 'keyDown', value }, { type: 'keyUp', value }] }] });
  }

  // A pointer that is pressed, moved from spot to spot, and let go.
  drag(spots, pointerType = 'mouse') {
    const move = (spot) => ({ type: 'pointerMove', x: Math.round(spot.x), y: Math.round(spot.y), duration: 20 });
    return this.send('input.performActions', { context: this.context, actions: [{ type: 'pointer', id: pointerType, parameters: { pointerType },
      actions: [move(spots[0]), { type: 'pointerDown', button: 0 }, ...spots.slice(1).map(move), { type: 'pointerUp', button: 0 }] }] });
  }

  async end() {
    const ended = new Promise((resolve) => this.process.once('exit', resolve));
    this.send('browser.close', {}).catch(() => {});
    const slow = setTimeout(() => this.process.kill('SIGKILL'), 5000);
    await ended;
    clearTimeout(slow);
    this.socket.destroy();
    fs.rmSync(this.profile, { recursive: true, force: true, maxRetries: 5 });
  }
}

module.exports = { Firefox };
