// Zooming a drift chart: drag over the hours, or use + - and the arrow keys. The server draws every part of it, as it does for
// a browser without script by the form below the chart; this fetches the page for the part and takes its figure over.
const LEAST_HOURS = 10;
const least = 6; // px that tell a drag from a tap

for (const figure of document.querySelectorAll('figure[data-zoom]')) begin(figure);

function begin(figure) {
  if (figure.dataset.ready) return;
  figure.dataset.ready = 'yes';
  const form = figure.querySelector('form.zoom');
  form.addEventListener('submit', e => { e.preventDefault(); show(figure, field(form, 'from'), field(form, 'to')); });
  form.querySelector('a')?.addEventListener('click', e => { e.preventDefault(); show(figure, null, null); });
  for (const chart of figure.querySelectorAll('svg.chart[data-from]')) {
    chart.addEventListener('pointerdown', e => { if (e.button === 0 && e.pointerType !== 'touch') drag(figure, chart, e); });
    chart.addEventListener('dblclick', () => show(figure, null, null));
    chart.tabIndex = 0;
    chart.addEventListener('keydown', e => key(figure, chart, e));
  }
}

function field(form, name) { const n = Number.parseFloat(form.elements[name].value); return Number.isFinite(n) ? n : null; }

function window_(chart) { return { from: Number(chart.dataset.from), to: Number(chart.dataset.to) }; }

function hoursAt(chart, event) {
  const at = new DOMPoint(event.clientX, event.clientY).matrixTransform(chart.getScreenCTM().inverse());
  const left = Number(chart.dataset.left), right = Number(chart.dataset.right), w = window_(chart);
  return w.from + (Math.min(Math.max(at.x, left), right) - left) / (right - left) * (w.to - w.from);
}

function drag(figure, chart, down) {
  const from = hoursAt(chart, down), w = window_(chart);
  const brush = document.createElementNS('http://www.w3.org/2000/svg', 'rect');
  brush.setAttribute('class', 'brush'); brush.setAttribute('y', '24'); brush.setAttribute('height', String(chart.viewBox.baseVal.height - 72));
  chart.append(brush);
  chart.setPointerCapture(down.pointerId);
  const left = Number(chart.dataset.left), right = Number(chart.dataset.right);
  const place = h => left + (h - w.from) / (w.to - w.from) * (right - left);
  const move = e => {
    const to = hoursAt(chart, e);
    brush.setAttribute('x', String(place(Math.min(from, to)))); brush.setAttribute('width', String(Math.abs(place(to) - place(from))));
  };
  const end = e => {
    chart.removeEventListener('pointermove', move); chart.removeEventListener('pointerup', end); chart.removeEventListener('pointercancel', end);
    brush.remove();
    if (e.type === 'pointerup' && Math.abs(e.clientX - down.clientX) > least) { const to = hoursAt(chart, e); show(figure, Math.min(from, to), Math.max(from, to)); }
  };
  chart.addEventListener('pointermove', move); chart.addEventListener('pointerup', end); chart.addEventListener('pointercancel', end);
}

function key(figure, chart, event) {
  const { from, to } = window_(chart), half = (to - from) / 4;
  const next = { '+': [from + half, to - half], '=': [from + half, to - half], '-': [from - 2 * half, to + 2 * half], ArrowLeft: [from - half, to - half], ArrowRight: [from + half, to + half], Escape: [null, null] }[event.key];
  if (!next || event.ctrlKey || event.metaKey || event.altKey) return;
  event.preventDefault();
  if (next[0] !== null && next[1] - next[0] < LEAST_HOURS) return;
  show(figure, next[0] === null ? null : Math.max(0, next[0]), next[1], true);
}

async function show(figure, from, to, keepFocus) {
  const address = new URL(location.href);
  for (const name of ['at', 'from', 'to']) address.searchParams.delete(name);
  if (from !== null || to !== null) {
    address.searchParams.set('at', figure.querySelector('input[name=at]').value);
    if (from !== null) address.searchParams.set('from', from.toFixed(1));
    if (to !== null) address.searchParams.set('to', to.toFixed(1));
  }
  let text;
  try {
    const answer = await fetch(address, { headers: { accept: 'text/html' } });
    if (!answer.ok) throw new Error(String(answer.status));
    text = await answer.text();
  } catch { location.assign(address); return; }
  const fresh = new DOMParser().parseFromString(text, 'text/html').getElementById(figure.id);
  if (!fresh) { location.assign(address); return; }
  const had = figure.contains(document.activeElement) ? document.activeElement : null;
  const focus = keepFocus ? '.' + [...had?.classList ?? []].find(c => c.endsWith('-chart')) : had?.name ? `[name=${had.name}]` : had ? 'form.zoom button' : null;
  figure.replaceWith(document.adoptNode(fresh));
  history.replaceState(null, '', address);
  begin(fresh);
  if (focus) fresh.querySelector(focus)?.focus();
}
