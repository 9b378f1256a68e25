// SPDX-License-Identifier: Apache-2.0
// How pages speak with the service: its documented routes, relative to the page. What it refuses is a Problem with the
// words it gave; silence is NoAnswer, which says nothing about whether the request arrived.

const LIMIT_MS = 15_000; // a design choice; nobody waits longer without being told

/** What the service refused: status, detail, remedy, pointer and all else it said. */
export class Problem extends Error {
  constructor(status, body) {
    super([body.detail, body.remedy].filter(Boolean).join(' '));
    this.status = status;
    this.body = body;
  }
}

/** The service did not answer; the request may or may not have reached it. */
export class NoAnswer extends Error {
  constructor() {
    super('The service does not answer.');
  }
}

/**
 * One request.
 *
 * @param {string} path below the root, such as v1/plans
 * @param {{method?: string, body?: BodyInit, type?: string, headers?: object, signal?: AbortSignal, limit?: number}} how
 * @returns {Promise<{status: number, body: any, etag: string|null}>}
 * @throws {Problem|NoAnswer|DOMException} the last one where the caller gave up
 */
export async function request(path, how = {}) {
  const headers = { Accept: 'application/json, application/dicom+json;q=0.9', ...how.headers };
  if (how.type) headers['Content-Type'] = how.type;
  const late = AbortSignal.timeout(how.limit ?? LIMIT_MS);
  const signal = how.signal ? AbortSignal.any([how.signal, late]) : late;
  let answer;
  let body;
  try {
    answer = await fetch(`../${path}`, { method: how.method ?? 'GET', headers, body: how.body, signal });
    const text = await answer.text();
    body = text === '' ? {} : JSON.parse(text); // else something between answered in the service's place
  } catch (problem) {
    if (how.signal?.aborted) throw problem;
    tell(false);
    throw new NoAnswer();
  }
  tell(true);
  if (!answer.ok) throw new Problem(answer.status, body);
  return { status: answer.status, body, etag: answer.headers.get('ETag') };
}

/** Gets JSON. */
export async function get(path, how = {}) {
  return (await request(path, how)).body;
}

/** Posts JSON. */
export function post(path, body, how = {}) {
  return request(path, { ...how, method: 'POST', type: 'application/json', body: JSON.stringify(body) });
}

const listeners = new Set();
let answering = true;

/** Hears whether the service answers, whenever that changes. */
export function onConnection(listener) {
  listeners.add(listener);
}

function tell(answers) {
  if (answers === answering) return;
  answering = answers;
  const line = document.getElementById('connection');
  if (line) line.textContent = answers ? '' : 'The service does not answer. What you do stays on this page until it does.';
  listeners.forEach((listener) => listener(answers));
}
