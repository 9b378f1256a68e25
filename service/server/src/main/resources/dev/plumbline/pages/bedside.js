// SPDX-License-Identifier: Apache-2.0
// What the log of a case says so far: entries, next step, clocks, volumes and doses. Every volume and dose is one that the
// service answered; only the running clocks are counted here.
import { html } from './svg.js';
import { signWords, stamp, words } from './entries.js';
import { personWords } from './patient.js';
import { spelledOut } from './words.js';

const id = (name) => document.getElementById(name);
const UNHEARD_MS = 2_000; // so long an earlier suggestion may stand while a newer one is asked for; a design choice
const STEERING = ['sightStep', 'stop', 'pass', 'puncture', 'redirection', 'planChanged', 'aspiration', 'correction'];

/** What the page knows: what the service told last, and what has not got there. */
export const known = { held: null, log: null, sight: null, session: null, patient: null, closed: null, outbox: null };

const notThere = (part) => {
  const there = new Set((known.held?.[part] ?? []).map((entry) => entry.id));
  return [...known.outbox.arrived, ...known.outbox.waiting]
    .filter((entry) => entry.part === part && !there.has(entry.body.id))
    .map((entry) => entry.body);
};

/** Everything entered, as the service has it and then what is on its way. */
export const everything = (part) => [...(known.held?.[part] ?? []), ...notThere(part)];

/** What stands by the service's account, and what is on its way and not taken back on its way. */
export function standing() {
  const fresh = notThere('events');
  const struck = new Set(fresh.map((entry) => entry.corrects).filter(Boolean));
  return [...(known.log?.standing ?? []), ...fresh.filter((entry) => entry.kind !== 'correction')]
    .filter((entry) => !struck.has(entry.id))
    .sort((one, other) => Date.parse(one.happenedAt) - Date.parse(other.happenedAt));
}

export const agentNames = () =>
  new Map(everything('agents').flatMap((agent) => {
    const name = `${spelledOut(agent.drug)} ${strength(agent.concentration)}`;
    return [[agent.id, name], ...(agent.mixture ? [[agent.mixture, `mixture ${agent.mixture}`]] : [])];
  }));

/** A concentration as the label prints it. */
export function strength({ percent, mgPerMl, microgramsPerMl, oneIn }) {
  if (percent !== undefined) return `${percent} %`;
  if (mgPerMl !== undefined) return `${mgPerMl} mg/mL`;
  return microgramsPerMl !== undefined ? `${microgramsPerMl} micrograms/mL` : `1 in ${oneIn}`;
}

const hour = (time) => time.slice(11, 19);

export function show() {
  const fresh = notThere('events');
  waiting();
  entries(fresh);
  card(fresh);
  doses(fresh);
  contradictions();
  tick();
}

function waiting() {
  const count = known.outbox.waiting.length;
  const noun = count === 1 ? '1 entry waits' : `${count} entries wait`;
  const where = known.outbox.lasting ? 'on this device' : 'on this page only: do not close it';
  const text = count === 0
    ? 'Every entry is kept by the service.'
    : `${noun} for the service, kept ${where}, sent in order when it answers.`;
  if (id('waiting').textContent !== text) id('waiting').textContent = text;
  id('waiting').classList.toggle('some', count > 0);
  const refused = known.outbox.refused;
  id('refused').hidden = refused.length === 0;
  id('refused-list').replaceChildren(...refused.map((entry) => {
    const name = entry.part === 'events' ? words(entry.body, agentNames()) : spelledOut(entry.part);
    const button = html('button', { type: 'button', class: 'big', 'data-let-go': entry.body.id }, 'I have read it');
    return html('li', {}, html('p', {}, `${name}: ${entry.refused}`), button);
  }));
}

function entries(fresh) {
  const stands = new Map(standing().map((entry) => [entry.id, entry]));
  const all = everything('events').filter((entry) => entry.kind !== 'correction');
  const by = new Map(everything('events').filter((entry) => entry.corrects).map((entry) => [entry.corrects, entry]));
  const onTheWay = new Set(fresh.map((entry) => entry.id));
  const names = agentNames();
  id('no-entries').hidden = all.length > 0;
  const focused = document.activeElement?.dataset?.takeBack ?? document.activeElement?.dataset?.putBack;
  id('entries').replaceChildren(
    ...all
      .sort((one, other) => Date.parse(one.happenedAt) - Date.parse(other.happenedAt))
      .reverse()
      .map((entry) => row(entry, { stands: stands.has(entry.id), by: by.get(entry.id), waits: onTheWay.has(entry.id), names })),
  );
  if (focused) document.querySelector(`[data-take-back="${focused}"], [data-put-back="${focused}"]`)?.focus();
  const last = lastStanding();
  id('undo').disabled = !last || Boolean(known.closed);
  id('undo').textContent = last ? `Undo: ${words(last, names)}, ${hour(last.happenedAt)}` : 'Undo';
}

/** The entry made last, of those that stand. */
export function lastStanding() {
  const stands = new Set(standing().map((entry) => entry.id));
  return everything('events').filter((entry) => stands.has(entry.id)).at(-1);
}

function row(entry, { stands, by, waits, names }) {
  const text = words(entry, names);
  const notes = [
    `by ${personWords(entry.enteredBy)}`,
    entry.enteredLater ? `entered later, at ${hour(entry.enteredAt)}` : '',
    waits ? 'waits for the service' : '',
    stands || !by ? '' : `${by.kind === 'correction' ? 'taken back' : 'replaced'} at ${hour(by.enteredAt)}`,
  ].filter(Boolean).join('; ');
  const what = stands ? html('span', { class: 'what' }, text) : html('s', { class: 'what' }, text);
  const button = stands
    ? html('button', { type: 'button', 'data-take-back': entry.id, 'aria-label': `Take back: ${text}` }, 'Take back')
    : html('button', { type: 'button', 'data-put-back': by?.id ?? '', 'aria-label': `Put back: ${text}` }, 'Put back');
  button.disabled = Boolean(known.closed);
  const children = [html('time', { datetime: entry.happenedAt }, hour(entry.happenedAt)), html('span', { class: 'said' }, what, html('small', {}, notes))];
  if (stands || by?.kind === 'correction') children.push(button);
  return html('li', { 'data-id': entry.id, 'data-stands': String(stands) }, ...children);
}

function card(fresh) {
  const approach = known.held?.approach; // where nobody stated it, neither ladder holds
  const seen = fresh.filter((entry) => entry.kind === 'sightStep').at(-1)?.state ?? known.sight?.asked.state;
  const stands = standing();
  const begun = stands.map((entry) => ['puncture', 'pass'].includes(entry.kind)).lastIndexOf(true);
  const logged = stands.slice(begun + 1).some((entry) => entry.kind === 'sightStep');
  for (const button of document.querySelectorAll('#states button')) {
    button.hidden = button.dataset[approach] !== 'true';
    button.setAttribute('aria-pressed', String(logged && button.dataset.state === seen));
  }
  const unheard = fresh.filter((entry) => STEERING.includes(entry.kind));
  const late = unheard.some((entry) => isSign(entry) || Date.now() - Date.parse(entry.enteredAt) > UNHEARD_MS);
  const told = known.sight?.kind === 'step' && !logged ? null : known.sight; // nothing was said that a step could follow from
  const advice = late ? notHeard(unheard) : told;
  const step = advice?.kind === 'step' && logged && unheard.length === 0;
  id('card').setAttribute('aria-busy', String(unheard.length > 0 && !late));
  id('card').dataset.kind = advice?.kind ?? '';
  set('card-action', advice ? advice.action : 'Say what is seen of the needle.');
  set('card-amount', advice ? amount(advice) : '');
  set('card-reason', advice?.reason ? `Because: ${advice.reason}` : '');
  const must = [...(advice?.needle === 'still' ? ['The needle is held still.'] : []), ...(advice?.mustNot ?? [])];
  if (id('card-must-not').dataset.text !== must.join('|')) {
    id('card-must-not').dataset.text = must.join('|');
    id('card-must-not').replaceChildren(...must.map((text) => html('li', {}, text)));
  }
  id('card-touch').hidden = !step || Boolean(known.closed);
  set('passes-left', advice?.passesLeft === undefined ? '' : `Passes left before it is handed over: ${advice.passesLeft}.`);
}

const isSign = (entry) => (entry.kind === 'stop' && entry.sign) || (entry.kind === 'aspiration' && entry.blood);

/** What holds while the service has not heard of the last entries: no suggestion, and a sign to stop stays one. */
function notHeard(fresh) {
  const last = fresh.filter(isSign).at(-1);
  const sign = last && (last.kind === 'stop' ? last.sign : 'blood');
  if (sign === 'blood' || sign === 'signOfToxicity') {
    return { kind: 'treat', action: 'Stop. Treat the patient by the local protocol.', reason: `${signWords(sign)} was entered.`, mustNot: [] };
  }
  return {
    kind: sign ? 'stop' : 'waiting',
    action: sign ? `Stop: ${signWords(sign).toLowerCase()}. Do not advance or inject.` : 'No suggestion: the service has not heard the last entry yet.',
    reason: '',
    mustNot: ['Do not advance or inject when you do not know where the tip is.'],
  };
}

const AMOUNTS = [
  ['rotationBoundDeg', (value) => `At most ${value.toFixed(1)}° of rotation lie between probe and needle.`],
  ['beamThicknessMm', (value) => `A movement of more than ${value} mm can pass over the needle.`],
  ['fluidMl', (value) => `${value} mL, counted.`],
];

const amount = (advice) =>
  AMOUNTS.filter(([field]) => advice[field] !== undefined).map(([field, text]) => text(advice[field])).join(' ');

function set(name, text) {
  if (id(name).textContent !== text) id(name).textContent = text;
  id(name).hidden = text === '';
}

// ---- volumes and doses

function doses(fresh) {
  const { log, session } = known;
  const uncounted = fresh.filter((entry) => ['aliquot', 'correction'].includes(entry.kind)).length + notThere('agents').length;
  set('not-counted', uncounted ? `${uncounted === 1 ? '1 entry that waits is' : `${uncounted} entries that wait are`} not in these figures.` : '');
  if (!log) return;
  const facts = [['Injected in this case', `${log.injectedMl} mL`]];
  const names = agentNames();
  for (const agent of log.agents ?? []) {
    const parts = Object.entries(agent.volumeMl ?? {}).map(([stage, ml]) => {
      const mass = agent.massMg?.[stage];
      return `${spelledOut(stage)} ${ml} mL${mass === undefined ? '' : ` (${mass} mg)`}`;
    });
    facts.push([names.get(agent.id) ?? agent.drug, parts.join(', ') || 'no volume stated']);
  }
  facts.push(['Passes, redirections', `${log.passes}, ${log.redirections}`]);
  id('volumes').replaceChildren(...facts.map(([name, text]) => html('div', {}, html('dt', {}, name), html('dd', {}, text))));
  budget((session ?? log).doseBudget, session);
}

function budget(budget, session) {
  const { given, drawnUp } = budget.stages;
  const drugs = [...new Set([...given.totals, ...drawnUp.totals].map((total) => `${total.drug}/${total.basis}`))];
  id('session-dose').hidden = drugs.length === 0;
  id('session-dose').tBodies[0].replaceChildren(...drugs.map((key) =>
    html('tr', { 'data-drug': key.split('/')[0] },
      html('th', { scope: 'row' }, drugWords(key)), html('td', {}, mass(given, key)), html('td', {}, mass(drawnUp, key)))));
  const share = (stage, words) => stage.totals.length
    ? [`Share of the limit, ${words}: ${stage.totalSharePercent.value === null ? spelledOut(stage.totalSharePercent.reason) : `${stage.totalSharePercent.value} %`}.`]
    : [];
  const lines = [
    session ? `Session ${session.session}: ${session.cases.length === 1 ? 'this case alone' : `${session.cases.length} cases`}.` : '',
    ...share(given, 'given'),
    ...share(drawnUp, 'drawn up'),
    drawnUp.reminder || given.exceeds ? 'More than the limit that the site approved.' : '',
    budget.formularyInForce ? '' : `No share of a limit is given: ${budget.noVerdictBecause}.`,
    ...(budget.givenDiffersFromLog ?? []).map((name) => `Given as stated differs from the log: ${name}.`),
    ...budget.cautions,
  ];
  const plain = lines.filter(Boolean);
  if (id('dose-words').dataset.text !== plain.join('|')) {
    id('dose-words').dataset.text = plain.join('|');
    id('dose-words').replaceChildren(...plain.map((text) => html('li', {}, text)));
  }
}

const drugWords = (key) => {
  const [drug, basis] = key.split('/');
  return basis === 'notStated' ? spelledOut(drug) : `${spelledOut(drug)}, as ${basis}`;
};

function mass(stage, key) {
  const total = stage.totals.find((each) => `${each.drug}/${each.basis}` === key);
  if (!total) return '-';
  const perKg = total.mgPerKg.value === null ? spelledOut(total.mgPerKg.reason) : `${total.mgPerKg.value.toFixed(2)} mg/kg`;
  return `${total.massMg} mg (${perKg})`;
}

function contradictions() {
  const byId = new Map(everything('events').map((entry) => [entry.id, entry]));
  const names = agentNames();
  const lines = (known.log?.contradictions ?? []).map(({ kind, event }) => {
    const entry = byId.get(event);
    return `${spelledOut(kind).replace(/^./, (letter) => letter.toUpperCase())}${entry ? ` (${words(entry, names)}, ${hour(entry.happenedAt)})` : ''}.`;
  });
  id('contradictions').replaceChildren(...lines.map((text) => html('li', { class: 'problem' }, text)));
}

// ---- clocks

export function tick() {
  const now = new Date();
  id('clock').textContent = hour(stamp(now));
  const stands = standing();
  const last = (kind) => stands.filter((entry) => entry.kind === kind).at(-1);
  since('since-stop-moment', last('stopMoment'), now);
  const puncture = last('puncture');
  const out = last('needleOut');
  const over = puncture && out && Date.parse(out.happenedAt) > Date.parse(puncture.happenedAt);
  since('since-puncture', over ? null : puncture, now, over ? 'needle out' : 'none yet');
  if (known.held) card(notThere('events'));
}

function since(name, entry, now, none = 'none yet') {
  const text = entry ? passed(now - Date.parse(entry.happenedAt)) : none;
  if (id(name).textContent !== text) id(name).textContent = text;
}

function passed(ms) {
  const seconds = Math.max(0, Math.floor(ms / 1000));
  const [h, m, s] = [Math.floor(seconds / 3600), Math.floor(seconds / 60) % 60, seconds % 60];
  const two = (number) => String(number).padStart(2, '0');
  return h ? `${h}:${two(m)}:${two(s)}` : `${m}:${two(s)}`;
}
