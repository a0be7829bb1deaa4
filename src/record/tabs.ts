/** How tabs with the same record tell each other what happened. */
import { parseEvent, rawEvent } from './schema.ts';
import type { KeptEvent } from './types.ts';

/** What is needed of a `BroadcastChannel`. */
export interface TabChannel {
  postMessage(message: unknown): void;
  addEventListener(type: 'message', listener: (message: { readonly data: unknown }) => void): void;
  removeEventListener(type: 'message', listener: (message: { readonly data: unknown }) => void): void;
}

export type TabMessage =
  | { readonly about: 'events'; readonly events: readonly KeptEvent[] }
  /** Too much to send: it is in the store. */
  | { readonly about: 'more-in-store' }
  | { readonly about: 'erased' };

export class Tabs {
  readonly #channel: TabChannel | undefined;
  readonly #hear: (message: { readonly data: unknown }) => void;

  constructor(channel: TabChannel | undefined, hear: (message: TabMessage) => void) {
    this.#channel = channel;
    this.#hear = ({ data }) => {
      const message = messageIn(data);
      if (message !== null) hear(message);
    };
    channel?.addEventListener('message', this.#hear);
  }

  tell(message: TabMessage): void {
    const plain = message.about === 'events' ? { ...message, events: message.events.map(rawEvent) } : message;
    this.#channel?.postMessage(plain);
  }

  close(): void {
    this.#channel?.removeEventListener('message', this.#hear);
  }
}

/** A tab with another version of the app may send anything. */
function messageIn(data: unknown): TabMessage | null {
  if (typeof data !== 'object' || data === null) return null;
  const { about, events } = data as { readonly about?: unknown; readonly events?: unknown };
  if (about === 'more-in-store' || about === 'erased') return { about };
  if (about !== 'events' || !Array.isArray(events)) return null;
  const parsed = events.map(parseEvent);
  return { about, events: parsed.flatMap((one) => (one.ok ? [one.event] : [])) };
}
