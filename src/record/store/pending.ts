/** Events on their way to the disk: kept until they are known to be there. */
import type { KeptEvent } from '../types.ts';
import type { WriteResult } from './store.ts';

const written: WriteResult = { ok: true };

export class PendingQueue {
  readonly #write: (events: readonly KeptEvent[]) => Promise<WriteResult>;
  #events: KeptEvent[] = [];
  #last: Promise<WriteResult> = Promise.resolve(written);

  /** @param write writes all of what it is given or, when it says it failed, nothing. */
  constructor(write: (events: readonly KeptEvent[]) => Promise<WriteResult>) {
    this.#write = write;
  }

  /** Oldest first. */
  get events(): readonly KeptEvent[] {
    return this.#events;
  }

  /** Takes events in and tries to write all that wait. */
  async push(events: readonly KeptEvent[]): Promise<WriteResult> {
    this.#events = [...this.#events, ...events];
    return await this.flush();
  }

  /** Tries to write all that wait; one attempt at a time, in the order of the calls. */
  flush(): Promise<WriteResult> {
    this.#last = this.#last.then(() => this.#writeWhatFits([...this.#events]));
    return this.#last;
  }

  /** Forgets what waits, after a write under way is through. */
  async clear(): Promise<void> {
    await this.#last;
    this.#events = [];
  }

  /** On a full disk, halves what it tries until it fits: the first ones get in. */
  async #writeWhatFits(events: readonly KeptEvent[]): Promise<WriteResult> {
    if (events.length === 0) return written;
    const result = await this.#write(events);
    if (result.ok) {
      const gone = new Set(events);
      this.#events = this.#events.filter((event) => !gone.has(event));
      return result;
    }
    if (result.reason !== 'full' || events.length === 1) return result;
    const half = Math.ceil(events.length / 2);
    const first = await this.#writeWhatFits(events.slice(0, half));
    return first.ok ? await this.#writeWhatFits(events.slice(half)) : first;
  }
}
