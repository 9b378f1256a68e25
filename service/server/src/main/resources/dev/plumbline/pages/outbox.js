// SPDX-License-Identifier: Apache-2.0
// Entries on their way to the service. Each is put by in this browser before it is sent, under an id of its own, and goes
// away only when the service has it or a person lets it go. They are sent one after the other in the order they were made;
// what got no answer is sent again as it was, which changes nothing if it had arrived.
import { post, Problem } from './service.js';

const AGAIN_MS = 2_000; // a design choice
const SERVER_FAULT = 500; // from here on the entry is not to blame: it is sent again
const TOO_EARLY = [408, 429];

/** What the browser keeps beyond a reload; where it keeps nothing, as long as the page is open. */
class Shelf {
  constructor(prefix) {
    this.prefix = prefix;
    this.lasting = true;
    this.memory = new Map();
  }

  put(key, value) {
    const text = JSON.stringify(value);
    this.memory.set(key, text);
    try {
      localStorage.setItem(this.prefix + key, text);
    } catch {
      this.lasting = false; // full, or switched off: told to the person, who keeps the page open
    }
  }

  take(key) {
    this.memory.delete(key);
    try {
      localStorage.removeItem(this.prefix + key);
    } catch {
      this.lasting = false;
    }
  }

  /** Keys with what lies under them, in the order in which they were made. */
  all() {
    const found = new Map(this.lasting ? [] : this.memory);
    try {
      for (let i = 0; i < localStorage.length; i++) {
        const key = localStorage.key(i);
        if (key.startsWith(this.prefix)) found.set(key.slice(this.prefix.length), localStorage.getItem(key));
      }
    } catch {
      this.lasting = false;
      return [...this.memory].sort(([one], [other]) => (one < other ? -1 : 1)).map(([key, text]) => [key, JSON.parse(text)]);
    }
    return [...found].sort(([one], [other]) => (one < other ? -1 : 1)).map(([key, text]) => [key, JSON.parse(text)]);
  }
}

export class Outbox {
  /** @param {string} caseId @param {() => void} changed whenever what waits has changed */
  constructor(caseId, changed) {
    this.caseId = caseId;
    this.changed = changed;
    this.shelf = new Shelf(`plumbline-entry/${encodeURIComponent(caseId)}/`);
    this.arrived = []; // entries that the service has and that this page has not yet read back
    this.running = false;
    this.retry = 0;
    addEventListener('online', () => this.send());
  }

  /** Whether what waits outlasts the page. */
  get lasting() {
    return this.shelf.lasting;
  }

  /** What waits, oldest first. */
  get waiting() {
    return this.shelf.all().map(([, entry]) => entry).filter((entry) => !entry.refused);
  }

  /** What the service would not take, with its words. */
  get refused() {
    return this.shelf.all().map(([, entry]) => entry).filter((entry) => entry.refused);
  }

  /** Puts an entry by and sends it. @param {string} part such as events @param {object} body with an id of its own */
  add(part, body) {
    const last = this.shelf.all().at(-1)?.[0].split('-')[0] ?? '0';
    const place = Math.max(Date.now(), Number(last) + 1);
    this.shelf.put(`${String(place).padStart(15, '0')}-${body.id}`, { part, body });
    this.changed();
    this.send();
  }

  /** A person lets go of what the service would not take. */
  letGo(id) {
    for (const [key, entry] of this.shelf.all()) {
      if (entry.body.id === id && entry.refused) this.shelf.take(key);
    }
    this.changed();
  }

  /** The service has told everything up to now; what arrived is in it. */
  readBack(ids) {
    this.arrived = this.arrived.filter((entry) => !ids.has(entry.body.id));
  }

  async send() {
    clearTimeout(this.retry);
    if (this.running) return;
    this.running = true;
    let answers = true;
    try {
      for (let next = this.next(); next && answers; next = answers ? this.next() : null) answers = await this.sent(...next);
    } finally {
      this.running = false;
    }
    if (!answers) this.retry = setTimeout(() => this.send(), AGAIN_MS);
  }

  next() {
    return this.shelf.all().find(([, entry]) => !entry.refused);
  }

  /** @returns {Promise<boolean>} whether the service said anything about it */
  async sent(key, entry) {
    try {
      await post(`v1/cases/${encodeURIComponent(this.caseId)}/${entry.part}`, entry.body);
      this.arrived.push(entry);
      this.shelf.take(key);
    } catch (problem) {
      const answered = problem instanceof Problem && problem.status < SERVER_FAULT && !TOO_EARLY.includes(problem.status);
      if (answered) this.shelf.put(key, { ...entry, refused: problem.message });
      this.changed();
      return answered;
    }
    this.changed();
    return true;
  }
}
