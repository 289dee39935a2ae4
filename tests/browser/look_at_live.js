'use strict';
// Serves a copy of a sample trip with `tumpline live`, opens its page in headless Chromium and uses it:
//     node look_at_live.js CHROMIUM TUMPLINE SAMPLES FOLDER [PICTURES]
// TUMPLINE_AXE names axe-core's axe.min.js (npm); without it that look is left out, and it is said so.
// Answers 0 if all is well, 1 with what is wrong, 77 if the browser cannot be started here.
const fs = require('node:fs');
const path = require('node:path');
const { Chromium } = require('./chromium.js');
const { answered, axe, center, click, expect, nights, nights_are, press, serve_with, shown, sum, until } = require('./live_page.js');

const [program, tumpline, samples, folder, pictures] = process.argv.slice(2);
const serve = serve_with(tumpline);
const deadline = 50; // milliseconds from the input to the changed page, p95, optimised build
async function check_nights(page) {
  const before = await page.ask(nights);
  expect(before.length > 0, 'the page shows no night');
  for (const drawing of ['#profile', '#map']) {
    const from = await page.ask(center, drawing + ' .handle:last-child');
    const started = await page.ask(nights);
    await press(page, 'mousePressed', from);
    await page.ask(() => { document.body.dataset.dragging = document.body.dataset.shown; });
    for (let step = 1; step <= 16; ++step)
      await press(page, 'mouseMoved', { x: from.x + (drawing === '#map' ? 2 : 14) * step, y: from.y + (drawing === '#map' ? 14 : 0) * step });
    await until(page, () => document.body.dataset.shown !== document.body.dataset.dragging, 'an answer while a night of ' + drawing + ' is dragged');
    await press(page, 'mouseReleased', { x: from.x + (drawing === '#map' ? 32 : 224), y: from.y + (drawing === '#map' ? 224 : 0) }, 0);
    const moved = await page.ask(nights);
    expect(moved.join() !== started.join(), 'dragging the last night on ' + drawing + ' moves nothing: ' + moved);
    await click(page, '#undo');
    await until(page, nights_are, 'undo to bring the nights back to ' + started, started.join());
  }
  await page.ask(() => document.querySelector('#profile .handle:last-child').focus());
  await page.key('ArrowRight');
  await until(page, (were) => [...document.querySelectorAll('#profile .handle')].map((handle) => handle.getAttribute('aria-valuetext')).join() !== were,
    'the arrow key to move a night', before.join());
  await click(page, '#undo');
  await until(page, nights_are, 'undo to bring the night back', before.join());
}

async function check_things(page) {
  const bearer = () => document.querySelector('[data-thing="kit/0"]').closest('.pack').querySelector('.who').textContent;
  const other = () => {
    const here = document.querySelector('[data-thing="kit/0"]').closest('.pack');
    const pack = [...document.querySelectorAll('.pack[data-to^="member:"]')].find((one) => one !== here);
    const box = pack.getBoundingClientRect();
    return { x: box.left + 30, y: box.top + 12 };
  };
  const before = await page.ask(bearer);
  const from = await page.ask(center, '[data-thing="kit/0"]');
  const to = await page.ask(other);
  await answered(page, 'a thing handed over', async () => {
    await press(page, 'mousePressed', from);
    await press(page, 'mouseMoved', { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 });
    await press(page, 'mouseMoved', to);
    await press(page, 'mouseReleased', to, 0);
  });
  const after = await page.ask(bearer);
  expect(after !== before, 'the tent stays with ' + before);
  await page.ask(() => document.querySelector('[data-thing="kit/0"]').focus());
  await page.ask(() => document.querySelector('[data-thing="kit/0"]').click());
  expect(await page.ask(() => document.activeElement.getAttribute('role') === 'menuitem'), 'the menu of a thing takes no focus');
  await page.key('Escape');
  await answered(page, 'undo', () => click(page, '#undo'));
  expect((await page.ask(bearer)) === before, 'undo does not bring the tent back');
  const at_start = await page.ask(shown);
  await page.ask(() => document.querySelector('[data-thing="kit/0"]').click());
  await page.ask(() => [...document.querySelectorAll('[role=menuitem]')].find((item) => item.textContent.startsWith('give to ')).click());
  await until(page, (n) => Number(document.body.dataset.shown) > n, 'a thing handed over by its menu', at_start);
  expect((await page.ask(bearer)) === after, 'the menu leaves the tent with ' + before);
  await answered(page, 'undo', () => click(page, '#undo'));
}

// A finger on a telephone's screen.
async function check_touch(page) {
  await page.size(360, 900);
  await until(page, () => document.querySelector('#profile svg')?.viewBox.baseVal.width < 400, 'the narrow drawings');
  const before = await page.ask(nights);
  const from = await page.ask(center, '#profile .handle:last-child');
  const touch = (type, x) => page.send('Input.dispatchTouchEvent', { type, touchPoints: type === 'touchEnd' ? [] : [{ x, y: from.y }] });
  await touch('touchStart', from.x);
  for (let step = 1; step <= 10; ++step) await touch('touchMove', from.x + 9 * step);
  await touch('touchEnd');
  await until(page, (were) => [...document.querySelectorAll('#profile .handle')].map((handle) => handle.getAttribute('aria-valuetext')).join() !== were,
    'a finger to move the last night', before.join());
  expect(await page.ask(() => document.scrollingElement.scrollLeft === 0), 'the finger scrolls the page sideways');
  await page.ask(() => document.getElementById('undo').click());
  await until(page, nights_are, 'undo to bring the night back from the finger', before.join());
  await page.size(1440, 1000);
  await until(page, () => document.querySelector('#profile svg')?.viewBox.baseVal.width > 400, 'the wide drawings');
}

async function check_ground(page) {
  const seen = await page.ask(() => ({
    lines: document.querySelectorAll('#ground g.land path').length,
    relief: document.querySelectorAll('#ground #relief').length,
    used: [...document.querySelectorAll('#map use')].filter((one) => document.querySelector(one.getAttribute('href'))).length,
    width: document.querySelector('#map [data-k]')?.style.getPropertyValue('--k'),
    words: document.getElementById('ground-words').textContent,
  }));
  expect(seen.lines > 5 && seen.relief === 1 && seen.used > 0 && seen.width, 'the map has no ground: ' + JSON.stringify(seen));
  expect(seen.words.includes('Contours every') && seen.words.includes('an invented ground'), 'the ground says not what it is: ' + seen.words);
  await page.ask(() => scrollTo(0, 0));
  const hidden = await page.ask(() => document.getElementById('profile').getBoundingClientRect().bottom - document.getElementById('conditions').getBoundingClientRect().top);
  expect(hidden <= 0, 'the sliders cover ' + hidden + ' px of the profile');
}

async function check_compare(page) {
  const steps = () => [...document.querySelectorAll('#history option')].map((option) => option.textContent);
  await click(page, '#pin');
  await page.ask(() => document.querySelector('[data-slider="set-off"] input').focus());
  await answered(page, 'an earlier start', () => page.key('ArrowLeft'));
  await page.ask(() => document.querySelector('[data-slider="pace"] input').focus());
  await answered(page, 'a slower pace', () => page.key('ArrowLeft'));
  const ghosts = await page.ask(() => [...document.querySelectorAll('.day .ghost')].map((one) => one.textContent));
  expect(ghosts.length && ghosts.every((text) => /^pinned \S/.test(text)), 'the pinned figures are not beside the new ones: ' + ghosts);
  const history = await page.ask(steps);
  expect(history.length === 3 && history[1].startsWith('1. Set off ') && history[2].startsWith('2. Pace '), 'the steps are ' + history);
  await answered(page, 'the first step', () => page.ask(() => {
    const choice = document.getElementById('history');
    choice.value = '0';
    choice.dispatchEvent(new Event('change'));
  }));
  expect(!(await page.ask(() => document.querySelectorAll('.day .ghost').length)), 'figures differ though the plan is the pinned one');
  await page.ask(() => document.querySelector('[data-slider="hours"] input').focus());
  for (let i = 0; i < 3; ++i) await answered(page, 'longer days', () => page.key('ArrowRight'));
  const once = await page.ask(steps);
  expect(once.length <= 4 && once.at(-1) === (once.length - 1) + '. Hours a day 9.5 h', 'keys in one go make the steps ' + once);
  while (!(await page.ask(() => document.getElementById('undo').disabled))) await answered(page, 'undo', () => click(page, '#undo'));
  expect(await page.ask(() => document.getElementById('undo').disabled && !document.getElementById('redo').disabled), 'one is not at the first step');
  await click(page, '#pin');
}

// From the key that the browser takes to the frame after the changed page.
async function check_slider(page) {
  const clock = () => document.querySelector('.day .numbers b').textContent;
  const before = await page.ask(clock);
  await page.ask(() => {
    document.querySelector('[data-slider="set-off"] input').focus();
    globalThis.taken = [];
    let start = 0;
    addEventListener('keydown', (event) => { start = event.timeStamp; }, true);
    new MutationObserver(() => requestAnimationFrame(() => setTimeout(() => globalThis.taken.push(performance.now() - start))))
      .observe(document.body, { attributeFilter: ['data-shown'] });
  });
  for (let i = 0; i < 20; ++i) {
    await page.key(i < 10 ? 'ArrowLeft' : 'ArrowRight');
    await until(page, (n) => globalThis.taken.length > n, 'a slider', i);
  }
  const taken = (await page.ask(() => globalThis.taken)).sort((a, b) => a - b);
  const p95 = taken[Math.floor(0.95 * (taken.length - 1))];
  console.log('a key on a slider until the page has changed: median ' + taken[Math.floor(taken.length / 2)].toFixed(0) + ' ms, p95 ' + p95.toFixed(0) + ' ms');
  if (process.env.TUMPLINE_TEST_SPEED) expect(p95 <= deadline, 'p95 is ' + p95 + ' ms');
  await until(page, (want) => document.querySelector('.day .numbers b').textContent === want, 'ten steps there and back to end at the same arrival', before);
}

async function check_writing(page, trip) {
  const before = fs.readFileSync(trip, 'utf8');
  await page.ask(() => document.querySelector('[data-slider="hours"] input').focus());
  await answered(page, 'a change to write', () => page.key('ArrowRight'));
  await click(page, '#write');
  await until(page, () => document.getElementById('writing').open, 'the difference');
  expect((await page.ask(() => document.querySelectorAll('#difference .added').length)) === 1, 'one line is to be added');
  if (pictures) await page.picture(path.join(pictures, 'live-writing.png'));
  await answered(page, 'the file written', () => click(page, '#write-now'));
  const after = fs.readFileSync(trip, 'utf8');
  const lines = before.split('\n');
  const differing = after.split('\n').filter((line, i) => line !== lines[i]);
  expect(after !== before && differing.length === 1, 'written: ' + differing.length + ' lines differ');
  await answered(page, 'another hand', () => fs.writeFileSync(trip, before));
  fs.writeFileSync(trip, '{ not a trip');
  await until(page, () => !document.getElementById('problems').hidden, 'the problems of a file that is no trip');
  await answered(page, 'the file mended', () => fs.writeFileSync(trip, before));
  expect(await page.ask(() => document.getElementById('problems').hidden), 'the problems stay after the file is mended');
}

async function check_sizes(page) {
  for (const [width, scheme] of [[360, 'light'], [768, 'dark'], [1280, 'light'], [2560, 'dark']]) {
    await page.size(width, 900);
    await page.media('screen', scheme);
    await until(page, (narrow) => document.querySelector('#profile svg').viewBox.baseVal.width < 400 === narrow, 'the drawings of ' + width + ' px', width <= 640);
    await page.ask(() => new Promise((resolve) => setTimeout(resolve, 150)));
    const wide = await page.ask(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    expect(wide <= 0, width + ' px: the page is ' + wide + ' px wider than the window');
    const small = await page.ask(() => [...document.querySelectorAll('button:not(.link), input, select')].filter((one) => one.getClientRects().length && one.getBoundingClientRect().height < 43.5).map((one) => one.outerHTML.slice(0, 80)));
    expect(!small.length, width + ' px: targets below 44 px: ' + small.slice(0, 3));
    const nameless = await page.ask(() => [...document.querySelectorAll('button, input, select')].filter((one) => !(one.textContent.trim() || one.getAttribute('aria-label') || one.closest('label'))).length);
    expect(!nameless, width + ' px: ' + nameless + ' controls have no name');
    await axe(page, width + ' px, ' + scheme);
    if (pictures) await page.picture(path.join(pictures, 'live-' + width + '-' + scheme + '.png'));
  }
  await page.media('print', 'light');
  expect(await page.ask(() => getComputedStyle(document.getElementById('conditions')).display === 'none'), 'sliders are printed');
}

async function main() {
  fs.rmSync(folder, { recursive: true, force: true });
  fs.cpSync(path.join(samples, 'saddle'), folder, { recursive: true });
  if (pictures) fs.mkdirSync(pictures, { recursive: true });
  const trip = path.join(folder, 'trip.json');
  const began = Date.now();
  const { server, address } = await serve(trip);
  const browser = new Chromium(program);
  try {
    let page;
    try {
      page = await browser.page();
    } catch (error) {
      console.log('skipped: this machine cannot start the browser: ' + error.message);
      return 77;
    }
    await page.size(1440, 1000);
    await page.open(address);
    if (!(await until(page, () => document.body.dataset.shown, 'the first plan'))) return 1;
    if (pictures) {
      await until(page, () => document.getElementById('odds').dataset.stale === 'false' && document.querySelector('.day .odds svg'), 'the odds');
      await page.picture(path.join(pictures, 'live.png'));
    }
    await check_ground(page);
    await check_nights(page);
    await check_touch(page);
    await check_things(page);
    await check_compare(page);
    await axe(page, 'the page');
    await check_slider(page);
    await check_writing(page, trip);
    await check_sizes(page);
    const other = page.requests.filter((url) => !url.startsWith(address.split('#')[0]) && !url.startsWith('data:'));
    expect(!other.length, 'the page asks others: ' + other);
    // what the page was told on purpose while the file was no trip is no fault of it
    const complaints = page.complaints.filter((text) => !text.includes('422'));
    expect(!complaints.length, 'the console says: ' + complaints.join(' | '));
    console.log('used for ' + ((Date.now() - began) / 1000).toFixed(1) + ' s');
    server.kill('SIGINT');
    await page.media('screen', 'light');
    await page.size(1280, 900);
    await page.ask(() => document.querySelector('[data-slider="set-off"] input').focus());
    await page.key('ArrowLeft');
    await until(page, () => !document.getElementById('problems').hidden, 'a word on the server that has ended');
  } finally {
    server.kill();
    await browser.end().catch(() => {});
  }
  return sum() ? 1 : 0;
}

main().then((code) => process.exit(code), (error) => { console.log(error.stack); process.exit(1); });
