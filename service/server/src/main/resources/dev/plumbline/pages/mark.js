// SPDX-License-Identifier: Apache-2.0
// The page where a frame is marked: hands and fields change the case, the service is asked what follows, and what it
// answers is shown. The page computes no number of its own.
import { drawing, sideView } from './drawing.js';
import { Keeping } from './keeping.js';
import { Live } from './live.js';
import { MarkedCase, round, sameFrame } from './marked-case.js';
import { showPatient, showSide } from './patient.js';
import { get, onConnection, Problem, request } from './service.js';
import { Signing } from './signing.js';
import { Stage } from './stage.js';
import { html } from './svg.js';
import { clock, judged, listed, needleWords, quantity, spelledOut, tenth } from './words.js';

const KEEP_AFTER_MS = 700;
const NEW_RADIUS_MM = 3; // of a hazard or nerve just placed; a place to begin from, not a finding
const HAZARDS = ['artery', 'vein', 'pleura', 'bowel', 'dura', 'kidney', 'bone', 'other'];
const TOOLS = {
  plan: [
    ['view', 'Move the view'],
    ['target', 'Target'],
    ['skin', 'Skin'],
    ['midpoint', "Probe's middle"],
    ['hazard', 'Hazard'],
    ['nerve', 'Nerve'],
  ],
  observation: [
    ['view', 'Move the view'],
    ['shaft', 'Shaft'],
    ['tip', 'Tip'],
  ],
};
const HINTS = {
  view: 'Drag to move the view, or drag a mark.',
  target: 'Target: where the tip is meant to stop, beside the nerve, never its centre.',
  skin: 'Skin: two points along the skin under the probe.',
  midpoint: "Probe's middle: the middle of the probe's face.",
  hazard: 'Hazard: its middle, then its edge. Only what is marked is checked.',
  nerve: 'Nerve: its middle, then its edge.',
  shaft: 'Shaft: two points along what is seen of the needle.',
  tip: 'Tip: the deepest end that is seen.',
  scale: 'Scale: two points of a known distance, such as two ticks of the depth ruler.',
};

const id = (name) => document.getElementById(name);
const model = new MarkedCase();
const page = {
  step: 'plan',
  tool: 'target',
  shown: null, // the frame on the screen
  counts: new Map(), // frames of each object
  pixel: null,
  answer: null,
  needles: [],
  busy: false,
  signed: false,
  timer: 0,
  since: null,
};
const stage = new Stage(id('frame'), id('loupe'), { moved, settled, placed, removed, viewed: draw, busy });
const live = new Live(told);
const keeping = new Keeping(kept);
const signing = new Signing({ keep: keepNow, caseId: () => keeping.caseId, signed });

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

async function explain(uid, number) {
  return get(`v1/frames/${encodeURIComponent(uid)}/${number}`);
}

/** Shows a frame and whose it is; marks stay as they are. */
async function present(explained, uid, number) {
  id('choose').hidden = true;
  id('work').hidden = false;
  page.counts.set(uid, explained.frameCount);
  const { mmPerColumn, mmPerRow, source } = explained.calibration;
  page.pixel = mmPerColumn === null ? null : { mmPerColumn, mmPerRow };
  page.scaleless = source === 'none';
  id('scale').textContent = explained.text.split('\n').slice(1, 2).join('');
  const attributes = await showPatient(uid);
  page.study = attributes['0020000D']?.Value?.[0];
  await turnTo(uid, number);
  tools();
  changed();
}

async function turnTo(uid, number) {
  const address = `../v1/frames/${encodeURIComponent(uid)}/${number}/rendered`;
  const size = await decoded(address);
  page.shown = { sopInstanceUid: uid, frameNumber: number };
  stage.show(address, size);
  const count = page.counts.get(uid) ?? 1;
  id('cine').hidden = count < 2 && sameFrame(page.shown, marked());
  id('cine-number').max = count;
  id('cine-number').value = number;
  id('cine-text').textContent = `frame ${number} of ${count}`;
  for (const other of [number + 1, number - 1]) {
    if (other >= 1 && other <= count) new Image().src = `../v1/frames/${encodeURIComponent(uid)}/${other}/rendered`;
  }
  refresh();
}

async function decoded(address) {
  const image = new Image();
  image.src = address;
  try {
    await image.decode();
  } catch {
    throw new Problem(0, { detail: 'The frame cannot be shown.', remedy: 'Try again when the service answers.' });
  }
  return { columns: image.naturalWidth, rows: image.naturalHeight };
}

/** The frame that the marks of this step lie on. */
const marked = () => (page.step === 'observation' && model.state.observation.frame) || model.state.frame;
const onMarked = () => page.shown && sameFrame(page.shown, marked());

let turning = Promise.resolve();
function scrub(number) {
  const uid = page.shown.sopInstanceUid;
  const count = page.counts.get(uid);
  if (number < 1 || number > count) return;
  page.wanted = number;
  turning = turning.then(() => (page.wanted === number ? guarded(() => turnTo(uid, number)) : null));
}

// ---- marks

/** Every mark of this step as the stage moves it: where it is, and what a new place means. */
function marks() {
  if (!onMarked() || page.signed) return [];
  return page.step === 'plan' ? planMarks() : observationMarks();
}

function planMarks() {
  const { target, skin, hazards, nerves } = model.state.marks;
  const { midpoint } = model.state.probe;
  const list = [];
  if (target) list.push(mark('target', 'target', 'Target', target, (s, p) => (s.marks.target = p)));
  skin.forEach((point, i) => list.push(mark(`skin-${i}`, 'skin', `Skin ${i + 1}`, point, (s, p) => (s.marks.skin[i] = p))));
  if (midpoint) list.push(mark('midpoint', 'midpoint', "Probe's middle", midpoint, (s, p) => (s.probe.midpoint = p)));
  hazards.forEach((shape, i) => list.push(...discMarks('hazard', shape, i)));
  nerves.forEach((shape, i) => list.push(...discMarks('nerve', shape, i)));
  const entry = page.answer?.plan?.entryAt;
  if (entry && model.state.approach === 'inPlane') {
    list.push({ ...mark('entry', 'entry', 'Entry', entry, chooseEntry), free: true });
  }
  for (const end of ['from', 'to']) {
    const point = model.state.scale[end];
    if (point) list.push(mark(`scale-${end}`, 'scale', `Scale, ${end}`, point, (s, p) => (s.scale[end] = p)));
  }
  return list;
}

function discMarks(kind, shape, i) {
  if (!shape.disc) return [];
  const { center, radiusMm } = shape.disc;
  const disc = (state) => state.marks[`${kind}s`][i].disc;
  const list = [mark(`${kind}-${i}`, kind, shape.name, center, (s, p) => (disc(s).center = p))];
  if (page.pixel) {
    const { mmPerColumn } = page.pixel;
    const edge = { column: center.column + radiusMm / mmPerColumn, row: center.row };
    const wider = (s, p) => (disc(s).radiusMm = Math.max(0.2, Math.round((p.column - center.column) * mmPerColumn * 20) / 20));
    list.push(mark(`${kind}-${i}-edge`, 'edge', `${shape.name}, edge`, edge, wider));
  }
  return list;
}

function observationMarks() {
  const { shaft, tip } = model.state.observation;
  const list = [];
  if (model.state.approach === 'inPlane') {
    shaft.forEach((point, i) =>
      list.push(mark(`shaft-${i}`, 'shaft', `Shaft ${i + 1}`, point, (s, p) => (s.observation.shaft[i] = p))),
    );
  }
  if (tip) list.push(mark('tip', 'tip', tipName(), tip, (s, p) => (s.observation.tip = p)));
  return list;
}

const tipName = () => (model.state.approach === 'inPlane' ? 'Tip' : 'Bright dot');
const mark = (key, kind, label, point, set) => ({ key, kind, label, point, set });

/** An entry that a hand moves is a distance along the skin: the nearest point of the skin line counts. */
function chooseEntry(state, point) {
  const middle = state.probe.midpoint;
  const { entryAt, entryDistanceMm } = page.answer.plan;
  if (!middle || !entryDistanceMm?.value) return;
  const one = { x: entryAt.column - middle.column, y: entryAt.row - middle.row };
  const along = (point.column - middle.column) * one.x + (point.row - middle.row) * one.y;
  const part = along / (one.x * one.x + one.y * one.y);
  state.intent = { entryDistanceMm: Math.max(0.5, Math.round(part * entryDistanceMm.value * 2) / 2) };
}

function moved(key, point, since) {
  const found = marks().find((each) => each.key === key);
  if (!found) return;
  page.since = since;
  model.change(`move ${key}`, (state) => found.set(state, round(point)));
  changed();
}

function settled() {
  model.settle();
  keepSoon();
}

function busy(now) {
  page.busy = now;
}

function placed(point, since) {
  if (page.signed || page.tool === 'view') return;
  if (!onMarked()) {
    if (page.step === 'plan' && model.state.marks.target) return;
    takeFrame();
  }
  page.since = since;
  const key = PLACING[page.tool](round(point));
  model.settle();
  changed();
  stage.focus(key);
}

/** What placing a mark of each kind does; gives the key of the mark. */
const PLACING = {
  target: (point) => put('target', (s) => (s.marks.target = point)),
  midpoint: (point) => put('midpoint', (s) => (s.probe.midpoint = point)),
  tip: (point) => put('tip', (s) => (s.observation.tip = point)),
  skin: (point) => pair('skin', (s) => s.marks.skin, point),
  shaft: (point) => pair('shaft', (s) => s.observation.shaft, point),
  hazard: (point) => structure('hazard', point),
  nerve: (point) => structure('nerve', point),
  scale: (point) => {
    const end = model.state.scale.from && !model.state.scale.to ? 'to' : 'from';
    return put(`scale-${end}`, (s) => (s.scale[end] = point));
  },
};

function put(key, work) {
  model.change(`place ${key}`, work);
  return key;
}

/** Two points; a third one takes the place of the nearer. */
function pair(kind, list, point) {
  const there = list(model.state);
  const far = (other) => Math.hypot(other.column - point.column, other.row - point.row);
  const index = there.length < 2 ? there.length : far(there[0]) <= far(there[1]) ? 0 : 1;
  return put(`${kind}-${index}`, (state) => (list(state)[index] = point));
}

function structure(kind, point) {
  if (!page.pixel) {
    say('problem', 'Without a scale a round structure has no size: state the scale first.');
    return '';
  }
  const list = model.state.marks[`${kind}s`];
  const taken = new Set(list.map((each) => each.name));
  let number = 1;
  while (taken.has(`${kind} ${number}`)) number++;
  const shape = { name: `${kind} ${number}`, disc: { center: point, radiusMm: NEW_RADIUS_MM } };
  if (kind === 'hazard') shape.kind = 'other';
  return put(`${kind}-${list.length}`, (state) => state.marks[`${kind}s`].push(shape));
}

function removed(key) {
  const [kind, index] = key.split('-');
  model.change(`remove ${key}`, (state) => {
    if (kind === 'target') state.marks.target = null;
    else if (kind === 'midpoint') delete state.probe.midpoint;
    else if (kind === 'entry') state.intent = null;
    else if (kind === 'tip') state.observation.tip = null;
    else if (kind === 'skin') state.marks.skin.splice(Number(index), 1);
    else if (kind === 'shaft') state.observation.shaft.splice(Number(index), 1);
    else if (kind === 'scale') state.scale[index] = null;
    else state.marks[`${kind}s`].splice(Number(index), 1);
  });
  model.settle();
  id('frame').focus();
  changed();
}

// ---- what follows

function changed() {
  refresh();
  ask();
  if (!page.busy) keepSoon();
}

function ask() {
  if (!model.state.marks.target) {
    page.answer = null;
    live.forget();
    id('plan-standing').textContent = 'Mark the target.';
    return show();
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
  stage.setMarks(marks());
  draw();
  list();
  fields();
  id('undo').disabled = model.steps.length === 0 || page.signed;
  id('cine-marks').hidden = onMarked() || !page.shown;
  showSide(model.state.context.laterality);
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
    pixel: page.pixel,
  };
  const here = onMarked() || page.step === 'observation';
  stage.drawing.replaceChildren(...(here ? drawing(scene) : []));
}

function show() {
  stage.setMarks(marks());
  draw();
  const plan = page.answer?.plan;
  if (page.refusal) id('plan-standing').textContent = page.refusal.message;
  else if (plan) id('plan-standing').textContent = standing(plan);
  id('plan-words').textContent = plan?.text ?? '';
  id('needle-words').textContent = plan ? `${plan.needleChoiceText} ${plan.setUpAdvice.text}` : '';
  rows('plan-numbers', plan ? numbers(plan) : []);
  rows('clearances', plan ? clearances(plan) : []);
  if (model.state.approach === 'outOfPlane' && plan) sideView(id('side-view'), plan);
  else id('side-view').toggleAttribute('hidden', true);
  id('choose-proposed').disabled = !plan || plan.source !== 'proposed' || page.signed || !proposedIntent(plan);
  id('propose').disabled = !model.state.intent || page.signed;
  compared();
  if (plan?.entryAt && !page.fitted) whole();
}

function standing(plan) {
  const source = plan.source === 'proposed' ? 'Proposed, not chosen: a proposal cannot be signed.' : 'Chosen.';
  if (plan.binding.length) return `${source} Does not fit: ${plan.binding.map(spelledOut).join(', ')}.`;
  const fits = plan.feasible ? ' Fits the limits you set, for what you marked.' : '';
  const unchecked = plan.unchecked.length ? ` Not checked: ${plan.unchecked.map(spelledOut).join(', ')}.` : '';
  const doubts = plan.doubts.length ? ` In doubt: ${listed(plan.doubts)}.` : '';
  return source + fits + unchecked + doubts;
}

const IN_PLANE = [
  ['angle to skin', 'angleToSkinDeg', '°'],
  ['entry from midpoint', 'entryDistanceMm', ' mm'],
  ["entry from probe's edge", 'entryFromProbeEdgeMm', ' mm'],
  ['target depth', 'targetDepthMm', ' mm'],
  ['path', 'pathMm', ' mm'],
  ['lead-in', 'leadInMm', ' mm'],
  ['first seen at depth', 'firstSeenDepthMm', ' mm'],
  ['needle left outside', 'needleLeftMm', ' mm'],
  ['shortest needle', 'shortestNeedleMm', ' mm'],
];
const OUT_OF_PLANE = [
  ['angle to skin', 'angleToSkinDeg', '°'],
  ['puncture from beam', 'punctureDistanceMm', ' mm'],
  ['along the probe', 'alongProbeMm', ' mm'],
  ['target depth', 'targetDepthMm', ' mm'],
  ['path', 'pathMm', ' mm'],
  ['shortest needle', 'shortestNeedleMm', ' mm'],
];
const COMPARED = [
  ['angle to skin', 'angleToSkinDeg', 'angleToSkinDeg', '°'],
  ['entry from midpoint', 'entryDistanceMm', 'entryDistanceMm', ' mm'],
  ['puncture from beam', 'punctureDistanceMm', 'punctureDistanceMm', ' mm'],
  ['depth of target and tip', 'targetDepthMm', 'tipDepthMm', ' mm'],
  ['depth of target and crossing', 'targetDepthMm', 'crossingDepthMm', ' mm'],
  ['path', 'pathMm', 'pathMm', ' mm'],
  ['tip along the plan', '', 'alongPlanMm', ' mm'],
  ['tip across the plan', '', 'acrossPlanMm', ' mm'],
];

const numbers = (plan) =>
  (model.state.approach === 'inPlane' ? IN_PLANE : OUT_OF_PLANE)
    .filter(([, field]) => plan[field])
    .map(([name, field, unit]) => ({ field, cells: [name, quantity(plan[field], unit)] }));

const clearances = (plan) =>
  [
    ...(plan.hazardClearances ?? []).map((each) => [`hazard ${each.name}`, each.clearanceMm]),
    ...(plan.nerveClearances ?? []).map((each) => [`nerve ${each.name}`, each.pathMm]),
  ].map(([name, given]) => ({ field: name, cells: [name, quantity(given, ' mm')] }));

/** Fills the body of a table; the first cell of a row names it. */
function rows(table, list) {
  id(table).hidden = list.length === 0;
  id(table).tBodies[0].replaceChildren(
    ...list.map(({ field, cells: [name, ...values] }) =>
      html('tr', { 'data-field': field }, html('th', { scope: 'row' }, name), ...values.map((value) => cell(value))),
    ),
  );
}

function cell(value) {
  if (typeof value === 'string') return html('td', {}, value);
  return html('td', {}, html('span', {}, value.text), html('small', {}, value.note));
}

function compared() {
  const observing = page.step === 'observation';
  id('comparison').hidden = !observing;
  if (!observing) return;
  const observed = page.answer?.observations?.at(-1);
  const difference = page.answer?.deviations?.at(-1);
  const plan = page.answer?.plan;
  rows(
    'comparison-numbers',
    observed
      ? COMPARED.filter(([, , field]) => difference?.[field]).map(([name, planned, field, unit]) => ({
          field,
          cells: [
            name,
            planned ? quantity(plan[planned], unit) : '',
            quantity(observed[field], unit),
            { text: quantity(difference[field], unit, true), note: judged(difference[field]) },
          ],
        }))
      : [],
  );
  const notes = observed
    ? [observed.rotationText, observed.assumptions.length ? `Taken for granted: ${listed(observed.assumptions)}.` : '']
    : [model.state.approach === 'inPlane' ? 'Mark two points of the shaft, or the tip.' : 'Mark the bright dot.'];
  id('observation-notes').textContent = notes.filter(Boolean).join(' ');
  id('keep-observation').disabled = !observed || page.keptOne || page.signed;
  id('next-observation').disabled = !page.keptOne || page.signed;
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

// ---- the list of marks and the fields

function list() {
  const all = marks().filter((each) => each.kind !== 'edge' && each.key !== 'entry');
  id('no-marks').hidden = all.length > 0;
  const focused = document.activeElement?.closest?.('#marks [data-of]')?.dataset.of;
  if (focused && all.some((each) => each.key === focused) && document.activeElement.matches('input, select')) {
    return; // somebody types there
  }
  id('marks').replaceChildren(
    ...all.map((each) => {
      const place = `column ${each.point.column.toFixed(1)}, row ${each.point.row.toFixed(1)}`;
      const go = html('button', { type: 'button', 'data-go': each.key }, html('span', {}, each.label), html('small', {}, place));
      const away = html('button', { type: 'button', 'data-remove': each.key, 'aria-label': `Remove ${each.label}` }, 'Remove');
      return html('li', { 'data-of': each.key }, go, ...structureFields(each), away);
    }),
  );
}

function structureFields({ key, kind }) {
  if (kind !== 'hazard' && kind !== 'nerve') return [];
  const shape = model.state.marks[`${kind}s`][Number(key.split('-')[1])];
  const name = html('input', { type: 'text', value: shape.name, maxlength: '64', 'aria-label': 'Name', 'data-name': key });
  if (kind === 'nerve') return [name];
  const select = html('select', { 'aria-label': 'Kind', 'data-kind': key });
  for (const each of HAZARDS) select.append(html('option', { value: each, selected: shape.kind === each ? '' : null }, each));
  return [name, select];
}

function tools() {
  const wanted = [...TOOLS[page.step]];
  if (model.state.approach === 'outOfPlane' && page.step === 'observation') {
    wanted.splice(1, 2, ['tip', 'Bright dot']);
  }
  if (page.scaleless && page.step === 'plan') wanted.push(['scale', 'Scale']);
  if (!wanted.some(([name]) => name === page.tool)) page.tool = wanted[1][0];
  id('tools').replaceChildren(
    ...wanted.map(([name, label]) =>
      html('button', { type: 'button', 'data-tool': name, 'aria-pressed': String(name === page.tool) }, label),
    ),
  );
  id('hint').textContent = page.tool === 'tip' && model.state.approach === 'outOfPlane'
    ? 'Bright dot: where some part of the needle crosses the beam.'
    : HINTS[page.tool];
}

function fields() {
  const { state } = model;
  const inPlane = state.approach === 'inPlane';
  const set = (name, value) => {
    if (document.activeElement !== id(name)) id(name).value = value ?? '';
  };
  set('approach', state.approach);
  set('needle-side', state.probe.needleSide);
  set('target-kind', state.targetKind);
  set('band-low', state.band.low);
  set('band-high', state.band.high);
  set('face', state.probe.footprintMm);
  set('entry', state.intent?.entryDistanceMm);
  set('chosen-puncture', state.intent?.punctureDistanceMm);
  set('laterality', state.context.laterality);
  set('block', state.context.block);
  set('operator', state.context.operator?.name);
  set('phase', state.observation.phase);
  set('puncture', state.observation.punctureDistanceMm);
  set('needle', needleId(state.needle));
  id('tip-is-tip').checked = state.observation.tipIsTip;
  for (const name of ['needle-side', 'band-low', 'band-high', 'entry']) field(name, inPlane);
  for (const name of ['chosen-puncture', 'puncture']) field(name, !inPlane);
  for (const input of document.querySelectorAll('.panel section:not(#plan) :is(input, select)')) {
    if (!input.closest('#signing')) input.disabled = page.signed;
  }
  id('approach').disabled = page.signed || keeping.open;
}

function field(name, shown) {
  id(name).parentElement.hidden = !shown;
}

function needleId(needle) {
  if (!needle) return '';
  const same = (each) =>
    each.gauge === needle.gauge && each.lengthMm === needle.lengthMm && each.echogenic === (needle.echogenic ?? false);
  return page.needles.find(same)?.id ?? '';
}

const number = (text) => (text.trim() === '' || !Number.isFinite(Number(text)) ? null : Number(text));
const stated = (object, name, value) => {
  if (value === null || value === '') delete object[name];
  else object[name] = value;
};

/** What each field changes. */
const FIELDS = {
  approach: (s, value) => {
    s.approach = value;
    s.intent = null;
    s.observation = { ...s.observation, shaft: [], tip: null, tipIsTip: false };
  },
  'needle-side': (s, value) => stated(s.probe, 'needleSide', value),
  'target-kind': (s, value) => (s.targetKind = value),
  'band-low': (s, value) => (s.band.low = number(value)),
  'band-high': (s, value) => (s.band.high = number(value)),
  face: (s, value) => stated(s.probe, 'footprintMm', number(value)),
  entry: (s, value) => (s.intent = number(value) === null ? null : { entryDistanceMm: number(value) }),
  'chosen-puncture': (s, value) => (s.intent = number(value) === null ? null : { punctureDistanceMm: number(value) }),
  needle: (s, value) => {
    const found = page.needles.find((each) => each.id === value);
    s.needle = found ? { gauge: found.gauge, lengthMm: found.lengthMm, echogenic: found.echogenic } : null;
  },
  laterality: (s, value) => stated(s.context, 'laterality', value),
  block: (s, value) => stated(s.context, 'block', value),
  operator: (s, value) => {
    const name = value.trim();
    stated(s.context, 'operator', name ? { name, role: s.context.operator?.role ?? 'performer' } : null);
  },
  phase: (s, value) => (s.observation.phase = value),
  puncture: (s, value) => (s.observation.punctureDistanceMm = number(value)),
  'tip-is-tip': (s, value, input) => (s.observation.tipIsTip = input.checked),
};

function proposedIntent(plan) {
  const [name, given] =
    model.state.approach === 'inPlane'
      ? ['entryDistanceMm', plan.entryDistanceMm]
      : ['punctureDistanceMm', plan.punctureDistanceMm];
  return given?.value == null ? null : { [name]: Math.round(given.value * 10) / 10 };
}

// ---- keeping

function current() {
  return { document: (caseId) => model.document(caseId), parts: () => model.parts() };
}

function keepSoon() {
  if (!keeping.open || page.signed) return;
  clearTimeout(page.timer);
  page.timer = setTimeout(() => guarded(keepNow), KEEP_AFTER_MS);
}

async function keepNow() {
  clearTimeout(page.timer);
  if (!model.state.marks.target) {
    say('keep-problem', 'Mark the target first.');
    return false;
  }
  return keeping.keep(() => current());
}

function kept(standing) {
  id('kept').textContent = standing.kept ? `Kept at ${clock()}.` : standing.text;
  say('keep-problem', standing.problem ?? '');
  id('reload').hidden = !standing.conflict;
  id('draft').disabled = !keeping.open || page.signed;
  id('approach').disabled = keeping.open;
  if (keeping.open && !location.search.includes('case=')) {
    history.replaceState(null, '', `mark?case=${encodeURIComponent(keeping.caseId)}`);
  }
}

async function keepObservation() {
  id('keep-observation').disabled = true;
  const taken = new Set(model.kept.map((each) => each.id));
  let count = 1;
  while (taken.has(`obs-${count}`)) count++;
  const observation = model.observation(`obs-${count}`);
  if (!(await keepNow())) {
    id('keep-observation').disabled = false;
    return;
  }
  await keeping.append('observations', observation);
  model.kept.push(observation);
  page.keptOne = true;
  signing.changed();
  tellKept();
  compared();
}

function tellKept() {
  const count = model.kept.length;
  const said = count === 1 ? 'One observation is kept' : `${count} observations are kept`;
  id('observations-kept').textContent = count ? `${said}: ${model.kept.map((each) => each.id).join(', ')}.` : '';
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

async function choose() {
  id('choose').hidden = false;
  id('work').hidden = true;
  id('choose-back').hidden = !page.shown;
  const found = await request('dicomweb/instances?Modality=US&limit=200&includefield=00280008&includefield=00204000');
  const frames = (Array.isArray(found.body) ? found.body : []).filter((each) => fits(each)).reverse();
  id('no-frames').textContent = frames.length ? '' : 'None yet.';
  id('frames').replaceChildren(...frames.map(thumbnail));
}

/** Frames made by this service show what it drew; an observation is made on a frame of the same study. */
function fits(attributes) {
  const value = (tag) => attributes[tag]?.Value?.[0];
  return (
    value('00080016') !== '1.2.840.10008.5.1.4.1.1.7' && (!page.observing || value('0020000D') === page.study)
  );
}

function thumbnail(attributes) {
  const value = (tag) => attributes[tag]?.Value?.[0];
  const uid = value('00080018');
  const study = `../dicomweb/studies/${value('0020000D')}/series/${value('0020000E')}/instances/${uid}/thumbnail`;
  const count = value('00280008') ?? 1;
  const text = [
    value('00100020') ?? 'no patient ID',
    value('00081030') ?? '',
    `image ${value('00200013') ?? ''}`,
    count > 1 ? `${count} frames` : '',
  ];
  return html(
    'li',
    {},
    html('button', { type: 'button', 'data-frame': uid }, html('img', { src: study, alt: '', loading: 'lazy' }), html('span', {}, text.filter(Boolean).join(', '))),
  );
}

async function chosen(uid) {
  if (!page.observing) return begin(uid);
  page.observing = false;
  model.change('frame', (state) => (state.observation.frame = { sopInstanceUid: uid, frameNumber: 1 }));
  return present(await explain(uid, 1), uid, 1);
}

async function send(file) {
  id('sending').textContent = `Sending ${file.name} ...`;
  const { body } = await request('v1/frames', { method: 'POST', type: 'application/dicom', body: file, limit: 600_000 });
  id('sending').textContent = '';
  await chosen(body.sopInstanceUid);
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
  if (!sameFrame(frame, page.shown)) await turnTo(frame.sopInstanceUid, frame.frameNumber);
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

function say(name, text) {
  id(name).textContent = text;
  id(name).hidden = text === '';
}

function on(name, event, work) {
  id(name).addEventListener(event, (what) => guarded(() => work(what)));
}

on('file', 'change', (event) => (event.target.files.length ? send(event.target.files[0]) : null));
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
on('cine-back', 'click', () => scrub(page.shown.frameNumber - 1));
on('cine-next', 'click', () => scrub(page.shown.frameNumber + 1));
on('cine-number', 'input', (event) => scrub(Number(event.target.value)));
on('cine-marks', 'click', () => turnTo(marked().sopInstanceUid, marked().frameNumber));
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
onConnection((answers) => {
  if (answers) ask();
});

function undo() {
  if (page.signed || !model.undo()) return;
  changed();
}

async function load(caseId) {
  const { held } = await keeping.load(caseId);
  model.take(held);
  keeping.settled(model.parts());
  const { sopInstanceUid: uid, frameNumber } = model.state.frame;
  if (!uid) throw new Problem(0, { detail: 'This case names no frame that is held.', remedy: 'Mark a frame that is.' });
  await present(await explain(uid, frameNumber), uid, frameNumber);
  kept({ kept: true });
  tellKept();
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
