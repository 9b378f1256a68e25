// SPDX-License-Identifier: Apache-2.0
// The page where a frame is marked: hands and fields change the case, the service is asked what follows, and what it
// answers is shown. The page computes no number of its own.
import { compared, proposedIntent, showAnswer } from './answer.js';
import { id, marked, model, onMarked, page, say } from './desk.js';
import { drawing } from './drawing.js';
import { FIELDS, fields, list, tools } from './fields.js';
import { choose, explain, scaleWords, send, studyOf } from './frames.js';
import { Keeping } from './keeping.js';
import { Live } from './live.js';
import { round, sameFrame } from './marked-case.js';
import { isWanted, marks, PLACING, remove } from './marks.js';
import { showPatient, showSide } from './patient.js';
import { get, onConnection, Problem } from './service.js';
import { Signing } from './signing.js';
import { Stage } from './stage.js';
import { html } from './svg.js';
import { Turning } from './turning.js';
import { clock, needleWords } from './words.js';

const KEEP_AFTER_MS = 700;
const stage = new Stage(id('frame'), id('loupe'), { moved, settled, placed, removed, viewed: draw, busy });
const turning = new Turning(stage, { turned: refresh, guarded });
const live = new Live(told, (yes) => id('plan').setAttribute('aria-busy', String(yes)));
const keeping = new Keeping(kept);
const signing = new Signing({ keep: keepNow, caseId: () => keeping.caseId, answerSide, signed });

// ---- the frame

async function begin(uid, number = 1) {
  const explained = await explain(uid, number);
  const probe = {};
  const { kind, footprintMm, midpoint, arcRadiusMm } = explained.probe;
  if (kind !== 'unknown') probe.kind = kind;
  if (footprintMm !== null) probe.footprintMm = Math.round(footprintMm * 10) / 10;
  if (arcRadiusMm !== null) probe.arcRadiusMm = arcRadiusMm;
  if (midpoint !== null) probe.midpoint = round(midpoint);
  model.begin({ sopInstanceUid: uid, frameNumber: number }, probe);
  await present(explained, uid, number);
}

/** A frame that tells no scale has the one that a person states; the service works it out. */
async function rescale() {
  const { scale } = model.frame();
  if (!page.scaleless || !scale) return;
  const { from, to, distanceMm } = scale;
  const asked = `?scale=${[from.column, from.row, to.column, to.row, distanceMm].join(',')}`;
  const { sopInstanceUid, frameNumber } = model.state.frame;
  const { calibration, text } = await explain(sopInstanceUid, frameNumber, asked);
  scaleWords(text);
  page.pixel = { mmPerColumn: calibration.mmPerColumn, mmPerRow: calibration.mmPerRow };
  refresh();
}

/** Shows a frame and whose it is; marks stay as they are. */
async function present(explained, uid, number) {
  id('choose').hidden = true;
  id('work').hidden = false;
  page.counts.set(uid, explained.frameCount);
  const { mmPerColumn, mmPerRow, source } = explained.calibration;
  page.pixel = mmPerColumn === null ? null : { mmPerColumn, mmPerRow };
  page.scaleless = source === 'none';
  scaleWords(explained.text);
  page.study = (await showPatient(uid))['0020000D']?.Value?.[0];
  await turning.to(uid, number);
  tools();
  changed();
}

// ---- marks

function moved(key, point, since) {
  const found = marks().find((each) => each.key === key);
  if (!found || page.signed) return;
  page.since = since;
  model.change(`move ${key}`, (state) => found.set(state, round(point)));
  changed();
}

function settled() {
  model.settle();
  refresh();
  guarded(rescale);
  keepSoon();
}

function busy(now) {
  page.busy = now;
}

function placed(point, since, onMark = false) {
  if (onMark && !isWanted(page.tool)) return;
  if (!page.shown || page.signed || page.tool === 'view') return;
  if (!onMarked()) {
    if (page.step === 'plan' && model.state.marks.target) {
      say('problem', `The marks of the plan lie on frame ${model.state.frame.frameNumber}; go back to it to move them.`);
      return;
    }
    takeFrame();
  }
  page.since = since;
  const key = PLACING[page.tool](round(point));
  model.settle();
  changed();
  stage.focus(key);
}

function removed(key) {
  if (page.signed) return;
  remove(key);
  id('frame').focus();
  changed();
}

// ---- what follows

function changed() {
  if (page.busy) shown();
  else refresh();
  ask();
  if (!page.busy) keepSoon();
}

/** What keeps the service from being asked. */
function unplanned() {
  if (model.state.approach) return 'Mark the target.';
  return model.state.marks.target ? 'Choose the approach.' : 'Mark the target, and choose the approach.';
}

function ask() {
  if (!model.state.marks.target || !model.state.approach) {
    page.answer = null;
    page.refusal = null;
    live.forget();
    show();
    id('plan-standing').textContent = unplanned();
    return;
  }
  const observation = page.step === 'observation' ? model.observation() : null;
  const body = model.document();
  if (observation) body.observations = [observation];
  live.ask({ path: observation ? 'v1/comparisons' : 'v1/plans', body, since: page.since });
  page.since = null;
}

function told({ answer, problem, silent, asked }) {
  if (silent) {
    id('plan').classList.add('old');
    id('plan-standing').textContent = 'No answer: the plan shown is of earlier marks. It is asked for again.';
    return;
  }
  id('plan').classList.remove('old');
  page.answer = answer ?? null;
  page.refusal = problem ?? null;
  show();
  if (asked.since !== null) drawn(asked.since);
}

/** How long it was from the hand to the picture: measured when the browser has painted. */
function drawn(since) {
  requestAnimationFrame(() => {
    performance.measure('hand-to-drawing', { start: since, end: performance.now() });
  });
}

/** Everything that shows what stands, without a question to the service. */
function refresh() {
  shown();
  list();
  fields();
  id('undo').disabled = model.steps.length === 0 || page.signed;
  id('cine-marks').hidden = onMarked() || !page.shown;
  showSide(model.state.context.laterality);
}

/** The marks and what is drawn: all that follows a hand. */
function shown() {
  stage.setMarks(marks());
  draw();
}

function draw() {
  if (!page.shown) return;
  const scene = {
    answer: page.answer,
    state: model.state,
    step: page.step,
    toScreen: stage.toScreen,
    width: stage.width,
    height: stage.height,
    unit: stage.unit,
    pixel: page.pixel,
  };
  const here = onMarked() || page.step === 'observation';
  stage.drawing.replaceChildren(...(here ? drawing(scene) : []));
}

function show() {
  shown();
  showAnswer();
  if (page.answer?.plan?.entryAt && !page.fitted) whole();
}

function whole() {
  const entry = page.answer?.plan?.entryAt;
  if (!entry) return stage.fit();
  page.fitted = true;
  const { columns, rows: high } = stage.size;
  stage.fit({
    left: Math.min(0, entry.column - columns * 0.06),
    right: Math.max(columns, entry.column + columns * 0.06),
    top: Math.min(0, entry.row),
    bottom: high,
  });
}

// ---- keeping

function current() {
  return { document: (caseId) => model.document(caseId), parts: () => model.parts() };
}

function keepSoon() {
  if (!keeping.open || page.signed) return;
  keeping.standing = false;
  clearTimeout(page.timer);
  page.timer = setTimeout(() => guarded(keepNow), KEEP_AFTER_MS);
}

async function keepNow() {
  clearTimeout(page.timer);
  if (!model.state.marks.target) {
    say('keep-problem', 'Mark the target first.');
    return false;
  }
  return keeping.keep(current);
}

function kept(standing) {
  id('kept').textContent = standing.kept ? `Kept at ${clock()}.` : standing.text;
  say('keep-problem', standing.problem ?? '');
  if (standing.problem) page.appending = false;
  if (standing.problem || standing.kept) id('connection').textContent = standing.problem ? `Not kept. ${standing.problem}` : '';
  id('reload').hidden = !standing.conflict;
  id('draft').disabled = !keeping.open || page.signed;
  compared();
  id('to-log').hidden = !keeping.open;
  id('to-log').href = `log?case=${encodeURIComponent(keeping.caseId)}`;
  if (keeping.open && !location.search.includes('case=')) {
    history.replaceState(null, '', `mark?case=${encodeURIComponent(keeping.caseId)}`);
  }
}

async function keepObservation() {
  page.appending = true;
  compared();
  const taken = new Set(model.kept.map((each) => each.id));
  let count = 1;
  while (taken.has(`obs-${count}`)) count++;
  const observation = model.observation(`obs-${count}`);
  if (!(await keepNow())) {
    page.appending = false;
    return compared();
  }
  await keeping.append('observations', observation, current, () => {
    model.kept.push(observation);
    page.appending = false;
    page.keptOne = true;
    signing.changed();
    tellKept();
  });
  compared();
}

function tellKept() {
  const count = model.kept.length;
  const said = count === 1 ? 'One observation is kept' : `${count} observations are kept`;
  id('observations-kept').textContent = count ? `${said}: ${model.kept.map((each) => each.id).join(', ')}.` : '';
}

function answerSide(text) {
  model.change('side', (state) => (state.context.sideAnswered = text));
}

function signed() {
  page.signed = true;
  clearTimeout(page.timer);
  refresh();
  show();
  for (const name of ['keep', 'keep-observation', 'next-observation', 'draft']) id(name).disabled = true;
  id('kept').textContent = 'Signed: this case takes nothing more; what is learned later belongs to an amendment.';
}

// ---- choosing

async function chosen(uid) {
  if (!page.observing) return begin(uid);
  if ((await studyOf(uid)) !== page.study) {
    throw new Problem(0, { detail: 'This frame is of another study.', remedy: 'Choose one of the same study.' });
  }
  page.observing = false;
  model.change('frame', (state) => (state.observation.frame = { sopInstanceUid: uid, frameNumber: 1 }));
  return present(await explain(uid, 1), uid, 1);
}

/** Marks of the plan, or of the observation, are made on the frame that is seen. */
function takeFrame() {
  model.change('frame', (state) => {
    if (page.step === 'plan') state.frame = { ...page.shown };
    else state.observation.frame = { ...page.shown };
  });
}

async function toStep(step) {
  page.step = step;
  for (const each of ['plan', 'observation']) id(`step-${each}`).setAttribute('aria-pressed', String(each === step));
  tools();
  const frame = marked();
  if (!sameFrame(frame, page.shown)) await turning.to(frame.sopInstanceUid, frame.frameNumber);
  changed();
}

// ---- what the page hears

async function guarded(work) {
  try {
    say('problem', '');
    await work();
  } catch (problem) {
    id('sending').textContent = '';
    say('problem', problem.message);
    if (!(problem instanceof Problem) && problem.constructor.name !== 'NoAnswer') throw problem;
  }
}

function on(name, event, work) {
  id(name).addEventListener(event, (what) => guarded(() => work(what)));
}

on('file', 'change', (event) => (event.target.files.length ? send(event.target.files[0]).then(chosen) : null));
on('frames', 'click', (event) => {
  const uid = event.target.closest('[data-frame]')?.dataset.frame;
  return uid ? chosen(uid) : null;
});
on('choose-back', 'click', () => {
  id('choose').hidden = true;
  id('work').hidden = false;
});
on('other-frame', 'click', () => {
  page.observing = page.step === 'observation';
  if (!page.observing && keeping.open) {
    throw new Problem(0, { detail: 'The frame of a kept case stands.', remedy: 'Begin a new case from Cases and records.' });
  }
  return choose();
});
on('step-plan', 'click', () => toStep('plan'));
on('step-observation', 'click', () => toStep('observation'));
on('tools', 'click', (event) => {
  const tool = event.target.closest('[data-tool]')?.dataset.tool;
  if (!tool) return;
  page.tool = tool;
  tools();
  id('tools').querySelector(`[data-tool="${tool}"]`).focus();
});
on('zoom-in', 'click', () => stage.zoom(1.4));
on('zoom-out', 'click', () => stage.zoom(1 / 1.4));
on('zoom-frame', 'click', () => stage.fit());
on('zoom-path', 'click', () => whole());
on('undo', 'click', () => undo());
on('cine-back', 'click', () => turning.within(page.shown.frameNumber - 1));
on('cine-next', 'click', () => turning.within(page.shown.frameNumber + 1));
on('cine-number', 'input', (event) => turning.within(Number(event.target.value)));
on('cine-marks', 'click', () => turning.to(marked().sopInstanceUid, marked().frameNumber));
on('marks', 'click', (event) => {
  const { go, remove } = event.target.closest('button')?.dataset ?? {};
  if (go) stage.focus(go);
  else if (remove) removed(remove);
});
on('marks', 'change', (event) => {
  const { name, kind } = event.target.dataset;
  const [what, index] = (name ?? kind).split('-');
  model.change('name', (state) => {
    const shape = state.marks[`${what}s`][Number(index)];
    if (name) shape.name = event.target.value.trim() || shape.name;
    else shape.kind = event.target.value;
  });
  model.settle();
  changed();
});
for (const [name, work] of Object.entries(FIELDS)) {
  on(name, 'change', (event) => {
    model.change(`field ${name}`, (state) => work(state, event.target.value, event.target));
    model.settle();
    if (name === 'approach') tools();
    changed();
    return rescale();
  });
}
on('choose-proposed', 'click', () => {
  const intent = proposedIntent(page.answer.plan);
  model.change('choose', (state) => (state.intent = intent));
  changed();
});
on('propose', 'click', () => {
  model.change('propose', (state) => (state.intent = null));
  changed();
});
on('keep', 'click', () => keepNow());
on('reload', 'click', () => load(keeping.caseId));
on('keep-observation', 'click', () => keepObservation());
on('next-observation', 'click', () => {
  page.keptOne = false;
  model.change('next observation', (state) => {
    state.observation = { frame: state.observation.frame, shaft: [], tip: null, tipIsTip: false, phase: '', punctureDistanceMm: null };
  });
  changed();
});
document.addEventListener('keydown', (event) => {
  const typing = event.target.matches?.('input, select, textarea');
  if ((event.ctrlKey || event.metaKey) && event.key === 'z' && !typing) {
    event.preventDefault();
    undo();
  }
});
/** Marks that no service has are gone with the page. */
addEventListener('beforeunload', (event) => {
  if (page.signed || !model.steps.length || (keeping.open && keeping.standing)) return;
  event.preventDefault();
});
onConnection((answers) => {
  if (answers) ask();
});

function undo() {
  if (page.signed || !model.undo()) return;
  changed();
}

async function load(caseId) {
  const held = await keeping.load(caseId);
  if (JSON.stringify(held.marks).includes('"repeats"')) {
    throw new Problem(0, { detail: 'This case has a mark that was set several times.', remedy: 'Go on with it through the interface.' });
  }
  model.take(held);
  keeping.settled(model.parts());
  const { sopInstanceUid: uid, frameNumber } = model.state.frame;
  if (!uid) throw new Problem(0, { detail: 'This case names no frame that is held.', remedy: 'Mark a frame that is.' });
  await present(await explain(uid, frameNumber), uid, frameNumber);
  kept({ kept: true });
  tellKept();
  const { records } = await get(`v1/records?caseId=${encodeURIComponent(caseId)}&current=true`);
  if (records.length) signing.done(records[0]);
}

async function start() {
  page.needles = (await get('v1/site/needles')).needles;
  id('needle').append(...page.needles.map((each) => html('option', { value: each.id }, needleWords(each))));
  const asked = new URLSearchParams(location.search);
  if (asked.get('case')) await load(asked.get('case'));
  else if (asked.get('frame')) await begin(asked.get('frame'));
  else await choose();
}

guarded(start);
