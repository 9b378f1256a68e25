// SPDX-License-Identifier: Apache-2.0
// What the service answered, in words and tables. No number is computed here.
import { sideView } from './drawing.js';
import { id, model, page } from './desk.js';
import { html } from './svg.js';
import { judged, limitWords, listed, quantity } from './words.js';

export function showAnswer() {
  const plan = page.answer?.plan;
  if (page.refusal) id('plan-standing').textContent = refused(page.refusal.body);
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
}

/** What is only missing is asked for; what is wrong is said too. */
const refused = ({ type, detail, remedy }) =>
  type === 'urn:plumbline:problem:missing-field' ? remedy : `${detail} ${remedy}`;

function standing(plan) {
  const source = plan.source === 'proposed' ? 'Proposed, not chosen: a proposal cannot be signed.' : 'Chosen.';
  if (plan.binding.length) return `${source} Does not fit: ${plan.binding.map(limitWords).join(', ')}.`;
  const fits = plan.feasible ? ' Fits the limits you set, for what you marked.' : '';
  const unchecked = plan.unchecked.length ? ` Not checked: ${plan.unchecked.map(limitWords).join(', ')}.` : '';
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
  ['angle to skin, °', 'angleToSkinDeg', 'angleToSkinDeg'],
  ['entry from midpoint, mm', 'entryDistanceMm', 'entryDistanceMm'],
  ['puncture from beam, mm', 'punctureDistanceMm', 'punctureDistanceMm'],
  ['depth of target and tip, mm', 'targetDepthMm', 'tipDepthMm'],
  ['depth of target and crossing, mm', 'targetDepthMm', 'crossingDepthMm'],
  ['path, mm', 'pathMm', 'pathMm'],
  ['tip along the plan, mm', '', 'alongPlanMm'],
  ['tip across the plan, mm', '', 'acrossPlanMm'],
];

const numbers = (plan) =>
  (model.state.approach === 'inPlane' ? IN_PLANE : OUT_OF_PLANE)
    .filter(([, field]) => plan[field] && plan[field].reason !== 'notMarked')
    .map(([name, field, unit]) => ({ field, cells: [name, quantity(plan[field], unit)] }));

const clearances = (plan) =>
  [
    ...(plan.hazardClearances ?? []).map((each) => [`${each.name} (hazard)`, each.clearanceMm]),
    ...(plan.nerveClearances ?? []).map((each) => [`${each.name} (nerve)`, each.pathMm]),
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

const kind = (text) => (text.includes('±') ? 'number' : null);

function cell(value) {
  if (typeof value === 'string') return html('td', { class: kind(value) }, value);
  return html('td', {}, html('span', { class: kind(value.text) }, value.text), html('small', {}, value.note));
}

export function compared() {
  const observing = page.step === 'observation';
  id('comparison').hidden = !observing;
  if (!observing) return;
  const observed = page.answer?.observations?.at(-1);
  const difference = page.answer?.deviations?.at(-1);
  const plan = page.answer?.plan;
  rows(
    'comparison-numbers',
    observed
      ? COMPARED.filter(([, , field]) => difference?.[field] && difference[field].reason !== 'notInThisPlane').map(([name, planned, field]) => ({
          field,
          cells: [
            name,
            planned ? quantity(plan[planned]) : '',
            quantity(observed[field]),
            { text: quantity(difference[field], '', true), note: judged(difference[field]) },
          ],
        }))
      : [],
  );
  const notes = observed
    ? [observed.rotationText, observed.assumptions.length ? `Taken for granted: ${listed(observed.assumptions)}.` : '']
    : [model.state.approach === 'inPlane' ? 'Mark two points of the shaft, or the tip.' : 'Mark the bright dot.'];
  id('observation-notes').textContent = notes.filter(Boolean).join(' ');
  id('keep-observation').disabled = !observed || page.appending || page.keptOne || page.signed;
  id('next-observation').disabled = !page.keptOne || page.signed;
}

/** The proposed path as a person's choice, to a tenth of a millimetre; null where there is none. */
export function proposedIntent(plan) {
  const [name, given] =
    model.state.approach === 'inPlane'
      ? ['entryDistanceMm', plan.entryDistanceMm]
      : ['punctureDistanceMm', plan.punctureDistanceMm];
  return given?.value == null ? null : { [name]: Math.round(given.value * 10) / 10 };
}
