// SPDX-License-Identifier: Apache-2.0
// The marks of each step: where they are, what a new place of one means, what placing or removing one does.
import { id, model, onMarked, page, say } from './desk.js';

const NEW_RADIUS_MM = 3; // of a hazard or nerve just placed; a place to begin from, not a finding

/** Every mark of this step as the stage moves it: where it is, and what a new place means. */
export function marks() {
  if (!onMarked()) return [];
  return page.step === 'plan' ? planMarks() : observationMarks();
}

function planMarks() {
  const { target, skin, hazards, nerves } = model.state.marks;
  const { midpoint } = model.state.probe;
  const list = [];
  if (target) list.push(mark('target', 'target', 'Target', target, (s, p) => (s.marks.target = p)));
  skin.forEach((point, i) => list.push(mark(`skin-${i}`, 'skin', `Skin ${i + 1}`, point, (s, p) => (s.marks.skin[i] = p))));
  if (midpoint) list.push(mark('midpoint', 'midpoint', 'Midpoint', midpoint, (s, p) => (s.probe.midpoint = p)));
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
    list.push({ ...mark(`${kind}-${i}-edge`, 'edge', `${shape.name}, edge`, edge, wider), of: kind });
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

/** What placing a mark of each kind does; gives the key of the mark. */
export const PLACING = {
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

export function remove(key) {
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
}

/** Whether a mark of this tool is still to be placed; what is there is moved by its own handle. */
export function isWanted(tool) {
  const { marks: plan, probe, observation } = model.state;
  const wanted = {
    target: !plan.target,
    midpoint: !probe.midpoint,
    tip: !observation.tip,
    skin: plan.skin.length < 2,
    shaft: observation.shaft.length < 2,
    hazard: true,
    nerve: true,
    scale: !model.state.scale.to,
  };
  return wanted[tool];
}
