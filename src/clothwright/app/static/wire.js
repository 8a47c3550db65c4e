// The line to the workroom: one message in flight, the newest wins, nothing is lost.

const FIRST = 250, LAST = 4000;

export class Wire {
  /** `onState(parts, message)` hears what changed; `onLine(up, waiting)` how the line is. */
  constructor(url, unit, onState, onLine) {
    Object.assign(this, { url, unit, onState, onLine });
    this.queue = [];
    this.flying = null;
    this.n = 0;
    this.revision = 0;
    this.wait = FIRST;
    this.open();
  }

  open() {
    const socket = new WebSocket(`${this.url}?unit=${this.unit}`);
    this.socket = socket;
    socket.addEventListener('open', () => {
      this.wait = FIRST;
      this.onLine(true, this.waiting());
      if (this.flying) { this.queue.unshift(this.flying); this.flying = null; }
      for (const q of this.queue) if (q.message.do) q.message.late = true;
      this.flush();
    });
    socket.addEventListener('message', (e) => this.hear(JSON.parse(e.data)));
    socket.addEventListener('close', () => {
      if (this.socket !== socket) return;
      this.onLine(false, this.waiting());
      setTimeout(() => this.open(), this.wait * (0.75 + Math.random() / 2));
      this.wait = Math.min(LAST, this.wait * 2);
    });
  }

  waiting() {
    return this.queue.filter((q) => q.message.do).length + (this.flying?.message.do ? 1 : 0);
  }

  /** Ask for a change; resolves with the refusal, or null when it was made. */
  change(message) {
    if (message.live) {
      const last = this.queue.at(-1);
      if (last?.message.live && last.message.of === message.of) {
        last.message = { ...message, on: this.revision };
        return last.done;
      }
    } else {
      this.queue = this.queue.filter((q) => {
        const stale = q.message.live && q.message.of === message.of;
        if (stale) q.resolve(null);
        return !stale;
      });
    }
    return this.push({ ...message, on: this.revision });
  }

  /** Ask for what lies behind a word, for a thread of reasons, for the steps. */
  ask(what, more = {}) { return this.push({ ask: what, ...more }); }

  push(message) {
    const entry = { message };
    entry.done = new Promise((resolve) => { entry.resolve = resolve; });
    this.queue.push(entry);
    this.flush();
    return entry.done;
  }

  flush() {
    if (this.flying || !this.queue.length || this.socket.readyState !== WebSocket.OPEN) return;
    this.flying = this.queue.shift();
    this.flying.message.n = ++this.n;
    this.socket.send(JSON.stringify(this.flying.message));
  }

  hear(message) {
    const mine = this.flying && message.answer >= this.flying.message.n;
    if (message.is === 'state' || message.is === 'paper') {
      this.revision = message.revision;
      this.onState(message.parts, message);
    }
    if (mine) {
      const { resolve } = this.flying;
      this.flying = null;
      resolve(message.is === 'state' ? message.refused ?? null : message);
    }
    this.flush();
  }
}
