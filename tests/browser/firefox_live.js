'use strict';
// The live page in headless Firefox: node firefox_live.js FIREFOX TUMPLINE SAMPLES FOLDER
// Answers 0 if all is well, 1 with what is wrong, 77 if the browser cannot be started here.
const fs = require('node:fs');
const path = require('node:path');
const { Firefox } = require('./firefox.js');
const { answered, axe, center, expect, nights, serve_with, sum, until } = require('./live_page.js');

const [program, tumpline, samples, folder] = process.argv.slice(2);
const serve = serve_with(tumpline);
const other_nights = (were) => [...document.querySelectorAll('#profile .handle')].map((handle) => handle.getAttribute('aria-valuetext')).join() !== were;
const same_nights = (were) => [...document.querySelectorAll('#profile .handle')].map((handle) => handle.getAttribute('aria-valuetext')).join() === were;
const undo = () => document.getElementById('undo').click();

async function use(page, address) {
  await page.size(1440, 1000);
  await page.open(address);
  if (!(await until(page, () => document.body.dataset.shown, 'the first plan'))) return;
  const were = (await page.ask(nights)).join();
  for (const [drawing, x, y] of [['#profile', 14, 0], ['#map', 2, 14]]) {
    const from = await page.ask(center, drawing + ' .handle:last-child');
    await page.drag(Array.from({ length: 17 }, (_, i) => ({ x: from.x + x * i, y: from.y + y * i })));
    await until(page, other_nights, 'a night of ' + drawing + ' to be dragged', were);
    await page.ask(undo);
    await until(page, same_nights, 'undo to bring the night back', were);
  }
  await page.ask(() => document.querySelector('#profile .handle:last-child').focus());
  await page.key('ArrowRight');
  await until(page, other_nights, 'the arrow key to move a night', were);
  await page.ask(undo);
  await until(page, same_nights, 'undo to bring the night back', were);
  const clock = () => document.querySelector('.day .numbers b').textContent;
  const before = await page.ask(clock);
  await page.ask(() => document.querySelector('[data-slider="set-off"] input').focus());
  await answered(page, 'an earlier start', () => page.key('ArrowLeft'));
  expect((await page.ask(clock)) !== before, 'an earlier start arrives at the same hour');
  await answered(page, 'undo', () => page.ask(undo));
  await until(page, () => document.getElementById('odds').dataset.stale === 'false' && document.querySelector('.day .odds svg'), 'the odds');
  for (const width of [768, 2560, 500]) { // narrower no window of this browser is
    await page.size(width, 900);
    await until(page, (narrow) => document.querySelector('#profile svg').viewBox.baseVal.width < 400 === narrow, 'the drawings of ' + width + ' px', width < 641);
    const wide = await page.ask(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(wide <= 0, width + ' px: the page is ' + wide + ' px wider than the window');
  }
  const from = await page.ask(center, '#profile .handle:last-child');
  await page.drag(Array.from({ length: 11 }, (_, i) => ({ x: from.x + 9 * i, y: from.y })), 'touch');
  await until(page, other_nights, 'a finger to move the last night', were);
  await axe(page, 'the page in Firefox');
}

async function main() {
  fs.rmSync(folder, { recursive: true, force: true });
  fs.cpSync(path.join(samples, 'saddle'), folder, { recursive: true });
  let page;
  try {
    page = await Firefox.start(program);
  } catch (error) {
    console.log('skipped: this machine cannot start the browser: ' + error.message);
    return 77;
  }
  const { server, address } = await serve(path.join(folder, 'trip.json'));
  const began = Date.now();
  try {
    await use(page, address);
    const other = page.requests.filter((url) => /^https?:/.test(url) && !url.startsWith(address.split('#')[0]));
    expect(!other.length, 'the page asks others: ' + other);
    expect(!page.complaints.length, 'the console says: ' + page.complaints.join(' | '));
    console.log('used for ' + ((Date.now() - began) / 1000).toFixed(1) + ' s');
  } finally {
    server.kill();
    await page.end().catch(() => {});
  }
  return sum() ? 1 : 0;
}

main().then((code) => process.exit(code), (error) => { console.log(error.stack); process.exit(1); });
