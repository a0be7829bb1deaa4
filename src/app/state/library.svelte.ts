/** The decks at hand: those that come with the app and those the pilot opened from files. */
import type { Finding } from '../../deck/findings.ts';
import type { Deck } from '../../deck/types.ts';
import type { RecordStore } from '../../record/store/store.ts';
import type { DeckFile } from '../../record/types.ts';
import { readDeckText, type DeckReading } from './deck-reading.ts';
import { shippedDecks } from './shipped-decks.ts';

/** Longer files are refused unread; the same limit as the deck reader's. */
export const mostDeckBytes = 2 * 1024 * 1024;

export interface DeckEntry {
  readonly id: string;
  readonly deck: Deck;
  readonly origin: 'shipped' | 'opened';
}

/** What came of opening a file. */
export interface OpenReport {
  readonly fileName: string;
  readonly deck: Deck | null;
  readonly findings: readonly Finding[];
  /** A trouble that is not the deck's: too large, unreadable, not kept. */
  readonly problem: string | null;
  /** The lines of the text, to show where a fault lies. */
  readonly lines: readonly string[];
}

export class Library {
  readonly #store: RecordStore;
  readonly #read: (text: string) => Promise<DeckReading>;
  entries = $state.raw<readonly DeckEntry[] | null>(null);
  report = $state.raw<OpenReport | null>(null);
  busy = $state(false);
  /** Opened decks that this version can't read any more, in words. */
  troubles = $state.raw<readonly string[]>([]);

  constructor(store: RecordStore, read: (text: string) => Promise<DeckReading> = readDeckText) {
    this.#store = store;
    this.#read = read;
  }

  /** One deck, by id: an opened one takes the place of a shipped one. null when there is none, or it can't be read. */
  async deck(id: string): Promise<Deck | null> {
    const opened = (await this.#store.readDecks()).decks.find((file) => file.id === id);
    if (opened) {
      const { deck } = await this.#read(opened.text);
      if (deck) return deck;
    }
    const shipped = shippedDecks.find((candidate) => candidate.id === id);
    return shipped ? await shipped.load() : null;
  }

  /** Reads all decks for the list. */
  async list(): Promise<void> {
    const { decks: files, problems } = await this.#store.readDecks();
    const troubles = problems.map(({ message }) => message);
    const opened: DeckEntry[] = [];
    for (const file of files) {
      const { deck, findings } = await this.#read(file.text);
      if (deck) opened.push({ id: deck.id, deck, origin: 'opened' });
      else
        troubles.push(
          `“${file.id}” ${file.version} can't be read: ${findings[0]?.message ?? 'unknown fault'}`,
        );
    }
    const taken = new Set(opened.map(({ id }) => id));
    const shipped = await Promise.all(
      shippedDecks
        .filter(({ id }) => !taken.has(id))
        .map(async ({ id, load }): Promise<DeckEntry> => ({ id, deck: await load(), origin: 'shipped' })),
    );
    this.entries = [...shipped, ...opened];
    this.troubles = troubles;
  }

  /** Reads, proves and keeps a file. Gives the deck when it can be used. Nothing is replaced by a bad one. */
  async open(file: Pick<File, 'name' | 'size' | 'text'>): Promise<Deck | null> {
    this.busy = true;
    this.report = null;
    const blank = { fileName: file.name, deck: null, findings: [], lines: [] };
    try {
      if (file.size > mostDeckBytes) {
        const size = (file.size / 1024 / 1024).toFixed(1);
        this.report = {
          ...blank,
          problem: `The file has ${size} MB; a deck may have 2 MB. Is it a deck file? Split it, or take out what is no text.`,
        };
        return null;
      }
      const text = await file.text();
      const { deck, findings } = await this.#read(text);
      let problem: string | null = null;
      if (deck) {
        const kept: DeckFile = { id: deck.id, version: deck.version, text };
        const written = await this.#store.writeDeck(kept);
        if (!written.ok) problem = `The deck can be used now but was not kept: ${written.message}`;
        this.entries = null;
      }
      this.report = { fileName: file.name, deck, findings, problem, lines: text.split('\n') };
      return deck;
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      this.report = {
        ...blank,
        problem: `The file can't be read (${why}). Try again, or copy it to this device first.`,
      };
      return null;
    } finally {
      this.busy = false;
    }
  }

  async remove(id: string): Promise<string | null> {
    const result = await this.#store.removeDeck(id);
    if (this.report?.deck?.id === id) this.report = null;
    await this.list();
    return result.ok ? null : result.message;
  }
}
