// SPDX-License-Identifier: Apache-2.0
// The page where the assistant keeps the log. A touch makes an entry with its id and time, the outbox brings it to the
// service, and what the service answers is shown.
import { agentNames, known, lastStanding, show, standing, tick } from './bedside.js';
import { event, local, words } from './entries.js';
import { Outbox } from './outbox.js';
import { showPatient, showSide } from './patient.js';
import { prepare, show as showPreparation, Unsaid } from './preparation.js';
import { get, NoAnswer, onConnection, Problem } from './service.js';
import { html } from './svg.js';

const READ_MS = 10_000; // others enter too; a design choice
const AGAIN_MS = 2_000;
const BY = 'plumbline-entered-by'; // for this tab only

const id = (name) => document.getElementById(name);
const caseId = new URLSearchParams(location.search).get('case');
const place = `v1/cases/${encodeURIComponent(caseId ?? '')}`;

function on(element, name, work) {
  element.addEventListener(name, (what) => {
    if (name === 'submit') what.preventDefault();
    try {
      problem('');
      work(what);
    } catch (reason) {
      if (!(reason instanceof Unsaid)) throw reason;
      problem(reason.message);
    }
  });
}

function problem(text) {
  id('problem').textContent = text;
  id('problem').hidden = text === '';
  if (text) id('problem').scrollIntoView({ block: 'nearest' });
}

// ---- entering

function by() {
  const name = id('entered-by').value.trim();
  if (!name) {
    id('entered-by').focus();
    throw new Unsaid('Who enters? Give a name as in Roe^Al first.');
  }
  return name;
}

/** When it happened, where that is not now. */
function later() {
  if (id('later').getAttribute('aria-pressed') !== 'true') return null;
  const time = new Date(id('later-time').value);
  if (Number.isNaN(time.getTime())) throw new Unsaid('When did it happen? Give day and time, or enter it as now.');
  if (time > new Date()) throw new Unsaid('That time is still to come. Give the time at which it happened.');
  return time;
}

function add(part, body) {
  by();
  known.outbox.add(part, body);
}

function log(what) {
  const entry = event(what, { by: by(), later: later() });
  known.outbox.add('events', entry);
  id('said').textContent = `Entered: ${words(entry, agentNames())}.`;
}

function takeBack(entryId, reason) {
  if (!entryId) return;
  const now = event({ kind: 'correction', corrects: entryId, reason }, { by: by(), later: null });
  known.outbox.add('events', now);
  id('said').textContent = reason === 'put back' ? 'Put back.' : 'Taken back.';
}

on(id('one-touch'), 'click', (what) => {
  const { kind, blood } = what.target.closest('button')?.dataset ?? {};
  if (!kind) return;
  const entry = { kind };
  if (kind === 'aspiration') entry.blood = blood === 'yes';
  if (kind === 'puncture') entry.punctureSite = site();
  log(entry);
});
on(id('signs'), 'click', (what) => {
  const { sign } = what.target.closest('button')?.dataset ?? {};
  if (sign) log({ kind: 'stop', sign });
});
on(id('states'), 'click', (what) => {
  const { state } = what.target.closest('button')?.dataset ?? {};
  if (!state) return;
  const tried = id('tried-other').getAttribute('aria-pressed') === 'true' ? { step: known.sight.step } : {};
  id('tried-other').setAttribute('aria-pressed', 'false');
  log({ kind: 'sightStep', state, ...tried });
});
on(id('tried-same'), 'click', () => log({ kind: 'sightStep', state: known.sight.asked.state, step: known.sight.step }));
on(id('tried-other'), 'click', () => {
  const now = id('tried-other').getAttribute('aria-pressed') !== 'true';
  id('tried-other').setAttribute('aria-pressed', String(now));
  if (now) {
    id('said').textContent = 'Say what is seen now.';
    document.querySelector('#states button:not([hidden])').focus();
  }
});

const site = () => (id('site').value.trim() === '' ? 1 : Number(id('site').value));
const chosen = (name) => document.querySelector(`input[name="${name}"]:checked`)?.value;

on(id('aliquot'), 'click', (what) => {
  const { volume } = what.target.closest('button')?.dataset ?? {};
  if (volume) id('aliquot-volume').value = volume;
});
on(id('aliquot-agent'), 'change', () => {
  id('fluid-field').hidden = id('aliquot-agent').value !== 'other';
});
on(id('aliquot'), 'submit', () => {
  const what = id('aliquot-agent').value;
  const fluid = id('aliquot-fluid').value.trim();
  const volumeMl = Number(id('aliquot-volume').value);
  if (!what || (what === 'other' && !fluid)) throw new Unsaid('What was injected? Choose it, or name the fluid.');
  if (!(volumeMl > 0)) throw new Unsaid('How much was injected? Give the volume in mL.');
  const entry = { kind: 'aliquot', volumeMl, ...(what === 'other' ? { fluid } : { agent: what }) };
  if (id('hydrolocation').checked) entry.hydrolocation = true;
  for (const name of ['spread', 'resistance', 'pain']) {
    if (chosen(name)) entry[name] = chosen(name);
  }
  log(entry);
  for (const input of document.querySelectorAll('#aliquot input:checked')) input.checked = false; // said anew each time
});
on(id('stop-moment'), 'submit', () => {
  const names = [id('stop-name-1').value.trim(), id('stop-name-2').value.trim()];
  const block = id('stop-block').value;
  const side = chosen('stop-side');
  if (names.some((name) => !name)) throw new Unsaid('A stop moment is spoken by two people: give both names.');
  if (!block || !side) throw new Unsaid('Choose block and side as they were spoken.');
  const seen = { markSeen: id('mark-seen').checked, consentSeen: id('consent-seen').checked };
  log({ kind: 'stopMoment', names, block, side, ...seen, punctureSite: site() });
  for (const input of document.querySelectorAll('#stop-moment input:checked')) input.checked = false;
  id('stop-block').value = '';
  id('stop-moment-box').open = false;
});
on(id('undo'), 'click', () => takeBack(lastStanding()?.id, 'undone'));
on(id('entries'), 'click', (what) => {
  const { takeBack: back, putBack } = what.target.closest('button')?.dataset ?? {};
  if (back) takeBack(back, 'taken back');
  else if (putBack) takeBack(putBack, 'put back');
});
on(id('refused-list'), 'click', (what) => {
  const { letGo } = what.target.closest('button')?.dataset ?? {};
  if (letGo) known.outbox.letGo(letGo);
});
on(id('later'), 'click', () => {
  const now = id('later').getAttribute('aria-pressed') !== 'true';
  id('later').setAttribute('aria-pressed', String(now));
  id('later-fields').hidden = !now;
  if (now) id('later-time').value = local(new Date());
});
on(id('entered-by'), 'change', () => remember(id('entered-by').value.trim()));

function remember(name) {
  try {
    sessionStorage.setItem(BY, name);
  } catch {
    // asked again after a reload
  }
}

function remembered() {
  try {
    return sessionStorage.getItem(BY) ?? '';
  } catch {
    return '';
  }
}

// ---- what the service says

let reading = null;
let again = false;
let timer = 0;

/** Reads everything anew; while it does, a further wish is remembered. */
function read() {
  again = reading !== null;
  reading ??= answers().finally(() => {
    reading = null;
    if (again) read();
  });
  return reading;
}

async function answers() {
  clearTimeout(timer);
  let wait = READ_MS;
  try {
    const held = await get(place);
    const [logged, sight] = await Promise.all([get(`${place}/log`), nextStep()]);
    known.session = held.session ? await get(`v1/sessions/${encodeURIComponent(held.session)}`) : null;
    Object.assign(known, { held, log: logged, sight });
    const parts = ['events', 'agents', 'checks', 'team'];
    known.outbox.readBack(new Set(parts.flatMap((part) => (held[part] ?? []).map((entry) => entry.id))));
    await patient(held);
    await records();
    all();
  } catch (reason) {
    wait = AGAIN_MS;
    if (reason instanceof Problem) problem(reason.message);
    else if (!(reason instanceof NoAnswer)) throw reason;
  } finally {
    timer = setTimeout(read, wait);
  }
}

/** What keeps the next step from being said, such as an approach that nobody stated, is said in its place. */
async function nextStep() {
  try {
    return await get(`${place}/sight`);
  } catch (reason) {
    if (!(reason instanceof Problem)) throw reason;
    return { kind: 'none', action: reason.message, reason: '', mustNot: [], asked: {} };
  }
}

async function patient(held) {
  const uid = held.frame.sopInstanceUid;
  if (uid && known.patient !== uid) {
    await showPatient(uid);
    known.patient = uid;
  }
  showSide(held.context?.laterality);
}

/** A record that is signed closes the case. */
async function records() {
  const { records: found } = await get(`v1/records?caseId=${encodeURIComponent(caseId)}`);
  const signed = found.find((record) => record.state !== 'draft');
  known.closed = signed?.recordUid ?? null;
  id('closed').hidden = !signed;
  if (!signed) return;
  const link = html('a', { href: `record?uid=${encodeURIComponent(signed.recordUid)}` }, 'the record');
  id('closed').replaceChildren('Signed: this case takes nothing more. Read ', link, '; what is learned later belongs to an amendment.');
}

function all() {
  if (!known.held) return; // before the case is read nothing can be said of it
  if (id('bedside').hidden) id('stop-moment-box').open = !standing().some((entry) => entry.kind === 'stopMoment');
  id('bedside').hidden = false;
  id('beside').hidden = false;
  show();
  showPreparation();
  for (const button of document.querySelectorAll('.touch button, form button')) button.disabled = Boolean(known.closed);
}

let lastWaiting = -1;
function changed() {
  all();
  const count = known.outbox.waiting.length;
  if (count < lastWaiting || (lastWaiting === -1 && count === 0)) read();
  lastWaiting = count;
}

function start() {
  if (!caseId) {
    id('choose').hidden = false;
    return;
  }
  id('to-mark').href = `mark?case=${encodeURIComponent(caseId)}`;
  id('entered-by').value = remembered();
  known.outbox = new Outbox(caseId, changed);
  prepare({ add, by, log, on });
  onConnection((yes) => {
    if (yes) known.outbox.send();
  });
  setInterval(tick, 1_000);
  known.outbox.send();
  read();
}

start();
