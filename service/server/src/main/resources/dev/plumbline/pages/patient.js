// SPDX-License-Identifier: Apache-2.0
// Whose the page is: the patient of the frame, and the patient's side as the case says it, in words.
import { get } from './service.js';

const value = (attributes, tag) => attributes[tag]?.Value?.[0];

/** A person name without its separators, family name first (DICOM PS3.5 6.2.1). */
export function personWords(name) {
  const words = (name ?? '').split('^').map((part) => part.trim()).filter(Boolean).join(', ');
  return words || 'not stated';
}

function day(text) {
  return /^\d{8}$/.test(text ?? '') ? `${text.slice(0, 4)}-${text.slice(4, 6)}-${text.slice(6)}` : 'not stated';
}

let imageSide = null; // the side that the frame itself states

/** Shows the patient of a frame. @returns what the archive tells of the frame, in DICOM JSON */
export async function showPatient(sopInstanceUid) {
  const uid = encodeURIComponent(sopInstanceUid);
  const found = await get(`dicomweb/instances?SOPInstanceUID=${uid}&includefield=00200060&includefield=00200062`);
  const attributes = found[0] ?? {};
  say('patient-name', personWords(value(attributes, '00100010')?.Alphabetic));
  say('patient-id', value(attributes, '00100020') ?? 'not stated');
  say('patient-born', day(value(attributes, '00100030')));
  imageSide = { R: 'right', L: 'left' }[value(attributes, '00200062') ?? value(attributes, '00200060')] ?? null;
  return attributes;
}

/** Shows the patient's side: right, left, midline, or that nobody stated it; and where the image says otherwise. */
export function showSide(laterality) {
  const differs = laterality && imageSide && laterality !== imageSide;
  const stated = laterality ? laterality.toUpperCase() : 'not stated';
  say('patient-side', differs ? `${stated}, but the image says ${imageSide.toUpperCase()}` : stated);
  document.getElementById('patient-side').classList.toggle('problem', Boolean(differs));
}

function say(id, text) {
  document.getElementById(id).textContent = text;
}
