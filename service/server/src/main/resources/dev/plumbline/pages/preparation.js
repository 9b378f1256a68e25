// SPDX-License-Identifier: Apache-2.0
// Set-up checks, agents, team, and entries that are rare: forms that make entries, and what was entered.
import { agentNames, everything, known, strength } from './bedside.js';
import { stamp } from './entries.js';
import { freshId } from './keeping.js';
import { personWords } from './patient.js';
import { html } from './svg.js';
import { spelledOut } from './words.js';

const id = (name) => document.getElementById(name);
const STAGES = ['planned', 'drawnUp', 'given', 'discarded'];
const RARE = {
  complication: ['complication', 'Which complication'],
  doppler: ['finding', 'What was found'],
  planChanged: ['reason', 'Why'],
  contextChanged: ['what', ''],
  handOver: ['to', 'To whom, as in Roe^Al'],
  nearMiss: ['text', 'What happened'],
};

const value = (name) => id(name).value.trim();
const number = (name) => (value(name) === '' ? null : Number(value(name)));

/** A form is not filled in: said beside it, nothing is entered. */
export class Unsaid extends Error {}

/** Wires the forms. @param {{add: (part: string, body: object) => void, by: () => string, log: (what: object) => void, on: Function}} page */
export function prepare(page) {
  page.on(id('checks'), 'click', (event) => {
    const button = event.target.closest('button');
    const item = button?.closest('[data-check]');
    if (item) checked(page, item, button);
  });
  page.on(id('agent'), 'submit', () => {
    page.add('agents', agent());
    id('agent').reset();
    show();
  });
  page.on(id('agent-of'), 'change', () => fill(value('agent-of')));
  page.on(id('member'), 'submit', () => {
    if (!value('member-name')) throw new Unsaid('Who? Give a name as in Doe^Jo.');
    const role = value('member-role');
    page.add('team', { id: freshId('t-'), name: value('member-name'), ...(role ? { role } : {}) });
    id('member').reset();
  });
  page.on(id('rare-kind'), 'change', rareFields);
  page.on(id('rare'), 'submit', () => {
    const kind = value('rare-kind');
    const [field, label] = RARE[kind];
    const text = kind === 'contextChanged' ? value('rare-what') : value('rare-text');
    if (!text && kind !== 'doppler') throw new Unsaid(`${label}? Say it in words.`);
    page.log({ kind, ...(text ? { [field]: text } : {}) });
    id('rare-text').value = '';
  });
  rareFields();
}

function rareFields() {
  const kind = value('rare-kind');
  id('rare-label').textContent = RARE[kind][1];
  id('rare-text-field').hidden = kind === 'contextChanged';
  id('rare-what').parentElement.hidden = kind !== 'contextChanged';
}

function checked(page, item, button) {
  const why = item.querySelector('.why');
  const because = button.dataset.because !== undefined;
  const answer = because ? 'notDone' : button.dataset.answer;
  if (answer === 'notDone' && !because) {
    why.hidden = false;
    why.querySelector('input').focus();
    return;
  }
  const reason = why.querySelector('input').value.trim();
  if (because && !reason) throw new Unsaid('Why was it not done? Say it in words.');
  const entry = { id: freshId('c-'), check: item.dataset.check, answer, by: page.by(), at: stamp(new Date()) };
  page.add('checks', because ? { ...entry, reason } : entry);
  why.hidden = true;
}

function agent() {
  const earlier = value('agent-of');
  if (!value('agent-drug')) throw new Unsaid('Which drug? Choose one.');
  if (!(number('agent-strength') > 0)) throw new Unsaid('Which concentration? Give it as the label prints it.');
  const before = everything('agents').find((entry) => entry.id === earlier) ?? {};
  const { corrects, ...rest } = before;
  const entry = { ...rest, id: freshId('a-'), drug: value('agent-drug') };
  entry.concentration = { [value('agent-unit')]: number('agent-strength') };
  for (const field of ['basis', 'route']) {
    if (value(`agent-${field}`)) entry[field] = value(`agent-${field}`);
    else delete entry[field];
  }
  const stated = STAGES.map((stage) => [stage, number(`agent-${stage}`)]).filter(([, ml]) => ml !== null);
  if (stated.length) entry.volumeMl = Object.fromEntries(stated);
  else delete entry.volumeMl;
  if (earlier) entry.corrects = earlier;
  return entry;
}

function fill(earlier) {
  const entry = everything('agents').find((each) => each.id === earlier);
  if (!entry) {
    id('agent').reset();
    return;
  }
  const [unit, given] = Object.entries(entry.concentration)[0];
  id('agent-drug').value = entry.drug;
  id('agent-strength').value = given;
  id('agent-unit').value = unit;
  id('agent-basis').value = entry.basis ?? '';
  id('agent-route').value = entry.route ?? '';
  for (const stage of STAGES) id(`agent-${stage}`).value = entry.volumeMl?.[stage] ?? '';
}

/** Agents that no later entry replaces. */
export function current() {
  const all = everything('agents');
  const replaced = new Set(all.map((entry) => entry.corrects).filter(Boolean));
  return all.filter((entry) => !replaced.has(entry.id));
}

/** Options of a choice, with what is chosen kept where it is still there. */
function options(name, fixed, list) {
  const chosen = id(name).value;
  const wanted = [fixed[0], ...list, ...fixed.slice(1)];
  if (id(name).dataset.of === JSON.stringify(wanted)) return;
  id(name).dataset.of = JSON.stringify(wanted);
  id(name).replaceChildren(...wanted.map(([given, text]) => html('option', { value: given }, text)));
  if (wanted.some(([given]) => given === chosen)) id(name).value = chosen;
}

/** Shows what was entered. */
export function show() {
  const names = agentNames();
  const agents = current().map((entry) => [entry.id, names.get(entry.id)]);
  const mixtures = [...new Set(current().map((entry) => entry.mixture).filter(Boolean))].map((name) => [name, `mixture ${name}`]);
  options('aliquot-agent', [['', 'choose'], ['other', 'another fluid']], [...agents, ...mixtures]);
  options('agent-of', [['', 'a new agent']], agents.map(([key, name]) => [key, `change ${name}`]));
  lines('agents', current().map((entry) => {
    const volumes = Object.entries(entry.volumeMl ?? {}).map(([stage, ml]) => `${spelledOut(stage)} ${ml} mL`);
    return [`${spelledOut(entry.drug)} ${strength(entry.concentration)}`, ...volumes].join(', ');
  }));
  lines('team', everything('team').map((entry) => `${personWords(entry.name)}${entry.role ? `, ${entry.role}` : ''}`));
  checks();
  missing();
}

function lines(name, texts) {
  id(name).replaceChildren(...texts.map((text) => html('li', {}, text)));
}

function checks() {
  for (const item of document.querySelectorAll('[data-check]')) {
    const last = everything('checks').filter((entry) => entry.check === item.dataset.check).at(-1);
    const said = last ? `${spelledOut(last.answer)}${last.reason ? `: ${last.reason}` : ''}, ${personWords(last.by)}` : 'not recorded';
    const line = item.querySelector('.answer');
    if (line.textContent !== said) line.textContent = said;
    for (const button of item.querySelectorAll('[data-answer]')) {
      button.setAttribute('aria-pressed', String(last?.answer === button.dataset.answer));
    }
  }
}

function missing() {
  const wanted = (known.log?.completeness.missing ?? []).filter((item) => item.requiredToSign);
  const signable = known.log?.completeness.signable;
  id('missing-words').textContent = signable
    ? 'Nothing that is required for the signature is missing.'
    : 'Required for the signature, or a reason why it is missing:';
  lines('missing', wanted.map((item) => item.text));
}
