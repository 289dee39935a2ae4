'use strict';
// Opens every book of a folder in headless Chromium and looks at it as readers do:
//     node look_at_books.js CHROMIUM FOLDER
// Answers 0 if all is well, 1 with what is wrong, 77 if the browser cannot be started here.
const { execFileSync } = require('node:child_process');
const fs = require('node:fs');
const os = require('node:os');
const path = require('node:path');
const { pathToFileURL } = require('node:url');
const { Chromium } = require('./chromium.js');
const look = require('./in_page.js');

const papers = [
  { name: 'a4', width_in: 8.27, height_in: 11.69 },
  { name: 'letter', width_in: 8.5, height_in: 11 },
];
const widths = [360, 768, 1280];
const large = 1e6; // bytes: of a book this long one width and one paper are looked at, to save minutes
// On A4 no more sheets than this: a sample that takes more has lost its order of pages.
const most_sheets = { saddle: 16, 'lake-chain': 26 };
const least_fill = 0.8; // of the sheets of these samples, on the average
let wrong = 0;

function expect(holds, where, what) {
  if (holds) return;
  wrong += 1;
  console.log('WRONG ' + where + ': ' + what);
}

function expect_none(found, where) {
  for (const what of found) expect(false, where, what);
}

// Pointing at the middle of each leg shows the pack weights that the plan's JSON has for it.
async function check_pointing(page, plan, where, tapping) {
  const box = await page.ask(look.profile_box);
  for (const leg of plan.legs) {
    const along = (leg.from_m + leg.to_m) / 2;
    const x = box.left + (along - box.from) / (box.to - box.from) * (box.right - box.left);
    const y = box.top + box.height / 2;
    if ((leg.to_m - leg.from_m) / (box.to - box.from) * (box.right - box.left) < 2) continue;
    if (tapping) await page.tap(x, y);
    else await page.point('mouseMoved', x, y);
    const told = await page.ask(look.readout);
    expect(told.includes('day ' + leg.day + ' '), where, 'leg ' + leg.leg + ' shows "' + told + '"');
    if (!told.includes('day ' + leg.day + ' ')) return;
    for (const load of leg.loads) {
      const start = told.lastIndexOf(load.member);
      const masses = [...told.slice(start + load.member.length).matchAll(/(\d+(?:\.\d+)?) kg/g)].map((m) => Number(m[1]));
      const wanted = [load.pack_start_kg, load.pack_end_kg, load.pack_max_kg];
      wanted.forEach((kg, i) => expect(start >= 0 && Math.abs(masses[i] - kg) <= 0.0501, where,
        load.member + ' on leg ' + leg.leg + ': the plan has ' + kg + ' kg, shown is "' + told + '"'));
    }
  }
}

async function check_keys(page, plan, where) {
  await page.ask(() => [...document.querySelectorAll('#trip [data-profile]')].find((h) => h.getClientRects().length).focus());
  await page.key('End');
  const last = plan.legs[plan.legs.length - 1];
  const told = await page.ask(look.readout);
  expect(told.includes('day ' + last.day + ' '), where, 'the key End shows "' + told + '"');
}

function has_poppler() {
  try {
    execFileSync('pdftotext', ['-v'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

// The last line of each page, as letters: no head may stand there without what it heads.
function last_lines(boxes) {
  const lines = [];
  for (const page of boxes.split('<page ').slice(1)) {
    const words = [...page.matchAll(/<word xMin="(-?[\d.]+)" yMin="(-?[\d.]+)" xMax="(-?[\d.]+)" yMax="(-?[\d.]+)">(.*)<\/word>/g)]
      .map((word) => ({ y: Number(word[4]), text: word[5] }));
    const height = Number(page.match(/height="([\d.]+)"/)[1]);
    const inside = words.filter((word) => word.y < height - 33); // above the number of the page
    const lowest = Math.max(...inside.map((word) => word.y));
    const line = inside.filter((word) => word.y > lowest - 5).map((word) => word.text).join('');
    lines.push(line.replace(/&[a-z]+;/g, '').replace(/[^\p{L}\p{N}]/gu, '').toLowerCase());
  }
  return lines;
}

// How far down each page is filled, as a share of what its margins leave.
function fills(boxes) {
  const top = 9 / 25.4 * 72, foot = 11 / 25.4 * 72;
  return boxes.split('<page ').slice(1).map((page) => {
    const height = Number(page.match(/height="([\d.]+)"/)[1]);
    const ends = [...page.matchAll(/yMax="(-?[\d.]+)">/g)].map((word) => Number(word[1])).filter((y) => y < height - foot + 1);
    return (Math.max(top, ...ends) - top) / (height - top - foot);
  });
}

// Every word is on the paper, whole; no head of a day parts from its map, and no day takes more than two sheets.
async function check_print(page, plan, name, file, paper) {
  const where = name + ' on ' + paper.name;
  await page.media('print', 'light');
  const words = await page.ask(look.printed_words);
  expect_none(await page.ask(look.breakable), where);
  expect_none(await page.ask(look.small_letters), where);
  const heads = await page.ask(look.heads);
  await page.media('', 'light');
  await page.print(file, paper);
  const text = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8', maxBuffer: 1 << 28 });
  const pages = text.split('\f').slice(0, -1);
  const days = plan.days.length;
  expect(pages.length >= days + 5 && pages.length <= 3 * days + 30, where, pages.length + ' pages for ' + days + ' days');
  for (let day = 1; day <= days; ++day) {
    const head = 'Day ' + day + ' of ' + days;
    expect(pages.filter((p) => p.includes(head)).length === 1, where, head + ' does not stand on one page');
    const from = pages.findIndex((p) => p.includes(head));
    const next = pages.findIndex((p) => p.includes(day < days ? 'Day ' + (day + 1) + ' of ' + days : 'Packing lists'));
    if (name in most_sheets)
      expect(next - from <= 2, where, 'day ' + day + ' takes ' + (next - from) + ' sheets');
  }
  const boxes = execFileSync('pdftotext', ['-bbox', file, '-'], { encoding: 'utf8', maxBuffer: 1 << 28 });
  if (paper.name === 'a4' && name in most_sheets)
    expect(pages.length <= most_sheets[name], where, pages.length + ' sheets; at most ' + most_sheets[name] + ' are needed');
  const filled = fills(boxes);
  const mean = filled.reduce((sum, one) => sum + one, 0) / filled.length;
  if (paper.name === 'a4' && name in most_sheets)
    expect(mean >= least_fill, where, 'sheets are filled to ' + filled.map((one) => Math.round(100 * one)).join(' ') + ' of 100');
  last_lines(boxes).forEach((line, i) => expect(!heads.includes(line), where, 'page ' + (i + 1) + ' ends with the head "' + line + '"'));
  const edge = 14; // points: less than the margin, more than a rounding
  let sheet = { width: 0, height: 0 };
  for (const line of boxes.split('\n')) {
    const opened = line.match(/<page width="([\d.]+)" height="([\d.]+)"/);
    if (opened) sheet = { width: Number(opened[1]), height: Number(opened[2]) };
    const word = line.match(/<word xMin="(-?[\d.]+)" yMin="(-?[\d.]+)" xMax="(-?[\d.]+)" yMax="(-?[\d.]+)">(.*)<\/word>/);
    if (!word) continue;
    const [x0, y0, x1, y1] = word.slice(1, 5).map(Number);
    expect(x0 >= edge && y0 >= edge && x1 <= sheet.width - edge && y1 <= sheet.height - edge, where,
      '"' + word[5] + '" runs off the paper');
  }
  // Compared letter by letter, since a long word is broken over lines and columns stand side by side.
  const raw = execFileSync('pdftotext', ['-raw', file, '-'], { encoding: 'utf8', maxBuffer: 1 << 28 });
  const printed = new Set(raw.replaceAll('\u00a0', ' ').split(/\s+/));
  const lost = [...new Set(words)].filter((w) => /^[A-Za-z0-9.,:]{2,18}$/.test(w) && !printed.has(w) && !raw.includes(w));
  expect(lost.length === 0, where, 'not on the paper: ' + lost.slice(0, 10).join(' '));
}

async function check_book(browser, folder, name, poppler) {
  const file = path.join(folder, name + '.html');
  const plan = JSON.parse(fs.readFileSync(path.join(folder, name + '.json'), 'utf8'));
  const url = pathToFileURL(file).href;
  const is_large = fs.statSync(file).size > large;
  for (const width of is_large ? [360] : widths) {
    const page = await browser.page();
    await page.size(width, 900);
    await page.media('', 'light');
    await page.open(url);
    const where = name + ' at ' + width + ' px';
    expect_none(await page.ask(look.sticking_out, width), where);
    expect_none(await page.ask(look.cut_off), where);
    for (const scheme of ['light', 'dark']) {
      await page.media('', scheme);
      expect_none(await page.ask(look.faint), where + ', ' + scheme);
    }
    await page.media('', 'light');
    expect_none(await page.ask(look.unreadable), where);
    expect_none(await page.ask(look.crowded_profiles), where);
    expect_none(await page.ask(look.crowded_maps), where);
    if (name !== 'hostile-names') {
      await check_pointing(page, plan, where, width < 500);
      await check_keys(page, plan, where);
    }
    expect(await page.ask(() => window.broken === undefined), where, 'a name ran as a script');
    if (poppler && (is_large || width === 1280))
      for (const paper of is_large ? papers.slice(0, 1) : papers)
        await check_print(page, plan, name, path.join(folder, name + '-' + paper.name + '.pdf'), paper);
    const asked = page.requests.filter((request) => request !== url && !request.startsWith('data:'));
    expect(asked.length === 0, where, 'asked for ' + asked.join(', '));
    expect_none(page.complaints, where + ', console');
    await page.close();
  }
}

// Looks at books of a list in a browser of its own, until none is left.
async function look_at_books(program, folder, names, poppler) {
  const browser = new Chromium(program);
  try {
    await browser.send('Browser.getVersion');
  } catch (error) {
    console.log('skipped: this machine cannot start ' + program + ': ' + error.message);
    process.exit(77);
  }
  while (names.length > 0) {
    const name = names.shift();
    await check_book(browser, folder, name, poppler);
    console.log('looked at ' + name);
  }
  await browser.end();
}

async function main() {
  const [program, folder] = process.argv.slice(2);
  const poppler = has_poppler();
  if (!poppler) console.log('The printed pages are not looked at: pdftotext (poppler-utils) is not installed.');
  const names = fs.readdirSync(folder).filter((f) => f.endsWith('.html')).map((f) => path.basename(f, '.html'));
  expect(names.length > 0, folder, 'holds no book');
  const size = (name) => fs.statSync(path.join(folder, name + '.html')).size;
  names.sort((one, other) => size(other) - size(one)); // the longest first
  const browsers = Math.min(2, os.cpus().length);
  await Promise.all(Array.from({ length: browsers }, () => look_at_books(program, folder, names, poppler)));
  console.log(wrong === 0 ? 'All is well.' : wrong + ' things are wrong.');
  process.exit(wrong === 0 ? 0 : 1);
}

main().catch((error) => {
  console.log(error.stack);
  process.exit(1);
});
