// SPDX-License-Identifier: Apache-2.0
// The list of marks, the tools, and the fields: what they show and what they change.
import { id, model, onMarked, page } from './desk.js';
import { marks } from './marks.js';
import { html } from './svg.js';

const HAZARDS = ['artery', 'vein', 'pleura', 'bowel', 'dura', 'kidney', 'bone', 'other'];
const TOOLS = {
  plan: [
    ['view', 'Move the view'],
    ['target', 'Target'],
    ['skin', 'Skin'],
    ['midpoint', 'Midpoint'],
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
  midpoint: 'Midpoint: the middle of the probe\'s face.',
  hazard: 'Hazard: its middle, then its edge. Only what is marked is checked.',
  nerve: 'Nerve: its middle, then its edge.',
  shaft: 'Shaft: two points along what is seen of the needle.',
  tip: 'Tip: the deepest end that is seen.',
  scale: 'Scale: two points of a known distance, such as two ticks of the depth ruler.',
};

export function list() {
  const all = marks().filter((each) => each.kind !== 'edge' && each.key !== 'entry');
  id('no-marks').hidden = all.length > 0;
  id('no-marks').textContent = onMarked() ? 'Nothing is marked yet.' : 'The marks lie on another frame.';
  const focused = document.activeElement?.closest?.('#marks [data-of]')?.dataset.of;
  if (focused && all.some((each) => each.key === focused) && document.activeElement.matches('input, select')) {
    return; // somebody types there
  }
  id('marks').replaceChildren(
    ...all.map((each) => {
      const place = `column ${each.point.column.toFixed(1)}, row ${each.point.row.toFixed(1)}`;
      const go = html('button', { type: 'button', 'data-go': each.key }, html('span', {}, each.label), html('small', {}, place));
      const away = html('button', { type: 'button', disabled: page.signed ? '' : null, 'data-remove': each.key, 'aria-label': `Remove ${each.label}` }, 'Remove');
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

export function tools() {
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

export function fields() {
  const { state } = model;
  const inPlane = state.approach !== 'outOfPlane';
  const set = (name, value) => {
    if (document.activeElement !== id(name)) id(name).value = value ?? '';
  };
  set('approach', state.approach);
  set('needle-side', state.probe.needleSide);
  set('target-kind', state.targetKind);
  set('band-low', state.band.low);
  set('band-high', state.band.high);
  set('face', state.probe.footprintMm);
  set('scale-mm', state.scale.distanceMm);
  field('scale-mm', page.scaleless);
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
  id('approach').disabled = page.signed || model.kept.length > 0;
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
export const FIELDS = {
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
  'scale-mm': (s, value) => (s.scale.distanceMm = number(value)),
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
    stated(s.context, 'operator', name ? { ...s.context.operator, name } : null);
  },
  phase: (s, value) => (s.observation.phase = value),
  puncture: (s, value) => (s.observation.punctureDistanceMm = number(value)),
  'tip-is-tip': (s, value, input) => (s.observation.tipIsTip = input.checked),
};
