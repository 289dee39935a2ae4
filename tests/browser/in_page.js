'use strict';
// What is asked of a book while it stands in the browser. Each function runs inside the page and
// answers with what it found wrong, as text.

// Elements that stick out to the right or left of the window.
function sticking_out(width) {
  const found = []; // a telephone's browser widens its window to what sticks out: ask for the true width
  const innerWidth = width;
  const wide = document.scrollingElement.scrollWidth;
  if (wide > innerWidth) found.push('the page is ' + wide + ' px wide in a window of ' + innerWidth);
  for (const element of document.querySelectorAll('body *')) {
    if (element.closest('svg svg, defs, script, .skip, .hidden, svg.defs')) continue;
    const box = element.getBoundingClientRect();
    if (box.width === 0 || box.height === 0) continue;
    if (box.right > innerWidth + 0.5 || box.left < -0.5)
      found.push(element.tagName + '.' + (element.getAttribute('class') || '') + ' reaches from ' +
        Math.round(box.left) + ' to ' + Math.round(box.right) + ': ' +
        (element.textContent || '').trim().slice(0, 40));
  }
  return found.slice(0, 8);
}

// Letters of a drawing that its frame cuts off.
function cut_off() {
  const found = [];
  for (const text of document.querySelectorAll('svg:not(.defs) text')) {
    const box = text.getBoundingClientRect();
    if (box.width === 0) continue;
    const frame = text.closest('svg').getBoundingClientRect();
    if (box.right > frame.right + 1 || box.left < frame.left - 1 || box.bottom > frame.bottom + 1.5 ||
        box.top < frame.top - 1.5)
      found.push('"' + text.textContent + '" leaves its drawing ' + text.closest('svg').getAttribute('class'));
  }
  return found.slice(0, 8);
}

// Contrast of letters to what is behind them, by WCAG 2.1 (1.4.3): 4.5, or 3 where they are large.
function faint() {
  const rgba = (css) => (css.match(/[\d.]+/g) || [0, 0, 0, 0]).map(Number);
  const light = ([r, g, b]) => {
    const part = (v) => (v / 255 <= 0.03928 ? v / 255 / 12.92 : ((v / 255 + 0.055) / 1.055) ** 2.4);
    return 0.2126 * part(r) + 0.7152 * part(g) + 0.0722 * part(b);
  };
  const behind = (element) => {
    for (let at = element; at; at = at.parentElement) {
      const colour = rgba(getComputedStyle(at).backgroundColor);
      if (colour.length < 4 || colour[3] > 0) return colour;
    }
    return [255, 255, 255];
  };
  const paper = rgba(getComputedStyle(document.body).backgroundColor);
  const found = new Set();
  for (const element of document.querySelectorAll('body *')) {
    const own = [...element.childNodes].some((n) => n.nodeType === 3 && n.textContent.trim() !== '');
    if (!own || element.closest('script, defs, title') || element.getClientRects().length === 0) continue;
    const style = getComputedStyle(element);
    const drawn = element.closest('svg');
    const front = rgba(drawn ? style.fill : style.color);
    let back = drawn ? paper : behind(element);
    if (element.classList.contains('number')) back = rgba(getComputedStyle(document.body).color); // on its disc
    const a = light(front), b = light(back);
    const ratio = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    const size = parseFloat(style.fontSize);
    const large = size >= 24 || (size >= 18.66 && Number(style.fontWeight) >= 700);
    if (ratio < (large ? 3 : 4.5))
      found.add(element.tagName + '.' + element.className + ' has a contrast of ' + ratio.toFixed(2) +
        ': ' + element.textContent.trim().slice(0, 30));
  }
  return [...found].slice(0, 8);
}

// What a screen reader lives on: headings in order, heads of tables, names of pictures, one id each.
function unreadable() {
  const found = [];
  const headings = [...document.querySelectorAll('h1,h2,h3,h4')];
  if (document.querySelectorAll('h1').length !== 1) found.push('not one h1');
  headings.forEach((heading, i) => {
    const level = Number(heading.tagName[1]);
    const before = i > 0 ? Number(headings[i - 1].tagName[1]) : 0;
    if (level > before + 1) found.push('h' + level + ' after h' + before + ': ' + heading.textContent);
    if (heading.textContent.trim() === '') found.push('an empty heading');
  });
  for (const table of document.querySelectorAll('table')) {
    const heads = table.querySelectorAll('thead th[scope=col]').length;
    const row = table.querySelector('tbody tr');
    if (heads === 0) found.push('a table without heads: ' + table.textContent.slice(0, 40));
    else if (row && row.children.length !== heads) found.push('a row unlike its heads: ' + row.textContent);
    if (row && !table.querySelector('tbody th[scope=row]')) found.push('rows without a head: ' + row.textContent);
  }
  for (const svg of document.querySelectorAll('svg')) {
    const named = svg.getAttribute('aria-labelledby');
    if (svg.getAttribute('aria-hidden') !== 'true' && !(named && document.getElementById(named)))
      found.push('a drawing without a name: ' + svg.getAttribute('class'));
  }
  const ids = [...document.querySelectorAll('[id]')].map((element) => element.id);
  for (const id of new Set(ids.filter((id, i) => ids.indexOf(id) !== i))) found.push('two of id ' + id);
  for (const link of document.querySelectorAll('a[href^="#"]'))
    if (!document.getElementById(link.hash.slice(1))) found.push('a link to nowhere: ' + link.hash);
  for (const element of document.querySelectorAll('[src], link[href], a[href]')) {
    const to = element.getAttribute('src') || element.getAttribute('href');
    if (!/^(#|data:)/.test(to)) found.push('a link out of the book: ' + to);
  }
  if (!document.documentElement.lang) found.push('no language');
  return found.slice(0, 8);
}

// Where the profile that is seen stands in the window, with its scale.
function profile_box() {
  const svg = [...document.querySelectorAll('#trip [data-profile] svg')].find((s) => s.getClientRects().length);
  svg.closest('figure').scrollIntoView({ block: 'center' });
  const box = svg.getBoundingClientRect();
  const scale = box.width / svg.viewBox.baseVal.width;
  return {
    top: box.top, height: box.height, left: box.left + svg.dataset.left * scale,
    right: box.left + svg.dataset.right * scale, from: Number(svg.dataset.from), to: Number(svg.dataset.to),
  };
}

function readout() { return document.getElementById('readout').textContent.replaceAll('\u00a0', ' '); }

// Words that a print must hold, in the order of the page.
function printed_words() {
  for (const head of document.querySelectorAll('.hidden')) head.remove(); // for screen readers alone
  return document.body.innerText.replaceAll('\u00a0', ' ').split(/\s+/).filter((w) => w !== '');
}

// Rows and boxes that a page may cut in two.
function breakable() {
  const found = [];
  for (const element of document.querySelectorAll('tbody tr, .caution, .verdict, figure, .opening, .keep'))
    if (getComputedStyle(element).breakInside !== 'avoid') found.push(element.tagName + '.' + element.className);
  for (const head of document.querySelectorAll('table > thead:not(.hidden)'))
    if (getComputedStyle(head).display !== 'table-header-group') found.push('a head that is not repeated');
  return found.slice(0, 8);
}

// Heads of the print but the names over packing lists, letters only: of parts and tables, each line of columns' heads as one.
function heads() {
  const letters = (text) => text.replace(/[^\p{L}\p{N}]/gu, '').toLowerCase();
  const found = [];
  for (const head of document.querySelectorAll('h2, h3:not(.lists h3), h4:not(.lists h4), caption, thead:not(.hidden) tr'))
    if (head.getClientRects().length > 0) found.push(letters(head.innerText));
  return [...new Set(found)].filter((head) => head.length > 3);
}

// Names over a profile that lie on each other, and letters of it below 9 pt on a page 184 mm wide.
function crowded_profiles() {
  const found = [];
  for (const svg of document.querySelectorAll('svg.profile')) {
    if (svg.getClientRects().length === 0) continue;
    const texts = [...svg.querySelectorAll('text')];
    for (const text of texts) {
      const points = Number(text.getAttribute('font-size')) / svg.viewBox.baseVal.width * 184 / 25.4 * 72;
      if (svg.viewBox.baseVal.width > 500 && points < 8.99)
        found.push('"' + text.textContent + '" has letters of ' + points.toFixed(1) + ' pt');
    }
    const boxes = texts.filter((text) => text.closest('.names')).map((text) => text.getBoundingClientRect());
    for (let i = 0; i < boxes.length; ++i)
      for (let j = 0; j < i; ++j)
        if (boxes[i].left < boxes[j].right && boxes[j].left < boxes[i].right &&
            boxes[i].top < boxes[j].bottom - 1 && boxes[j].top < boxes[i].bottom - 1)
          found.push('a name of ' + svg.getAttribute('aria-labelledby') + ' lies on another');
  }
  return [...new Set(found)].slice(0, 8);
}

// Letters of a map that lie on each other: names, numbers of nights, figures of the grids.
function crowded_maps() {
  const found = [];
  for (const svg of document.querySelectorAll('svg.map')) {
    if (svg.getClientRects().length === 0) continue;
    const all = [...svg.querySelectorAll('text')].map((text) => ({ text: text.textContent, disc: text.classList.contains('number'), box: text.getBoundingClientRect() }));
    const near = 1.5; // pixels: a browser's letters differ a little from those that were reckoned with
    all.forEach((one, i) => all.slice(0, i).forEach((other) => {
      if (one.disc && other.disc) return; // discs of nights that are near lie on each other
      if (one.box.left < other.box.right - near && other.box.left < one.box.right - near &&
          one.box.top < other.box.bottom - 3 && other.box.top < one.box.bottom - 3)
        found.push('"' + one.text + '" lies on "' + other.text + '" in ' + svg.getAttribute('aria-labelledby'));
    }));
  }
  return found.slice(0, 8);
}

// Letters below 9 pt on paper, where a drawing is 184 mm wide; asked while the page is set for print.
function small_letters() {
  const found = new Set();
  for (const element of document.querySelectorAll('body *')) {
    const own = [...element.childNodes].some((n) => n.nodeType === 3 && n.textContent.trim() !== '');
    if (!own || element.closest('script, defs, title, [aria-hidden=true]') || element.getClientRects().length === 0) continue;
    const drawing = element.closest('svg');
    const points = drawing
      ? Number(element.getAttribute('font-size')) / drawing.viewBox.baseVal.width * 184 / 25.4 * 72
      : parseFloat(getComputedStyle(element).fontSize) * 0.75;
    if (points < 8.99) found.add(points.toFixed(1) + ' pt: ' + element.tagName + '.' + (element.getAttribute('class') || '') + ' ' + element.textContent.trim().slice(0, 20));
  }
  return [...found].slice(0, 8);
}

module.exports = { crowded_maps, small_letters, heads, crowded_profiles, sticking_out, cut_off, faint, unreadable, profile_box, readout, printed_words, breakable };
