'use strict';
// A headless Chromium spoken to over pipes (--remote-debugging-pipe), so that neither a package nor
// a port is needed. Messages are JSON, each ended by a NUL.
const { spawn } = require('node:child_process');
const fs = require('node:fs');
const os = require('node:os');
const path = require('node:path');

class Chromium {
  constructor(program) {
    this.profile = fs.mkdtempSync(path.join(os.tmpdir(), 'tumpline-browser-'));
    this.process = spawn(program, [
      '--headless', '--no-sandbox', '--disable-gpu', '--disable-quic', '--no-first-run',
      '--disable-background-networking', '--disable-component-update', '--disable-sync',
      '--hide-scrollbars', '--user-data-dir=' + this.profile, '--remote-debugging-pipe',
    ], { stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'] });
    this.process.on('error', (error) => this.fail(error));
    this.process.on('exit', () => this.fail(new Error('the browser has ended')));
    this.next = 1;
    this.waiting = new Map();
    this.listeners = [];
    let rest = '';
    this.process.stdio[4].setEncoding('utf8');
    this.process.stdio[4].on('data', (chunk) => {
      const messages = (rest + chunk).split('\0');
      rest = messages.pop();
      for (const message of messages) this.take(JSON.parse(message));
    });
    this.process.stdio[3].on('error', () => {});
  }

  fail(error) {
    for (const { reject } of this.waiting.values()) reject(error);
    this.waiting.clear();
    this.failed = error;
  }

  take(message) {
    const waiting = this.waiting.get(message.id);
    if (waiting) {
      this.waiting.delete(message.id);
      if (message.error) waiting.reject(new Error(waiting.method + ': ' + message.error.message));
      else waiting.resolve(message.result);
      return;
    }
    for (const listener of this.listeners) listener(message);
  }

  send(method, params = {}, sessionId = undefined) {
    if (this.failed) return Promise.reject(this.failed);
    const id = this.next++;
    return new Promise((resolve, reject) => {
      this.waiting.set(id, { resolve, reject, method });
      this.process.stdio[3].write(JSON.stringify({ id, method, params, sessionId }) + '\0');
    });
  }

  async page() {
    const { targetId } = await this.send('Target.createTarget', { url: 'about:blank' });
    const { sessionId } = await this.send('Target.attachToTarget', { targetId, flatten: true });
    return new Page(this, sessionId, targetId);
  }

  async end() {
    const ended = new Promise((resolve) => this.process.once('exit', resolve));
    this.send('Browser.close').catch(() => {});
    const slow = setTimeout(() => this.process.kill('SIGKILL'), 5000);
    await ended;
    clearTimeout(slow);
    fs.rmSync(this.profile, { recursive: true, force: true, maxRetries: 5 });
  }
}

// One tab: what it asked for and what it complained about is kept.
class Page {
  constructor(browser, session, target) {
    Object.assign(this, { browser, session, target, requests: [], complaints: [], waiting: [] });
    browser.listeners.push((message) => {
      if (message.sessionId !== session) return;
      const p = message.params;
      if (message.method === 'Network.requestWillBeSent') this.requests.push(p.request.url);
      if (message.method === 'Runtime.exceptionThrown')
        this.complaints.push(p.exceptionDetails.exception?.description || p.exceptionDetails.text);
      if (message.method === 'Runtime.consoleAPICalled' && /error|warning|assert/.test(p.type))
        this.complaints.push(p.type + ': ' + p.args.map((a) => a.value).join(' '));
      if (message.method === 'Log.entryAdded') this.complaints.push(p.entry.text);
      this.waiting = this.waiting.filter(({ method, resolve }) => {
        if (method === message.method) resolve(p);
        return method !== message.method;
      });
    });
  }

  send(method, params) { return this.browser.send(method, params, this.session); }

  once(method) { return new Promise((resolve) => this.waiting.push({ method, resolve })); }

  async open(url) {
    for (const domain of ['Page', 'Runtime', 'Log', 'Network']) await this.send(domain + '.enable');
    const loaded = this.once('Page.loadEventFired');
    await this.send('Page.navigate', { url });
    await loaded;
  }

  async size(width, height) {
    await this.send('Emulation.setDeviceMetricsOverride',
      { width, height, deviceScaleFactor: 1, mobile: width < 500 });
    await this.send('Emulation.setTouchEmulationEnabled', { enabled: width < 500 });
  }

  async media(media, scheme) {
    await this.send('Emulation.setEmulatedMedia',
      { media, features: [{ name: 'prefers-color-scheme', value: scheme }] });
  }

  // Runs a function in the page; arguments and answer are JSON.
  async ask(work, ...args) {
    const { result, exceptionDetails } = await this.send('Runtime.evaluate', {
      expression: '(' + work + ')(...' + JSON.stringify(args) + ')',
      returnByValue: true, awaitPromise: true,
    });
    if (exceptionDetails)
      throw new Error(exceptionDetails.exception?.description || exceptionDetails.text);
    return result.value;
  }

  // Runs a script as it stands.
  run(script) { return this.send('Runtime.evaluate', { expression: script }); }

  async point(type, x, y) { await this.send('Input.dispatchMouseEvent', { type, x, y }); }

  async tap(x, y) {
    await this.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [{ x, y }] });
    await this.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] });
  }

  async key(key) {
    for (const type of ['keyDown', 'keyUp'])
      await this.send('Input.dispatchKeyEvent', { type, key, code: key });
  }

  async picture(file) {
    const { data } = await this.send('Page.captureScreenshot', { format: 'png' });
    fs.writeFileSync(file, Buffer.from(data, 'base64'));
  }

  async print(file, paper) {
    const { data } = await this.send('Page.printToPDF', {
      paperWidth: paper.width_in, paperHeight: paper.height_in, preferCSSPageSize: false,
      printBackground: true, displayHeaderFooter: false,
      marginTop: 0.4, marginBottom: 0.4, marginLeft: 0.4, marginRight: 0.4,
    });
    fs.writeFileSync(file, Buffer.from(data, 'base64'));
  }

  async close() { await this.browser.send('Target.closeTarget', { targetId: this.target }); }
}

module.exports = { Chromium };
