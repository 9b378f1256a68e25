// SPDX-License-Identifier: Apache-2.0
// Frames: those held here to choose from, one sent from this device, one made ready to be shown.
import { id, page } from './desk.js';
import { get, Problem, request } from './service.js';
import { html } from './svg.js';

/** Offers the frames held here; for an observation those of the same study. */
export async function choose() {
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

/** The study that an object held here belongs to. */
export async function studyOf(uid) {
  const { body } = await request(`dicomweb/instances?SOPInstanceUID=${encodeURIComponent(uid)}`);
  return body[0]?.['0020000D']?.Value?.[0];
}

/** Sends a file. @returns {Promise<string>} its SOP Instance UID */
export async function send(file) {
  id('sending').textContent = `Sending ${file.name} ...`;
  const { body } = await request('v1/frames', { method: 'POST', type: 'application/dicom', body: file, limit: 600_000 });
  id('sending').textContent = '';
  return body.sopInstanceUid;
}

/** Loads a picture before it is shown. @returns its size */
export async function decoded(address) {
  const image = new Image();
  image.src = address;
  try {
    await image.decode();
  } catch {
    throw new Problem(0, { detail: 'The frame cannot be shown.', remedy: 'Try again when the service answers.' });
  }
  return { columns: image.naturalWidth, rows: image.naturalHeight };
}


/** What the service says of a frame: its scale, its probe. */
export async function explain(uid, number, scale = '') {
  return get(`v1/frames/${encodeURIComponent(uid)}/${number}${scale}`);
}

/** Where the scale comes from: the second line of what the service says of a frame. */
export function scaleWords(text) {
  id('scale').textContent = text.split('\n')[1] ?? '';
}
