// Pictures come drawn. Here they answer to pointer and keys, show a part of themselves larger, and can be taken along.
import { reachable } from './reach.js';

const hover = document.getElementById('hover');
const spoken = document.getElementById('spoken');
const NS = 'http://www.w3.org/2000/svg';
const plots = new WeakMap();

export function enliven(root) {
  // Pictures that stand in a section by themselves get the frame and the tools of the others.
  root.querySelectorAll('section').forEach(section => {
    const loose = [...section.children].filter(c => c.matches('svg.chart'));
    if (!loose.length) return;
    const figure = document.createElement('figure');
    loose[0].before(figure);
    figure.append(...loose);
  });
  root.querySelectorAll('figure').forEach(figure => {
    if (figure.dataset.lively) return;
    figure.dataset.lively = 'yes';
    const charts = [...figure.querySelectorAll('svg.chart:not(.loop)')];
    charts.forEach(prepare);
    if (charts.length) figure.prepend(toolbar(figure, charts));
  });
  reachable();
}

function prepare(svg) {
  svg.tabIndex = 0;
  const points = [...svg.querySelectorAll('.touch')];
  points.forEach(p => {
    p.dataset.text = p.querySelector('title')?.textContent ?? '';
    p.querySelector('title')?.remove();
  });
  let at = -1;
  svg.addEventListener('pointermove', e => near(svg, points, e));
  svg.addEventListener('pointerleave', () => hide(svg));
  svg.addEventListener('blur', () => hide(svg));
  svg.addEventListener('keydown', e => {
    const step = { ArrowRight: 1, ArrowLeft: -1 }[e.key];
    if (step && points.length) {
      e.preventDefault();
      at = (at + step + points.length) % points.length;
      const box = points[at].getBoundingClientRect();
      show(svg, points[at], box.x + box.width / 2, box.y);
      spoken.textContent = points[at].dataset.text;
    } else if (e.key === '+' || e.key === '-' || e.key === '0') {
      e.preventDefault();
      zoom(svg, { '+': 0.5, '-': 2, '0': 0 }[e.key]);
    } else if (e.key === 'Escape') hide(svg);
  });
  if (svg.dataset.plot) {
    const [x, y, w, h] = svg.dataset.plot.split(' ').map(Number);
    const log = svg.dataset.yScale === 'log';
    const range = text => text.split(' ').map(Number);
    const ys = range(svg.dataset.y);
    plots.set(svg, { x, y, w, h, log, wholeX: range(svg.dataset.x), wholeY: log ? ys.map(Math.log) : ys, X: range(svg.dataset.x), Y: log ? ys.map(Math.log) : ys, kept: null });
    dragZoom(svg);
  }
}

function near(svg, points, e) {
  let best = null, least = 30;
  for (const p of points) {
    if (p.style.display === 'none') continue;
    const box = p.getBoundingClientRect();
    const distance = Math.hypot(box.x + box.width / 2 - e.clientX, (box.y + box.height / 2 - e.clientY) / 2);
    if (distance < least) [best, least] = [p, distance];
  }
  if (best) show(svg, best, e.clientX, e.clientY); else hide(svg);
}

function show(svg, point, x, y) {
  svg.querySelectorAll('.touch.on').forEach(p => p.classList.remove('on'));
  point.classList.add('on');
  hover.textContent = point.dataset.text;
  hover.hidden = false;
  const box = hover.getBoundingClientRect();
  hover.style.left = `${Math.max(4, Math.min(x + 14, innerWidth - box.width - 4))}px`;
  hover.style.top = `${Math.max(4, y - box.height - 14)}px`;
}

function hide(svg) {
  svg.querySelectorAll('.touch.on').forEach(p => p.classList.remove('on'));
  hover.hidden = true;
}

// --- a part of the plot, larger ---

function zoom(svg, factor, centre = null) {
  const p = plots.get(svg);
  if (!p) return;
  if (factor === 0) [p.X, p.Y] = [p.wholeX, p.wholeY];
  else {
    const part = (range, whole, c) => {
      const width = Math.min((range[1] - range[0]) * factor, whole[1] - whole[0]);
      const low = Math.max(whole[0], Math.min(c - width / 2, whole[1] - width));
      return [low, low + width];
    };
    const middle = r => (r[0] + r[1]) / 2;
    [p.X, p.Y] = [part(p.X, p.wholeX, centre?.x ?? middle(p.X)), part(p.Y, p.wholeY, centre?.y ?? middle(p.Y))];
  }
  redraw(svg, p);
}

function dragZoom(svg) {
  let from = null, frame = null;
  const place = e => {
    const m = svg.getScreenCTM();
    return { x: (e.clientX - m.e) / m.a, y: (e.clientY - m.f) / m.d };
  };
  const p = plots.get(svg);
  svg.addEventListener('pointerdown', e => {
    // A finger scrolls the page; the buttons enlarge there.
    if (e.pointerType === 'touch' || e.button !== 0) return;
    const at = place(e);
    if (at.x < p.x || at.x > p.x + p.w || at.y < p.y || at.y > p.y + p.h) return;
    from = at;
  });
  svg.addEventListener('pointermove', e => {
    if (!from) return;
    const at = place(e);
    if (!frame && Math.hypot(at.x - from.x, at.y - from.y) < 8) return;
    if (!frame) {
      frame = document.createElementNS(NS, 'rect');
      frame.setAttribute('class', 'zoom-frame');
      svg.append(frame);
      svg.setPointerCapture(e.pointerId);
    }
    frame.setAttribute('x', Math.min(from.x, at.x));
    frame.setAttribute('y', Math.min(from.y, at.y));
    frame.setAttribute('width', Math.abs(at.x - from.x));
    frame.setAttribute('height', Math.abs(at.y - from.y));
  });
  svg.addEventListener('pointerup', e => {
    const start = from;
    from = null;
    if (!frame) return;
    frame.remove();
    frame = null;
    const at = place(e);
    if (Math.abs(at.x - start.x) < 12 || Math.abs(at.y - start.y) < 12) return;
    const toX = v => p.X[0] + (Math.min(Math.max(v, p.x), p.x + p.w) - p.x) / p.w * (p.X[1] - p.X[0]);
    const toY = v => p.Y[0] + (p.y + p.h - Math.min(Math.max(v, p.y), p.y + p.h)) / p.h * (p.Y[1] - p.Y[0]);
    [p.X, p.Y] = [[start.x, at.x].map(toX).sort((a, b) => a - b), [start.y, at.y].map(toY).sort((a, b) => a - b)];
    redraw(svg, p);
  });
  svg.addEventListener('dblclick', () => zoom(svg, 0));
}

function redraw(svg, p) {
  if (!p.kept) {
    p.kept = [...svg.querySelectorAll('polyline, polygon, circle, line.rule, line.span, rect.strip, text.label, line.leader, .tick, .grid, .axis.step, text.plain')]
      .map(element => ({ element, points: element.getAttribute('points')?.trim().split(/\s+/).map(q => q.split(',').map(Number)), cx: +element.getAttribute('cx'), cy: +element.getAttribute('cy') }));
    clip(svg, p);
  }
  const whole = p.X[0] === p.wholeX[0] && p.X[1] === p.wholeX[1] && p.Y[0] === p.wholeY[0] && p.Y[1] === p.wholeY[1];
  const mapX = v => p.x + ((p.wholeX[0] + (v - p.x) / p.w * (p.wholeX[1] - p.wholeX[0])) - p.X[0]) / (p.X[1] - p.X[0]) * p.w;
  const mapY = v => p.y + p.h - ((p.wholeY[0] + (p.y + p.h - v) / p.h * (p.wholeY[1] - p.wholeY[0])) - p.Y[0]) / (p.Y[1] - p.Y[0]) * p.h;
  const inside = (x, y) => x >= p.x - 1 && x <= p.x + p.w + 1 && y >= p.y - 1 && y <= p.y + p.h + 1;
  svg.querySelectorAll('.zoomed').forEach(e => e.remove());
  for (const k of p.kept) {
    const e = k.element;
    if (k.points) e.setAttribute('points', k.points.map(q => `${mapX(q[0]).toFixed(2)},${mapY(q[1]).toFixed(2)}`).join(' '));
    else if (e.tagName === 'circle') {
      const [x, y] = [mapX(k.cx), mapY(k.cy)];
      e.setAttribute('cx', x);
      e.setAttribute('cy', y);
      e.style.display = inside(x, y) ? '' : 'none';
    } else e.style.display = whole ? '' : 'none';
    if (k.points) e.setAttribute('clip-path', whole ? '' : `url(#${p.clip})`);
  }
  if (!whole) ticks(svg, p);
  svg.dataset.zoomed = whole ? '' : 'yes';
}

let clips = 0;
function clip(svg, p) {
  p.clip = `plot-${++clips}`;
  const path = document.createElementNS(NS, 'clipPath');
  path.id = p.clip;
  const rect = document.createElementNS(NS, 'rect');
  Object.entries({ x: p.x, y: p.y, width: p.w, height: p.h }).forEach(([k, v]) => rect.setAttribute(k, v));
  path.append(rect);
  svg.prepend(path);
}

function ticks(svg, p) {
  const font = svg.querySelector('text').getAttribute('font-size');
  const add = (tag, attributes, text) => {
    const e = document.createElementNS(NS, tag);
    Object.entries(attributes).forEach(([k, v]) => e.setAttribute(k, v));
    if (text !== undefined) e.textContent = text;
    tag === 'line' ? svg.insertBefore(e, svg.querySelector('polyline, polygon')) : svg.append(e);
  };
  const rounded = (low, high, most) => {
    const rough = (high - low) / most, power = 10 ** Math.floor(Math.log10(rough));
    const step = [1, 2, 5, 10].map(m => m * power).find(s => s >= rough);
    const list = [];
    for (let i = Math.ceil(low / step); i * step <= high + 1e-9 * step; i++) list.push([i * step, (i * step).toFixed(Math.max(0, -Math.floor(Math.log10(step) + 1e-9))).replace('-', '\u2212')]);
    return list;
  };
  for (const [v, text] of rounded(p.X[0], p.X[1], Math.max(2, p.w / 90))) {
    const x = p.x + (v - p.X[0]) / (p.X[1] - p.X[0]) * p.w;
    add('line', { class: 'axis zoomed', x1: x, x2: x, y1: p.y + p.h, y2: p.y + p.h + 5 });
    add('text', { class: 'zoomed', x, y: p.y + p.h + 6 + +font, 'font-size': font, 'text-anchor': 'middle' }, text);
  }
  const values = p.log ? rounded(Math.exp(p.Y[0]), Math.exp(p.Y[1]), 6).filter(t => t[0] > 0).map(([v, t]) => [Math.log(v), t]) : rounded(p.Y[0], p.Y[1], Math.max(2, p.h / 52));
  for (const [v, text] of values) {
    const y = p.y + p.h - (v - p.Y[0]) / (p.Y[1] - p.Y[0]) * p.h;
    add('line', { class: 'grid zoomed', x1: p.x, x2: p.x + p.w, y1: y, y2: y });
    add('text', { class: 'zoomed', x: p.x - 7, y: y + 0.35 * font, 'font-size': font, 'text-anchor': 'end' }, text);
  }
}

// --- taking along ---

function toolbar(figure, charts) {
  const bar = document.createElement('div');
  bar.className = 'chart-tools';
  const visible = () => charts.filter(c => c.getBoundingClientRect().width > 0);
  const button = (text, label, act) => {
    const b = document.createElement('button');
    b.textContent = text;
    b.title = label;
    b.addEventListener('click', act);
    bar.append(b);
  };
  if (charts.some(c => plots.has(c))) {
    button('Closer', 'Show a part larger (key +)', () => visible().forEach(c => zoom(c, 0.5)));
    button('Wider', 'Show more (key \u2212)', () => visible().forEach(c => zoom(c, 2)));
    button('Whole', 'Show the whole picture (key 0)', () => visible().forEach(c => zoom(c, 0)));
  }
  const name = () => (figure.closest('section')?.querySelector('h2, h3')?.textContent ?? 'picture').toLowerCase().replace(/[^a-z0-9]+/g, '-').replace(/^-|-$/g, '');
  button('SVG', 'Save the picture as SVG', () => visible().forEach((c, i) => save(new Blob([standalone(c)], { type: 'image/svg+xml' }), `${name()}${i ? `-${i + 1}` : ''}.svg`)));
  button('PNG', 'Save the picture as PNG', () => visible().forEach((c, i) => png(c, `${name()}${i ? `-${i + 1}` : ''}.png`)));
  const table = figure.querySelector('table') ?? figure.closest('section')?.querySelector('table');
  if (table) button('CSV', 'Save the numbers as a table (CSV)', () => save(new Blob([csv(table)], { type: 'text/csv' }), `${name()}.csv`));
  return bar;
}

const looks = ['fill', 'fill-opacity', 'stroke', 'stroke-width', 'stroke-dasharray', 'stroke-linecap', 'stroke-linejoin', 'font-weight', 'font-family', 'opacity', 'paint-order'];

function standalone(svg) {
  const copy = svg.cloneNode(true);
  const [from, to] = [[svg, ...svg.querySelectorAll('*')], [copy, ...copy.querySelectorAll('*')]];
  from.forEach((e, i) => {
    const style = getComputedStyle(e);
    if (style.display === 'none' && e !== svg) return to[i].setAttribute('display', 'none');
    looks.forEach(l => to[i].setAttribute(l, style.getPropertyValue(l)));
  });
  copy.querySelectorAll('.touch').forEach(e => e.remove());
  const [, , w, h] = svg.getAttribute('viewBox').split(' ');
  const paper = document.createElementNS(NS, 'rect');
  Object.entries({ width: w, height: h, fill: getComputedStyle(document.body).getPropertyValue('--card') || '#fff' }).forEach(([k, v]) => paper.setAttribute(k, v));
  copy.prepend(paper);
  copy.setAttribute('width', w);
  copy.setAttribute('height', h);
  copy.setAttribute('xmlns', NS);
  return new XMLSerializer().serializeToString(copy);
}

function png(svg, name) {
  const [, , w, h] = svg.getAttribute('viewBox').split(' ').map(Number);
  const image = new Image();
  image.onload = () => {
    const canvas = document.createElement('canvas');
    [canvas.width, canvas.height] = [2 * w, 2 * h];
    canvas.getContext('2d').drawImage(image, 0, 0, canvas.width, canvas.height);
    canvas.toBlob(blob => save(blob, name));
    URL.revokeObjectURL(image.src);
  };
  image.src = URL.createObjectURL(new Blob([standalone(svg)], { type: 'image/svg+xml' }));
}

function csv(table) {
  const cell = c => `"${c.textContent.replaceAll('\u00a0', ' ').replaceAll('\u2212', '-').replaceAll('"', '""')}"`;
  return [...table.rows].map(r => [...r.cells].map(cell).join(',')).join('\r\n') + '\r\n';
}

function save(blob, name) {
  const a = document.createElement('a');
  a.href = URL.createObjectURL(blob);
  a.download = name;
  a.click();
  setTimeout(() => URL.revokeObjectURL(a.href), 5000);
}
