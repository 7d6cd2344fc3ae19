// Long work: asked for by a button, told how far it is, stopped by another, found again after the page is loaded anew.
import { get, post } from './net.js';
import { enliven } from './charts.js';
import { say } from './notices.js';

const words = { help: 'Work it out', cooldown: 'Cool it down', batch: 'Run a batch' };
const desks = new Map();
let look = null;

export function setUpWork(pageOf) {
  look = pageOf;
  for (const place of document.querySelectorAll('.work-desk')) {
    const kind = place.dataset.kind;
    place.innerHTML = '<div class="work-order"><button class="go"></button> <label>with the <select><option value="cubic">cubic model (quicker)</option><option value="reference">reference model</option></select></label></div>'
      + '<div class="work-progress" role="status" hidden><span class="bar"></span><span class="stage"></span> <button class="stop">Stop</button></div><p class="work-age quiet"></p><div class="work-result"></div>';
    const desk = { kind, place, shown: 0, followed: 0 };
    desks.set(kind, desk);
    place.querySelector('.go').textContent = words[kind];
    place.querySelector('.go').addEventListener('click', () => order(desk));
    place.querySelector('.stop').addEventListener('click', () => post('/api/cancel', { id: desk.followed }));
  }
}

async function order(desk) {
  try {
    const job = await post('/api/start', { kind: desk.kind, model: desk.place.querySelector('select').value });
    desk.followed = job.id;
    progress(desk, job);
  } catch (e) {
    desk.place.querySelector('.work-age').textContent = (e.problems?.length ? e.problems : [e.message]).join(' ');
  }
}

export function redrawWork() {
  desks.forEach(d => { d.shown = 0; });
}

export function workPulse(jobs, revision) {
  for (const desk of desks.values()) {
    const mine = jobs.filter(j => j.kind === desk.kind);
    const running = mine.filter(j => j.state === 'running' || j.state === 'waiting').at(-1);
    if (running) desk.followed = running.id;
    progress(desk, running);
    // The newest answer to the files as they are, else the newest there is.
    const done = mine.filter(j => j.state === 'done');
    const best = done.filter(j => j.revision === revision).at(-1) ?? done.at(-1);
    const last = mine.find(j => j.id === desk.followed);
    if (last?.state === 'failed' && desk.failed !== last.id) fail(desk, last.id);
    if (last?.state === 'cancelled' && desk.stopped !== last.id) {
      desk.stopped = last.id;
      desk.place.querySelector('.work-age').textContent = 'Stopped.';
    }
    if (best && desk.shown !== best.id) show(desk, best.id);
    if (best && desk.shown === best.id) age(desk, best, revision);
  }
}

function progress(desk, job) {
  const bar = desk.place.querySelector('.work-progress');
  bar.hidden = !job;
  desk.place.querySelector('.go').disabled = Boolean(job);
  if (job) bar.querySelector('.stage').textContent = `${job.stage}, ${Math.round(job.seconds)} s`;
}

function age(desk, job, revision) {
  const old = job.revision !== revision;
  desk.place.classList.toggle('old', old);
  if (desk.failed !== desk.followed && desk.stopped !== desk.followed) desk.place.querySelector('.work-age').textContent = old ? `Of the cooler as it was at ${job.asked}; it has been changed since.` : '';
}

async function show(desk, id) {
  desk.shown = id;
  const job = await get(`/api/job?id=${id}`);
  const result = desk.place.querySelector('.work-result');
  result.innerHTML = (job.kind === 'help' ? `<p class="quiet">By the ${job.model} model, pressures from hardware and charge.${look().state?.hold === 'both' ? ' The row of figures above is between the two pressures of the file, so it may differ.' : ''}</p>` : '') + (job.html ?? '');
  result.dataset.job = id;
  enliven(result);
}

async function fail(desk, id) {
  desk.failed = id;
  const job = await get(`/api/job?id=${id}`);
  desk.place.querySelector('.work-age').textContent = job.problems.length > 1 ? `This needs more in machine.yaml: ${job.problems.join('; ')}.` : job.problems.join(' ');
}
