'use strict';
// The live page where things go another way than one would wish, and what it says beside the plan:
//     node odd_ways_live.js CHROMIUM TUMPLINE SAMPLES FOLDER [PICTURES]
// A trip that cannot be read and then can, two tabs on one trip, sixty days, a server that ends while a
// night is dragged; odds, nights, the pinned plan, a cart. Answers 0 if all is well, 1 with what is
// wrong, 77 if the browser cannot be started here.
const fs = require('node:fs');
const path = require('node:path');
const { Chromium } = require('./chromium.js');
const { answered, axe, center, click, expect, nights, press, serve_with, sum, until } = require('./live_page.js');

const [program, tumpline, samples, folder, pictures] = process.argv.slice(2);
const serve = serve_with(tumpline);

const problems_shown = () => !document.getElementById('problems').hidden;

async function slider(page, id, key, what) {
  await page.ask((name) => document.querySelector(`[data-slider="${name}"] input`).focus(), id);
  await answered(page, what, () => page.key(key));
}

// Console errors that are no answer of the server told on purpose.
function check_console(page, what) {
  const complaints = page.complaints.filter((text) => !/\b(422|409)\b/.test(text));
  expect(!complaints.length, what + ': the console says ' + complaints.join(' | '));
}

async function check_unread(browser) {
  const trip = path.join(folder, 'saddle', 'trip.json');
  const good = fs.readFileSync(trip, 'utf8');
  fs.writeFileSync(trip, '{ "tumpline": 1, ');
  const { server, address } = await serve(trip);
  const page = await browser.page();
  try {
    await page.size(1280, 900);
    await page.open(address);
    await until(page, problems_shown, 'the problems of a trip that cannot be read');
    expect(await page.ask(() => /trip\.json/.test(document.getElementById('problems').textContent)), 'the problem names no file');
    await axe(page, 'a page without a plan');
    fs.writeFileSync(trip, good);
    await until(page, () => document.body.dataset.shown, 'the plan of a trip that can be read by now');
    expect(!(await page.ask(problems_shown)), 'the problems stay though the trip can be read');
    check_console(page, 'a trip that cannot be read');
  } finally {
    await page.close();
    server.kill();
  }
}

async function check_two_tabs(browser) {
  const trip = path.join(folder, 'saddle', 'trip.json');
  const { server, address } = await serve(trip);
  const [one, other] = [await browser.page(), await browser.page()];
  const hours = (page) => page.ask(() => document.querySelector('[data-slider="hours"] output').textContent);
  try {
    for (const page of [one, other]) {
      await page.send('Page.bringToFront');
      await page.size(1280, 900);
      await page.open(address);
      await until(page, () => document.body.dataset.shown, 'the first plan of a tab');
    }
    await slider(other, 'set-off', 'ArrowLeft', 'an earlier start in the second tab');
    await other.ask(() => document.getElementById('write').click());
    await until(other, () => document.getElementById('writing').open, 'the difference in the second tab');
    await one.send('Page.bringToFront');
    await slider(one, 'hours', 'ArrowRight', 'longer days in the first tab');
    const wish = await hours(one);
    await one.ask(() => document.getElementById('write').click());
    await until(one, () => document.getElementById('writing').open, 'the difference in the first tab');
    await answered(one, 'what the first tab writes', () => one.ask(() => document.getElementById('write-now').click()));
    const written = fs.readFileSync(trip, 'utf8');
    await other.send('Page.bringToFront');
    await other.ask(() => document.getElementById('write-now').click());
    await until(other, () => /nothing was written/.test(document.getElementById('told').textContent) || /has changed/.test(document.getElementById('told').textContent), 'the second tab to say that another hand was quicker');
    expect(fs.readFileSync(trip, 'utf8') === written, 'the second tab writes over what the first has written');
    await until(other, (want) => document.querySelector('[data-slider="hours"] output').textContent === want, 'the second tab to show the hours of the first', wish);
    expect(await other.ask(() => document.getElementById('write').textContent.includes('1 change')), 'the second tab has lost its own change');
    await other.ask(() => document.getElementById('write').click());
    await until(other, () => document.getElementById('writing').open, 'the difference on top of the first tab');
    await answered(other, 'what the second tab writes', () => other.ask(() => document.getElementById('write-now').click()));
    const both = fs.readFileSync(trip, 'utf8');
    expect(/"hours"/.test(both) && both !== written, 'the changes of both tabs are not in the file');
    for (const page of [one, other]) check_console(page, 'two tabs');
  } finally {
    await one.close();
    await other.close();
    server.kill();
  }
}

const odds_fresh = () => document.getElementById('odds').dataset.stale === 'false' && Boolean(document.querySelector('.day .odds svg'));

async function check_beside(browser) {
  const trip = path.join(folder, 'cart', 'trip.json');
  const { server, address } = await serve(trip);
  const page = await browser.page();
  try {
    await page.size(1280, 900);
    await page.open(address);
    await until(page, () => document.body.dataset.shown, 'the first plan');
    await until(page, odds_fresh, 'the first odds');
    const band = () => document.querySelector('.day .odds svg').outerHTML;
    const before = await page.ask(band);
    // the odds of the plan before stay and say so, at the very moment that the plan changes
    await page.ask(() => {
      globalThis.stales = [];
      new MutationObserver(() => globalThis.stales.push(document.getElementById('odds').dataset.stale)).observe(document.body, { attributeFilter: ['data-shown'] });
    });
    await slider(page, 'pace', 'ArrowLeft', 'a slower pace');
    expect((await page.ask(() => globalThis.stales)).includes('true'), 'odds of the plan before are not marked');
    await until(page, odds_fresh, 'the odds of the slower pace');
    expect((await page.ask(band)) !== before, 'a slower pace arrives in the same band');
    if (pictures) await page.picture(path.join(pictures, 'live-odds.png'));
    await answered(page, 'undo', () => page.ask(() => document.getElementById('undo').click()));
    await until(page, odds_fresh, 'the odds after undo');
    expect((await page.ask(band)) === before, 'the same plan has other odds than before');

    await page.ask(() => document.getElementById('pin').click());
    await until(page, () => /No figure differs/.test(document.getElementById('compared').textContent), 'the pinned plan beside itself');
    await slider(page, 'pace', 'ArrowLeft', 'a slower pace beside the pinned one');
    await until(page, () => document.querySelectorAll('#compared tbody tr').length > 2, 'figures beside the pinned ones');
    const rows = await page.ask(() => [...document.querySelectorAll('#compared tbody tr')].map((row) => [...row.children].map((cell) => cell.textContent)));
    const moving = rows.find((row) => row[0] === 'moving');
    expect(moving && moving[1] !== moving[2] && moving[3].startsWith('+'), 'the pinned plan is not beside the new one: ' + moving);
    await axe(page, 'the page with odds and a pinned plan');
    await page.ask(() => document.getElementById('pin').click());
    expect(await page.ask(() => document.getElementById('compare').hidden), 'the comparison stays without a pinned plan');
    await answered(page, 'undo', () => page.ask(() => document.getElementById('undo').click()));

    await answered(page, 'nights that the plan chooses', () => page.ask(() => document.querySelector('#night-tools button').click()));
    await until(page, () => document.querySelectorAll('#night-choices li').length > 1, 'what the next best nights cost');
    const choices = await page.ask(() => [...document.querySelectorAll('#night-choices li button')].map((one) => one.textContent));
    expect(/^Best, cost \d/.test(choices[0]) && /^Second, \d+\.\d\d more: /.test(choices[1]), 'the choices of nights are ' + choices);
    expect(choices[0].endsWith((await page.ask(nights)).join(', ')), 'the nights shown are not the best: ' + choices[0]);
    await answered(page, 'the second best nights', () => page.ask(() => document.querySelectorAll('#night-choices li button')[1].click()));
    expect(choices[1].endsWith((await page.ask(nights)).join(', ')), 'the second best nights are not taken');

    // the cart is chosen apart from how often one goes
    const hands = () => [...document.querySelectorAll('.hands button')].map((one) => one.textContent + (one.getAttribute('aria-pressed') === 'true' ? '*' : ''));
    const chosen = () => document.querySelector('#choices tr.chosen th').textContent;
    expect((await page.ask(hands)).join() === 'Whichever is quickest*,Each piece on one back,On the cart', 'the hands of the portage are ' + (await page.ask(hands)));
    await answered(page, 'the cart', () => page.ask(() => document.querySelectorAll('.hands button')[2].click()));
    expect(/with cart/.test(await page.ask(chosen)), 'the cart is not taken: ' + (await page.ask(chosen)));
    await answered(page, 'backs', () => page.ask(() => document.querySelectorAll('.hands button')[1].click()));
    expect(!/with cart/.test(await page.ask(chosen)), 'the cart is still taken: ' + (await page.ask(chosen)));
    expect((await page.ask(hands)).includes('Each piece on one back*'), 'the choice of hands is not marked');
    await check_drawings_kept(page);
    check_console(page, 'odds, nights and a cart');
  } finally {
    await page.close();
    server.kill();
  }
}

// Sixty days between camps, without tracks; at Camp 31 and Camp 41 nobody sleeps.
function sixty_days() {
  const days = 62; // legs of them
  const slept = (place) => place.name !== 'Camp 31' && place.name !== 'Camp 41';
  const camp = (i) => (i === 0 ? 'Gate' : i === days ? 'Far end' : 'Camp ' + i);
  const legs = Array.from({ length: days }, (_, i) => ({ name: 'Way ' + (i + 1), travel: 'walk', length: '12 km', ascent: '300 m', descent: '280 m', terrain: 'path', from: camp(i), to: camp(i + 1) }));
  const places = Array.from({ length: days - 1 }, (_, i) => ({ name: camp(i + 1), kind: 'camp' }));
  return { tumpline: 1, name: 'Sixty days', start: '2027-06-01', time_zone: 'UTC', route: { legs, places: [{ name: 'Gate', kind: 'start', at: [15.0, 62.0] }, ...places, { name: 'Far end', kind: 'finish' }] },
    party: [{ name: 'Ada', body: '68 kg' }, { name: 'Bo', body: '80 kg' }], kit: [{ item: 'tent', mass: '2.4 kg' }, { item: 'stove', mass: '400 g' }],
    days: { nights: places.filter(slept).map((place) => place.name) } };
}

// Handles that lie on each other: each is taken at its own middle, and any can be laid on top.
async function check_crowded_nights(page) {
  const spot = (i) => page.ask((n) => {
    document.getElementById('profile').scrollIntoView({ block: 'center' });
    const box = document.querySelectorAll('#profile .handle')[n].getBoundingClientRect();
    return { x: box.left + box.width / 2, y: box.top + box.height / 2 };
  }, i);
  const held = () => page.ask(() => document.activeElement.getAttribute('aria-label'));
  await spot(0); // scrolling there lays out what was not seen before
  await page.ask(() => new Promise((resolve) => requestAnimationFrame(() => requestAnimationFrame(resolve))));
  for (const i of [0, 20, 29, 57]) {
    const here = await spot(i);
    const next = await spot(i + 1);
    expect(next.x - here.x < 22, 'the handles of sixty days do not lie on each other: ' + (next.x - here.x) + ' px');
    await press(page, 'mousePressed', here);
    await press(page, 'mouseReleased', here, 0);
    expect(await held() === 'Night ' + (i + 1) + ' at', 'pressing night ' + (i + 1) + ' takes ' + await held());
  }
  const before = await page.ask(nights);
  const from = await spot(29);
  const to = await spot(30); // the next night sleeps two camps on
  await press(page, 'mousePressed', from);
  await press(page, 'mouseMoved', { x: from.x + (to.x - from.x) * 0.3, y: from.y });
  await answered(page, 'a night among sixty dragged', async () => {
    await press(page, 'mouseMoved', { x: (from.x + to.x) / 2, y: from.y });
    await press(page, 'mouseReleased', { x: (from.x + to.x) / 2, y: from.y }, 0);
  });
  await until(page, (name) => [...document.querySelectorAll('#profile .handle')][29].getAttribute('aria-valuetext') === name, 'night 30 at Camp 31', 'Camp 31');
  const after = await page.ask(nights);
  expect(after.every((name, i) => i === 29 || name === before[i]), 'other nights have moved with night 30: ' + after);
  // by the list, without a mouse
  await page.ask(() => {
    const list = document.getElementById('night-to-move');
    list.value = '38';
    list.dispatchEvent(new Event('change'));
  });
  expect(await held() === 'Night 39 at', 'the list leads to ' + await held());
  const on_top = await page.ask(() => {
    const handle = document.activeElement;
    const box = handle.getBoundingClientRect();
    return [0.1, 0.5, 0.9].every((part) => document.elementFromPoint(box.left + part * box.width, box.top + box.height / 2) === handle);
  });
  expect(on_top, 'the night that was chosen does not lie above the others');
  await page.key('ArrowRight');
  await until(page, () => [...document.querySelectorAll('#profile .handle')][38].getAttribute('aria-valuetext') === 'Camp 41', 'night 39 at Camp 41');
}

// Drawings that stay as they are do not come again, and stay on the page.
async function check_drawings_kept(page) {
  await page.ask(() => {
    const asked = window.fetch;
    window.drawings = [];
    window.fetch = async (...what) => {
      const answer = await asked(...what);
      if (String(what[0]) === '/api/plan') window.drawings.push((await answer.clone().json()).drawing);
      return answer;
    };
  });
  await slider(page, 'set-off', 'ArrowRight', 'a later start');
  const sent = await page.ask(() => {
    const last = window.drawings[window.drawings.length - 1];
    return { map: last.map.markup, profile: last.profile.markup, clocks: last.clocks.filter((clock) => clock.markup).length,
      seen: document.querySelectorAll('#map svg, #profile svg').length, cards: [...document.querySelectorAll('.day .clock svg')].length };
  });
  expect(sent.map === null && sent.profile === null, 'a later start sends map and profile once more');
  expect(sent.clocks > 0 && sent.seen >= 2 && sent.cards === sent.clocks, 'drawings are missing after a later start: ' + JSON.stringify(sent));
}

async function check_sixty_days(browser) {
  const trip = path.join(folder, 'sixty.json');
  fs.writeFileSync(trip, JSON.stringify(sixty_days(), null, 2));
  const { server, address } = await serve(trip);
  const page = await browser.page();
  try {
    await page.size(1280, 900);
    await page.open(address);
    if (!(await until(page, () => document.body.dataset.shown, 'the first plan of sixty days'))) return;
    expect((await page.ask(nights)).length === 59, 'of sixty days the page shows ' + (await page.ask(nights)).length + ' nights');
    const began = Date.now();
    await slider(page, 'set-off', 'ArrowLeft', 'an earlier start on sixty days');
    console.log('sixty days: ' + (Date.now() - began) + ' ms from a key to the plan');
    await check_crowded_nights(page);
    for (const width of [360, 1280]) {
      await page.size(width, 900);
      await until(page, (narrow) => document.querySelector('#profile svg').viewBox.baseVal.width < 400 === narrow, 'the drawings of ' + width + ' px', width < 641);
      const wide = await page.ask(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      expect(wide <= 0, 'sixty days at ' + width + ' px: ' + wide + ' px wider than the window');
    }
    await until(page, odds_fresh, 'the odds of sixty days');
    if (pictures) await page.picture(path.join(pictures, 'live-sixty.png'));
    check_console(page, 'sixty days');
  } finally {
    await page.close();
    server.kill();
  }
}

async function check_ended(browser) {
  const trip = path.join(folder, 'saddle', 'trip.json');
  const { server, address } = await serve(trip);
  const page = await browser.page();
  try {
    await page.size(1280, 900);
    await page.open(address);
    await until(page, () => document.body.dataset.shown, 'the first plan');
    const before = await page.ask(nights);
    const from = await page.ask(center, '#profile .handle:last-child');
    await press(page, 'mousePressed', from);
    await press(page, 'mouseMoved', { x: from.x + 10, y: from.y });
    const ended = new Promise((resolve) => server.once('exit', resolve));
    server.kill('SIGKILL');
    await ended;
    for (let step = 1; step <= 12; ++step) await press(page, 'mouseMoved', { x: from.x + 25 * step, y: from.y });
    await press(page, 'mouseReleased', { x: from.x + 300, y: from.y }, 0);
    await until(page, problems_shown, 'a word on the server that ended in a drag');
    expect(await page.ask(() => /does not answer/.test(document.getElementById('problems').textContent)), 'the page does not say that the program has ended');
    expect((await page.ask(nights)).length === before.length, 'the nights are gone with the server');
    expect(!(await page.ask(() => document.querySelector('.dragged'))), 'the night is still held');
    // what the browser itself says of a connection that is refused or cut off is no fault of the page
    const complaints = page.complaints.filter((text) => !/Failed to load resource|net::ERR_/.test(text));
    expect(!complaints.length, 'a server that ends: the console says ' + complaints.join(' | '));
  } finally {
    await page.close();
    server.kill();
  }
}

function prepare() {
  fs.rmSync(folder, { recursive: true, force: true });
  for (const name of ['saddle', 'cart']) fs.cpSync(path.join(samples, 'saddle'), path.join(folder, name), { recursive: true });
  if (pictures) fs.mkdirSync(pictures, { recursive: true });
  const trip = path.join(folder, 'cart', 'trip.json');
  let text = fs.readFileSync(trip, 'utf8');
  text = text.replace(/"kit"\s*:\s*\[/, (start) => start + '\n    {"item": "cart", "mass": "5 kg", "cart_payload": "60 kg"},');
  text = text.replace(/"travel"\s*:\s*"portage"/, (travel) => travel + ', "cart": true');
  fs.writeFileSync(trip, text);
}

async function main() {
  prepare();
  const began = Date.now();
  const browser = new Chromium(program);
  try {
    try {
      await (await browser.page()).close();
    } catch (error) {
      console.log('skipped: this machine cannot start the browser: ' + error.message);
      return 77;
    }
    for (const check of [check_unread, check_two_tabs, check_beside, check_sixty_days, check_ended]) {
      const start = Date.now();
      await check(browser);
      console.log(check.name + ': ' + ((Date.now() - start) / 1000).toFixed(1) + ' s');
    }
    console.log('used for ' + ((Date.now() - began) / 1000).toFixed(1) + ' s');
  } finally {
    await browser.end().catch(() => {});
  }
  return sum() ? 1 : 0;
}

main().then((code) => process.exit(code), (error) => { console.log(error.stack); process.exit(1); });
