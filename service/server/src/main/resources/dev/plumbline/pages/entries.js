// SPDX-License-Identifier: Apache-2.0
// Entries of the log: made with their id and times in the browser, and said in words. The words of code words are those of
// the page's own buttons.
import { freshId } from './keeping.js';
import { personWords } from './patient.js';
import { spelledOut } from './words.js';

const two = (number) => String(number).padStart(2, '0');

/** A moment with the offset of this device, to the second. */
export function stamp(date) {
  const offset = -date.getTimezoneOffset();
  const sign = offset < 0 ? '-' : '+';
  const zone = `${sign}${two(Math.floor(Math.abs(offset) / 60))}:${two(Math.abs(offset) % 60)}`;
  return `${local(date)}${zone}`;
}

/** The same without the offset, as a field for day and time wants it. */
export function local(date) {
  const day = `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
  return `${day}T${two(date.getHours())}:${two(date.getMinutes())}:${two(date.getSeconds())}`;
}

/**
 * An event of the log.
 *
 * @param {object} what kind and fields
 * @param {{by: string, later: Date|null}} entered later: when it happened, where that is not now
 */
export function event(what, { by, later }) {
  const now = new Date();
  const entry = { id: freshId('e-'), ...what, happenedAt: stamp(later ?? now), enteredAt: stamp(now), enteredBy: by };
  if (later) entry.enteredLater = true;
  return entry;
}

const said = (selector, word) => document.querySelector(selector)?.textContent.trim() ?? spelledOut(word);
export const stateWords = (state) => said(`[data-state="${state}"]`, state);
export const signWords = (sign) => said(`[data-sign="${sign}"]`, sign);
const blockWords = (block) => said(`#stop-block option[value="${CSS.escape(block)}"]`, block);

/** What an event says, in words. @param {Map<string, string>} agents names by id */
export function words(entry, agents) {
  switch (entry.kind) {
    case 'stopMoment':
      return `Stop moment: ${blockWords(entry.block)}, ${entry.side}; ${entry.names.map(personWords).join(' and ')}; mark ${
        entry.markSeen ? 'seen' : 'not seen'}, consent ${entry.consentSeen ? 'seen' : 'not seen'}${site(entry)}`;
    case 'puncture':
      return `Puncture${site(entry)}`;
    case 'pass':
      return 'New pass';
    case 'sightStep':
      return `Seen: ${stateWords(entry.state).toLowerCase()}${entry.step ? `, after the step "${spelledOut(entry.step)}"` : ''}`;
    case 'aspiration':
      return entry.blood ? 'Aspiration: blood' : 'Aspiration: no blood';
    case 'aliquot':
      return aliquot(entry, agents);
    case 'stop':
      return `Stop${entry.sign ? `: ${signWords(entry.sign).toLowerCase()}` : ''}${entry.reason ? `: ${entry.reason}` : ''}`;
    case 'complicationsLookedFor':
      return `Looked for complications: none noticed until then${entry.by ? ` by ${personWords(entry.by)}` : ''}`;
    case 'complication':
      return `Complication: ${spelledOut(entry.complication)}${entry.text ? `, ${entry.text}` : ''}`;
    case 'contextChanged':
      return `Changed since the stop moment: ${entry.what}`;
    case 'handOver':
      return `Handed over to ${personWords(entry.to)}`;
    case 'nearMiss':
      return `What nearly happened: ${entry.text}`;
    case 'planChanged':
      return `Plan changed: ${entry.reason}`;
    case 'doppler':
      return `Colour Doppler${entry.finding ? `: ${entry.finding}` : ''}`;
    case 'correction':
      return 'Taken back';
    default:
      return sentence(spelledOut(entry.kind));
  }
}

const sentence = (text) => text.charAt(0).toUpperCase() + text.slice(1);
const site = (entry) => ((entry.punctureSite ?? 1) > 1 ? `, site ${entry.punctureSite}` : '');

function aliquot(entry, agents) {
  const what = entry.fluid ?? agents.get(entry.agent) ?? entry.agent;
  const felt = typeof entry.resistance === 'object'
    ? `${entry.resistance.value} ${entry.resistance.unit} (${entry.resistance.device})`
    : entry.resistance && spelledOut(entry.resistance);
  const parts = [
    `${entry.volumeMl} mL ${what}`,
    entry.hydrolocation ? 'hydrolocation' : '',
    entry.spread ? `spread ${spelledOut(entry.spread)}` : '',
    felt ? `resistance ${felt}` : '',
    entry.pain ? `pain ${spelledOut(entry.pain)}` : '',
  ];
  return parts.filter(Boolean).join(', ');
}
