'use strict';
// On a telephone rows are laid out as cards; some browsers forget then that they are rows.
for (const [selector, role] of [['table', 'table'], ['thead, tbody', 'rowgroup'], ['tr', 'row'], ['td', 'cell'],
  ['th[scope=col]', 'columnheader'], ['th[scope=row]', 'rowheader']])
  for (const element of document.querySelectorAll(selector)) element.setAttribute('role', role);

// Shows the plan's own figures for the place pointed at; nothing is computed but the place.
(function () {
  const figures = JSON.parse(document.getElementById('figures').textContent);
  const SVG = 'http://www.w3.org/2000/svg';

  function legAt(along) {
    return figures.legs.find((leg) => along <= leg.to) || figures.legs[figures.legs.length - 1];
  }

  function nearest(list, along) {
    const i = figures.length > 0 ? Math.round(along / figures.length * (list.length - 1)) : 0;
    return list[Math.min(list.length - 1, Math.max(0, i))];
  }

  function part(readout, text, isName) {
    const node = document.createElement(isName ? 'bdi' : 'span');
    node.textContent = text;
    readout.append(node);
  }

  function tell(readout, along) {
    const leg = legAt(along);
    const height = nearest(figures.heights, along);
    readout.replaceChildren();
    if (!leg) return;
    part(readout, nearest(figures.marks, along) + (height ? ', height ' + height : '') + ' · day ' + leg.day + ' · ');
    part(readout, leg.name, true);
    part(readout, ' (' + leg.how + ')');
    for (const pack of leg.packs) {
      part(readout, ' · ');
      part(readout, pack[0], true);
      part(readout, ' ' + pack[1] + ' to ' + pack[2] + ', worst ' + pack[3]);
    }
  }

  for (const holder of document.querySelectorAll('[data-profile]')) {
    const svg = holder.querySelector('svg.profile');
    const readout = holder.parentElement.querySelector('.readout');
    if (!svg || !readout) continue;
    const from = Number(svg.dataset.from), to = Number(svg.dataset.to);
    const left = Number(svg.dataset.left), right = Number(svg.dataset.right);
    const cursor = document.createElementNS(SVG, 'path');
    cursor.setAttribute('class', 'cursor');
    svg.append(cursor);
    let along = from;

    const show = (to_along) => {
      along = Math.min(to, Math.max(from, to_along));
      const x = to > from ? left + (along - from) / (to - from) * (right - left) : left;
      cursor.setAttribute('d', 'M' + x.toFixed(1) + ' 0V' + svg.dataset.foot);
      tell(readout, along);
    };
    const point = (event) => {
      const box = svg.getBoundingClientRect();
      const x = (event.clientX - box.left) / box.width * svg.viewBox.baseVal.width;
      show(from + (x - left) / (right - left) * (to - from));
    };
    holder.addEventListener('pointermove', point);
    holder.addEventListener('pointerdown', point);
    holder.addEventListener('keydown', (event) => {
      const steps = { ArrowLeft: -1, ArrowRight: 1, PageUp: -10, PageDown: 10 };
      if (event.key === 'Home') show(from);
      else if (event.key === 'End') show(to);
      else if (event.key in steps) show(along + steps[event.key] * (to - from) / 200);
      else return;
      event.preventDefault();
    });
  }
})();
