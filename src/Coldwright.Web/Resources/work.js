// Long work: asked for by a button, told how far it is, stopped by another, found again after the page is loaded anew.
import { get, post } from './net.js';
import { enliven } from './charts.js';
import { orderForm, filledIn } from './orders.js';

const words = { help: 'Work it out', blend: 'Look for it', size: 'Size it', charge: 'Plan the filling', cooldown: 'Cool it down', batch: 'Run a batch' };
const takes = { blend: 'Write this mixture into machine.yaml', size: 'Write these sizes into machine.yaml' };
const desks = new Map();
let look = null, act = null;

export function setUpWork(pageOf, actions) {
  [look, act] = [pageOf, actions];
  for (const place of document.querySelectorAll('.work-desk')) {
    const kind = place.dataset.kind;
    place.innerHTML = '<form class="work-order"><p class="work-start"><button class="go"></button> <label>with the <select class="by"><option value="cubic">cubic model (quicker)</option><option value="reference">reference model (closer)</option></select></label></p></form>'
      + '<div class="work-progress" role="status" hidden><span class="bar"></span><span class="stage"></span> <button class="stop">Stop</button></div><p class="work-age quiet" role="status"></p><div class="work-result"></div>';
    const desk = { kind, place, shown: 0, followed: 0 };
    desks.set(kind, desk);
    const form = place.querySelector('form'), order = orderForm(kind);
    if (order) form.prepend(order);
    form.addEventListener('submit', e => { e.preventDefault(); ask(desk); });
    place.querySelector('.go').textContent = words[kind];
    place.querySelector('.stop').addEventListener('click', () => post('/api/cancel', { id: desk.followed }));
  }
}

async function ask(desk) {
  const age = desk.place.querySelector('.work-age');
  try {
    const job = await post('/api/start', { kind: desk.kind, model: desk.place.querySelector('.by').value, order: filledIn(desk.place) });
    // The same question again: its answer is there already.
    [desk.followed, desk.wanted, desk.refused] = [job.id, job.id, false];
    if (job.state === 'done') { await show(desk, job.id); age.textContent = aged(desk, job, look().revision); }
    else progress(desk, job);
  } catch (e) {
    desk.refused = true;
    age.textContent = `Not begun: ${(e.problems?.length ? e.problems : [e.message]).join('; ')}.`;
  }
}

export function redrawWork() {
  desks.forEach(d => { d.shown = 0; });
}

export function workPulse(jobs, revision) {
  for (const desk of desks.values()) {
    // A closed rating by the reference model knows already what would help.
    const mine = jobs.filter(j => j.kind === desk.kind || (desk.kind === 'help' && j.helps));
    const running = mine.filter(j => j.kind === desk.kind && (j.state === 'running' || j.state === 'waiting')).at(-1);
    if (running) desk.followed = running.id;
    progress(desk, running);
    const last = mine.find(j => j.id === desk.followed);
    if (last?.state === 'failed' && desk.failed !== last.id) fail(desk, last.id);
    // What was asked for last; else the newest answer to the files as they are; else the newest there is.
    const done = mine.filter(j => j.state === 'done');
    const best = done.find(j => j.id === desk.wanted) ?? done.filter(j => j.revision === revision).at(-1) ?? done.at(-1);
    if (best && desk.shown !== best.id) show(desk, best.id);
    if (desk.refused || running) continue;
    if (last?.state === 'cancelled') desk.place.querySelector('.work-age').textContent = last.stage ? `Not begun: ${last.stage}.` : 'Stopped.';
    else if (best && desk.failed !== desk.followed) desk.place.querySelector('.work-age').textContent = aged(desk, best, revision);
  }
}

function progress(desk, job) {
  const bar = desk.place.querySelector('.work-progress');
  bar.hidden = !job;
  desk.place.querySelector('.go').disabled = Boolean(job);
  if (job) {
    desk.place.querySelector('.work-age').textContent = '';
    bar.querySelector('.stage').textContent = `${job.stage}, ${Math.round(job.seconds)} s`;
  }
}

function aged(desk, job, revision) {
  const old = job.revision !== revision;
  desk.place.classList.toggle('old', old);
  const by = job.by ? `By the ${job.by} model, ` : job.helps ? 'By the reference model, ' : '';
  const took = `${by}asked at ${job.asked}, ready in ${job.seconds < 10 ? job.seconds.toFixed(1) : Math.round(job.seconds)} s`;
  return `${took[0].toUpperCase()}${took.slice(1)}.${job.shortened ? ' It was stopped: this is the best so far.' : ''}${old ? ' The cooler has been changed since.' : ''}`;
}

async function show(desk, id) {
  desk.shown = id;
  let job;
  try {
    job = await get(`/api/job?id=${id}`);
  } catch {
    // Pushed out by newer answers, or the program is gone: the next look tells.
    desk.shown = 0;
    return;
  }
  const result = desk.place.querySelector('.work-result');
  if (desk.shown !== id) return;
  result.innerHTML = (desk.kind === 'help' ? `<p class="quiet">With the pressures that follow from hardware and charge.${look().state?.hold === 'both' ? ' The row of figures above is between the two pressures of the file, so it may differ.' : ''}</p>` : '') + (job.helps_html ?? job.html ?? '')
    + '<p class="quiet kept">This answer stays until the program ends, also when this tab is closed. After that it has to be worked out anew.</p>';
  result.dataset.job = id;
  enliven(result);
  if (job.take?.length) offer(desk, result, job.take);
}

// What the answer would write into the file, under its first sentence.
function offer(desk, result, take) {
  const box = document.createElement('div');
  box.className = 'work-take';
  box.innerHTML = '<button></button><p class="quiet"></p>';
  const button = box.querySelector('button');
  button.textContent = takes[desk.kind];
  box.querySelector('p').textContent = take.map(t => `${t.place.split('/').slice(desk.kind === 'size' ? 2 : 1).join(' ')}: ${t.value}${t.was === null ? '' : ` (now ${t.was})`}`).join('; ');
  button.addEventListener('click', async () => {
    button.disabled = true;
    if (await act.write(take)) box.replaceChildren('Written. Take back, at the top, undoes it.');
    else desk.shown = 0;
  });
  (result.querySelector('.verdict') ?? result.firstChild).after(box);
}

async function fail(desk, id) {
  desk.failed = id;
  const job = await get(`/api/job?id=${id}`);
  desk.place.querySelector('.work-age').textContent = job.problems.length > 1 ? `This needs more in machine.yaml: ${job.problems.join('; ')}.` : job.problems.join(' ');
}
