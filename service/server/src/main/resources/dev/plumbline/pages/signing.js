// SPDX-License-Identifier: Apache-2.0
// From a kept case to a signed record: a draft to read, then a signature; what is missing gets a reason or is mended.
import { freshId } from './keeping.js';
import { NoAnswer, post, Problem } from './service.js';
import { html } from './svg.js';

/** Order, case and image name different sides: no reason excuses that, somebody says what holds. */
const SIDES = 'sideAnswered';

const LIMIT_MS = 120_000; // pictures, report and page of a record are made before the answer

const id = (name) => document.getElementById(name);

export class Signing {
  /**
   * @param {{keep: () => Promise<boolean>, caseId: () => string, answerSide: (text: string) => void,
   *     signed: (record: object) => void}} given
   */
  constructor(given) {
    this.given = given;
    this.draft = null;
    this.key = null; // of the request that is under way, the same until it is answered
    id('draft').addEventListener('click', () => this.guarded(() => this.drafting()));
    id('signing').addEventListener('submit', (event) => {
      event.preventDefault();
      this.guarded(() => this.signing());
    });
  }

  /** The case has gone on: a draft that was made says less than the case. */
  changed() {
    if (!this.draft) return;
    this.draft = null;
    id('signing').hidden = true;
    id('read').hidden = true;
    id('record-standing').textContent = 'The case has changed since it was drafted: draft the record again.';
  }

  async drafting() {
    id('record-standing').textContent = 'Drafting ...';
    this.draft = null;
    if (!(await this.given.keep())) {
      id('record-standing').textContent = 'The case is not kept yet, so nothing was drafted.';
      return;
    }
    const { body } = await this.once('v1/records', { caseId: this.given.caseId() });
    this.draft = body.recordUid;
    id('record-standing').textContent = 'Drafted: kept here, not sent. Read it, then sign.';
    id('read').href = `record?uid=${encodeURIComponent(body.recordUid)}`;
    id('read').hidden = false;
    id('signing').hidden = false;
  }

  async signing() {
    const signature = { name: id('signer').value.trim() };
    for (const [field, name] of [['role', 'signer-role'], ['organization', 'signer-organization']]) {
      if (id(name).value.trim()) signature[field] = id(name).value.trim();
    }
    const reasons = {};
    let sides = '';
    for (const input of document.querySelectorAll('#missing input')) {
      if (input.dataset.item === SIDES) sides = input.value.trim();
      else if (input.value.trim()) reasons[input.dataset.item] = input.value.trim();
    }
    if (Object.keys(reasons).length) signature.incompleteBecause = reasons;
    id('sign').disabled = true;
    try {
      if (sides) {
        this.given.answerSide(sides);
        await this.drafting(); // what is signed has to say it
        if (!this.draft) return;
      }
      const { body } = await this.once(`v1/records/${this.draft}/sign`, { signature });
      this.done(body);
    } finally {
      id('sign').disabled = false;
    }
  }

  done(record) {
    id('signing').hidden = true;
    id('read').hidden = true;
    id('record-standing').textContent = 'Signed and in the archive.';
    const address = `../v1/records/${record.recordUid}`;
    const links = [
      ['The record', `record?uid=${encodeURIComponent(record.recordUid)}`],
      ['as PDF', `${address}?accept=application/pdf`],
      ['as DICOM', `${address}?accept=application/dicom`],
      ['as JSON', `${address}?accept=application/json`],
    ];
    id('record-links').replaceChildren(
      ...links.map(([text, href]) => html('li', {}, html('a', { href, target: '_blank', 'data-record': record.recordUid }, text))),
    );
    id('record-links').hidden = false;
    this.given.signed(record);
  }

  /** The same key as long as the same request has no answer, so that it is done once. */
  async once(path, body) {
    const asked = JSON.stringify([path, body]);
    if (this.asked !== asked) {
      this.asked = asked;
      this.key = freshId('page-');
    }
    const answer = await post(path, body, { headers: { 'Idempotency-Key': this.key }, limit: LIMIT_MS });
    this.asked = null;
    return answer;
  }

  async guarded(work) {
    this.say('');
    try {
      await work();
    } catch (problem) {
      id('record-standing').textContent = this.draft ? 'Drafted, not signed.' : 'Not drafted.';
      if (problem instanceof NoAnswer) {
        this.say(`${problem.message} Try again: nothing is done twice.`);
      } else if (problem instanceof Problem) {
        this.asked = null;
        const missing = problem.body.missing ?? [];
        const texts = missing.map((item) => item.text).join('; ');
        this.say(missing.length ? `Not signed. ${texts}. Say it, or give a reason.` : problem.message);
        this.missing(missing);
      } else throw problem;
    }
  }

  /** A reason for each item that is missing and is to be signed without. */
  missing(items) {
    id('missing').replaceChildren(
      ...items.map((item, i) => {
        const input = html('input', { type: 'text', id: `missing-${i}`, 'data-item': item.item, maxlength: '1024' });
        const asked = item.item === SIDES ? 'what holds, and who says so' : 'why it is missing';
        return html('div', {}, html('label', { for: `missing-${i}` }, `${item.text}: ${asked}`), input);
      }),
    );
  }

  say(text) {
    id('record-problem').textContent = text;
    id('record-problem').hidden = text === '';
  }
}
