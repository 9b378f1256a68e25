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

/** Shows the patient of a frame. @returns what the archive tells of the frame, in DICOM JSON */
export async function showPatient(sopInstanceUid) {
  const found = await get(`dicomweb/instances?SOPInstanceUID=${encodeURIComponent(sopInstanceUid)}`);
  const attributes = found[0] ?? {};
  say('patient-name', personWords(value(attributes, '00100010')?.Alphabetic));
  say('patient-id', value(attributes, '00100020') ?? 'not stated');
  say('patient-born', day(value(attributes, '00100030')));
  return attributes;
}

/** Shows the patient's side: right, left, midline, or that nobody stated it. */
export function showSide(laterality) {
  say('patient-side', laterality ? laterality.toUpperCase() : 'not stated');
}

function say(id, text) {
  document.getElementById(id).textContent = text;
}
