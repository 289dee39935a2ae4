'use strict';
// What the tests of the live page share: its server, its handles, and what they found wrong.
const { spawn } = require('node:child_process');
const fs = require('node:fs');

let wrong = 0;

function expect(holds, what) {
  if (holds) return;
  wrong += 1;
  console.log('WRONG ' + what);
}

// Starts the server of a trip; answers it and the address of its page.
const serve_with = (tumpline) => (trip) => {
  const server = spawn(tumpline, ['live', trip], { stdio: ['ignore', 'pipe', 'inherit'] });
  return new Promise((resolve, reject) => {
    server.stdout.once('data', (text) => resolve({ server, address: String(text).trim() }));
    server.once('exit', (code) => reject(new Error('the server ended with ' + code)));
  });
};

// How often the page has shown a plan.
const shown = () => Number(document.body.dataset.shown || '0');

async function until(page, work, what, ...args) {
  const end = Date.now() + 15000;
  while (Date.now() < end) {
    if (await page.ask(work, ...args)) return true;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
  expect(false, 'waited in vain for ' + what);
  return false;
}

// Does something and waits for the plan that answers it.
async function answered(page, what, work) {
  const before = await page.ask(shown);
  await work();
  await until(page, (n) => Number(document.body.dataset.shown || '0') > n, what, before);
}

const nights = () => [...document.querySelectorAll('#profile .handle')].map((handle) => handle.getAttribute('aria-valuetext'));
const nights_are = (want) => [...document.querySelectorAll('#profile .handle')].map((handle) => handle.getAttribute('aria-valuetext')).join() === want;
const center = (selector) => {
  const element = document.querySelector(selector);
  if (!element) return null;
  element.scrollIntoView({ block: 'center' });
  const box = element.getBoundingClientRect();
  return { x: box.left + box.width / 2, y: box.top + box.height / 2 };
};

async function press(page, type, spot, buttons = 1) {
  await page.send('Input.dispatchMouseEvent', { type, x: spot.x, y: spot.y, button: 'left', buttons, clickCount: 1 });
}

async function click(page, selector) {
  const spot = await page.ask(center, selector);
  if (!spot) return expect(false, 'there is no ' + selector);
  await press(page, 'mousePressed', spot);
  await press(page, 'mouseReleased', spot, 0);
}

// What shuts out people who do not see or do not point, as axe-core knows it; TUMPLINE_AXE names its
// axe.min.js.
async function axe(page, what) {
  const file = process.env.TUMPLINE_AXE;
  if (!file || !fs.existsSync(file)) {
    console.log(what + ' is not looked at by axe-core: TUMPLINE_AXE does not name its axe.min.js');
    return;
  }
  if (!(await page.ask(() => Boolean(globalThis.axe)))) await page.run(fs.readFileSync(file, 'utf8'));
  const violations = await page.ask(async () => (await globalThis.axe.run()).violations.map((one) => one.id + ': ' + one.nodes.slice(0, 3).map((node) => node.html.slice(0, 160)).join(' | ')));
  expect(!violations.length, 'axe-core finds on ' + what + ': ' + violations.join('\n'));
}

const sum = () => wrong;

module.exports = { answered, axe, center, click, expect, nights, nights_are, press, serve_with, shown, sum, until };
