// SPDX-License-Identifier: Apache-2.0
// Keeps a case in the service: opened once, then part by part. What got no answer is sent again exactly as it was, so that
// nothing is doubled; where somebody else changed the same part meanwhile, a person decides.
import { NoAnswer, post, Problem, request } from './service.js';

const AGAIN_MS = 2_000;
const same = (one, other) => JSON.stringify(one ?? null) === JSON.stringify(other ?? null);

/** An identifier that no other page makes. Not crypto.randomUUID: that wants a secure context, and a ward may have none. */
export function freshId(prefix) {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return prefix + Array.from(bytes, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

export class Keeping {
  /** @param {(standing: {text: string, problem?: string, conflict?: boolean}) => void} told */
  constructor(told) {
    this.told = told;
    this.caseId = null;
    this.etag = null;
    this.held = null; // the case as the service last gave it
    this.sent = null; // each part as this page last sent it
    this.standing = false; // whether what is on the page is what the service holds
    this.unsure = []; // requests that got no answer, oldest first
    this.work = Promise.resolve();
    this.retry = 0;
  }

  get open() {
    return this.held !== null;
  }

  /** A case that the service holds already. */
  async load(caseId) {
    await this.fetched(caseId);
    this.caseId = caseId;
    return this.held;
  }

  /** What the page says of the case that was loaded is what stands. */
  settled(parts) {
    this.sent = structuredClone(parts);
    this.standing = true;
  }

  async fetched(caseId) {
    const answer = await request(`v1/cases/${encodeURIComponent(caseId)}`);
    this.held = answer.body;
    this.etag = answer.etag;
    return answer;
  }

  /**
   * Keeps what stands now; work is done one after the other.
   *
   * @param {() => {document: (caseId: string) => object, parts: () => object}} current asked when its turn has come
   * @returns {Promise<boolean>} whether the service holds it
   */
  keep(current) {
    clearTimeout(this.retry);
    this.work = this.work.then(() => this.run(current));
    return this.work;
  }

  async run(current) {
    this.told({ text: 'Keeping ...' });
    try {
      while (this.unsure.length) await this.again(this.unsure[0]);
      if (!this.open) await this.opened(current);
      await this.changed(current);
      this.standing = true;
      this.told({ text: 'Kept', kept: true });
      return true;
    } catch (problem) {
      return this.failed(problem, current);
    }
  }

  /** What got no answer, exactly as it was: if it had arrived, nothing comes of it. */
  async again(question) {
    try {
      await this.once(question);
    } catch (problem) {
      if (!(problem instanceof Problem) || problem.status !== 412) throw problem;
      await this.unlessOthersChanged(question.part, problem);
    }
  }

  /** The case has gone on; a quarrel only where it has in the same part. */
  async unlessOthersChanged(part, problem) {
    const before = this.held[part];
    await this.fetched(this.caseId);
    if (!same(before, this.held[part])) {
      problem.conflict = true;
      throw problem;
    }
  }

  failed(problem, current) {
    if (problem instanceof NoAnswer) {
      this.told({ text: 'Not kept: the service does not answer. It is sent again until it does.' });
      this.retry = setTimeout(() => this.keep(current), AGAIN_MS);
      return false;
    }
    if (problem instanceof Problem) {
      this.unsure = [];
      const conflict = problem.conflict === true;
      const text = conflict ? 'Somebody else changed the same part of this case meanwhile.' : problem.message;
      this.told({ text: 'Not kept.', problem: text, conflict });
      return false;
    }
    throw problem;
  }

  async opened(current) {
    this.caseId ??= freshId('page-');
    const parts = structuredClone(current().parts());
    const arrived = async () => {
      this.sent = parts;
      await this.fetched(this.caseId);
    };
    await this.once({ path: 'v1/cases', body: current().document(this.caseId), arrived });
  }

  async changed(current) {
    const parts = structuredClone(current().parts());
    let any = false;
    if (!same(parts.approach, this.sent?.approach) && this.sent?.intent) {
      await this.set('intent', null); // a path of the one approach is none of the other
    }
    for (const [name, part] of Object.entries(parts)) {
      if (!same(part, this.sent?.[name])) {
        await this.set(name, part);
        any = true;
      }
    }
    if (any) await this.fetched(this.caseId);
  }

  async set(name, part) {
    try {
      await this.part(name, part);
    } catch (problem) {
      if (!(problem instanceof Problem) || problem.status !== 412) throw problem;
      await this.unlessOthersChanged(name, problem);
      await this.part(name, part);
    }
  }

  part(name, part) {
    const arrived = (answer) => {
      this.etag = answer.etag ?? this.etag;
      this.sent[name] = part;
    };
    return this.once({ path: this.place(name), body: part, part: name, headers: { 'If-Match': this.etag }, arrived });
  }

  /**
   * Appends an item that carries its own id, as soon as the service answers.
   *
   * @param {() => void} appended once it is held
   */
  append(name, item, current, appended) {
    const arrived = async () => {
      await this.fetched(this.caseId);
      appended();
    };
    this.unsure.push({ path: this.place(name), body: item, arrived });
    return this.keep(current);
  }

  place(name) {
    return `v1/cases/${encodeURIComponent(this.caseId)}/${name}`;
  }

  /** One request; as long as it has no answer it is remembered, to be sent again before anything else. */
  async once(question) {
    if (!this.unsure.includes(question)) this.unsure.push(question);
    let answer;
    try {
      answer = await post(question.path, question.body, { headers: question.headers ?? {} });
    } catch (problem) {
      if (problem instanceof Problem) this.answered(question);
      throw problem;
    }
    this.answered(question);
    await question.arrived?.(answer);
    return answer;
  }

  answered(question) {
    this.unsure = this.unsure.filter((other) => other !== question);
  }
}
