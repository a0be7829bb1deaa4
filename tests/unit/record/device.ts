/** A device to test with: a disk, and a browser with tabs that hear each other. */
import { openRecord, type LiveRecord } from '../../../src/record/live.ts';
import { MemoryDisk, memoryStore } from '../../../src/record/store/memory-store.ts';
import type { TabChannel } from '../../../src/record/tabs.ts';
import { testIds, testScheduler } from './examples.ts';

type Listener = (message: { readonly data: unknown }) => void;

/** Each message reaches all tabs but its sender, as a copy. */
export class TabHub {
  readonly #listeners = new Map<object, Set<Listener>>();
  /** While true, messages are lost, as in a tab that the browser has frozen. */
  deaf = false;
  sent = 0;

  channel(): TabChannel {
    const self = {};
    const own = new Set<Listener>();
    this.#listeners.set(self, own);
    return {
      postMessage: (message) => {
        this.sent++;
        if (this.deaf) return;
        for (const [tab, listeners] of this.#listeners)
          if (tab !== self) for (const listener of listeners) listener({ data: structuredClone(message) });
      },
      addEventListener: (_, listener) => void own.add(listener),
      removeEventListener: (_, listener) => void own.delete(listener),
    };
  }
}

/** Each `open` is a tab. */
export class Device {
  readonly disk = new MemoryDisk();
  readonly hub = new TabHub();
  #tabs = 0;

  constructor(readonly seed = 1) {}

  open(scheduler = testScheduler): Promise<LiveRecord> {
    return openRecord({
      store: memoryStore(this.disk),
      scheduler,
      ids: testIds(this.seed * 1000 + this.#tabs++),
      channel: this.hub.channel(),
    });
  }
}

export const answersIn = (record: LiveRecord): number =>
  [...record.histories.values()].reduce((sum, { calls }) => sum + calls.length, 0);
