/** The decks at hand: those that come with the app and those the pilot opened from files. */
import type { Card } from '../../cards/types.ts';
import { changesBetween, type CardChanges } from '../../cards/changes.ts';
import type { Finding } from '../../deck/findings.ts';
import { mostBytes } from '../../deck/limits.ts';
import type { Deck } from '../../deck/types.ts';
import { backupFormat } from '../../record/backup-format.ts';
import type { RecordStore } from '../../record/store/store.ts';
import { compileRules } from '../../rules/compile.ts';
import { readDeckText, type DeckReading } from './deck-reading.ts';
import { shippedDecks } from './shipped-decks.ts';

export interface DeckEntry {
  readonly id: string;
  readonly deck: Deck;
  readonly origin: 'shipped' | 'opened';
  /** Version of the shipped deck whose place an opened one has taken. */
  readonly insteadOf: string | null;
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

/** A file whose deck would take the place of one that is here: the pilot is asked first. */
export interface Replacement {
  readonly here: DeckEntry;
  readonly deck: Deck;
  readonly changes: CardChanges;
}

interface Waiting extends Replacement {
  readonly text: string;
  readonly report: OpenReport;
}

type DeckSource = Pick<File, 'name' | 'size' | 'text'>;

export class Library {
  readonly #store: RecordStore;
  readonly #read: (text: string) => Promise<DeckReading>;
  #waiting = $state.raw<Waiting | null>(null);
  entries = $state.raw<readonly DeckEntry[] | null>(null);
  report = $state.raw<OpenReport | null>(null);
  busy = $state(false);
  /** What came of removing a deck. It outlives the page, which is drawn anew with the deck in use. */
  removal = $state.raw<{ readonly ok: boolean; readonly said: string } | null>(null);
  /** Opened decks that this version can't read any more, in words. */
  troubles = $state.raw<readonly string[]>([]);

  constructor(store: RecordStore, read: (text: string) => Promise<DeckReading> = readDeckText) {
    this.#store = store;
    this.#read = read;
  }

  /** What the pilot has to say yes or no to before the last file is taken. */
  get replacement(): Replacement | null {
    return this.#waiting;
  }

  /** One deck, by id: an opened one takes the place of a shipped one. null when there is none, or it can't be read. */
  async deck(id: string): Promise<Deck | null> {
    return (await this.#entry(id))?.entry.deck ?? null;
  }

  /** Reads all decks for the list. */
  async list(): Promise<void> {
    const { decks: files, problems } = await this.#store.readDecks();
    const troubles = problems.map(({ message }) => message);
    const shipped = await Promise.all(shippedDecks.map(({ load }) => load()));
    const opened: DeckEntry[] = [];
    for (const file of files) {
      const { deck, findings } = await this.#read(file.text);
      if (deck) opened.push(openedEntry(deck, shipped));
      else
        troubles.push(
          `“${file.id}” ${file.version} can't be read: ${findings[0]?.message ?? 'unknown fault'}`,
        );
    }
    const taken = new Set(opened.map(({ id }) => id));
    this.entries = [...shipped.filter(({ id }) => !taken.has(id)).map(shippedEntry), ...opened];
    this.troubles = troubles;
  }

  /**
   * Reads and proves a file. Gives its deck when it is kept and can be used: a bad one replaces nothing,
   * and one that would replace another waits in `replacement` for the pilot's word.
   */
  async open(file: DeckSource): Promise<Deck | null> {
    this.busy = true;
    this.forgetReport();
    this.#waiting = null;
    try {
      if (file.size > mostBytes) {
        this.report = { ...nothingOf(file), problem: tooLarge(file.size) };
        return null;
      }
      const text = await file.text();
      if (backupStart.test(text)) {
        this.report = { ...nothingOf(file), problem: isBackup };
        return null;
      }
      const { deck, findings } = await this.#read(text);
      const report = { fileName: file.name, deck, findings, problem: null, lines: text.split('\n') };
      const here = deck && (await this.#entry(deck.id));
      if (!deck || here?.text === text || (here && isSame(here.entry.deck, deck))) {
        this.report = report;
        return deck;
      }
      if (!here) return await this.#keep(deck, text, report);
      const [before, after] = await Promise.all([cardsOfDeck(here.entry.deck), cardsOfDeck(deck)]);
      const changes = changesBetween(before, after);
      this.#waiting = { here: here.entry, deck, changes, text, report };
      return null;
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      const problem = `The file can't be read (${why}). Try again, or copy it to this device first.`;
      this.report = { ...nothingOf(file), problem };
      return null;
    } finally {
      this.busy = false;
    }
  }

  /** The pilot says yes: the deck that waits takes its place. */
  async replace(): Promise<Deck | null> {
    const waiting = this.#waiting;
    this.#waiting = null;
    return waiting && (await this.#keep(waiting.deck, waiting.text, waiting.report));
  }

  /** The pilot says no: the deck that is here stays. */
  leaveAsIs(): void {
    this.#waiting = null;
  }

  forgetReport(): void {
    this.report = null;
    this.removal = null;
  }

  /** Removes an opened deck; a shipped one whose place it had is there again. True when it is gone. */
  async remove({ id, deck, insteadOf }: DeckEntry): Promise<boolean> {
    const result = await this.#store.removeDeck(id);
    await this.list();
    // What was said of a file before this is no longer of use.
    this.forgetReport();
    const said =
      insteadOf === null
        ? `“${deck.title}” was removed. Your answers to it stay on record.`
        : `“${deck.title}” is again the one that comes with Gatecall, version ${insteadOf}.`;
    this.removal = result.ok ? { ok: true, said } : { ok: false, said: result.message };
    return result.ok;
  }

  async #keep(deck: Deck, text: string, report: OpenReport): Promise<Deck> {
    const written = await this.#store.writeDeck({ id: deck.id, version: deck.version, text });
    const problem = written.ok ? null : `The deck can be used now but was not kept: ${written.message}`;
    this.entries = null;
    this.report = { ...report, problem };
    return deck;
  }

  async #entry(id: string): Promise<{ entry: DeckEntry; text: string | null } | null> {
    const shipped = await shippedDecks.find((candidate) => candidate.id === id)?.load();
    const file = (await this.#store.readDecks()).decks.find((candidate) => candidate.id === id);
    const deck = file && (await this.#read(file.text)).deck;
    if (deck) return { entry: openedEntry(deck, shipped ? [shipped] : []), text: file.text };
    return shipped ? { entry: shippedEntry(shipped), text: null } : null;
  }
}

const shippedEntry = (deck: Deck): DeckEntry => ({ id: deck.id, deck, origin: 'shipped', insteadOf: null });

const openedEntry = (deck: Deck, shipped: readonly Deck[]): DeckEntry => ({
  id: deck.id,
  deck,
  origin: 'opened',
  insteadOf: shipped.find(({ id }) => id === deck.id)?.version ?? null,
});

const nothingOf = ({ name }: DeckSource): OpenReport => ({
  fileName: name,
  deck: null,
  findings: [],
  problem: null,
  lines: [],
});

/** How a saved training record begins. */
const backupStart = new RegExp(`^\\s*\\{\\s*"format"\\s*:\\s*"${backupFormat}/`);

const isBackup = 'This is a training record, not a deck. Bring it in on the Record page.';

const tooLarge = (bytes: number): string =>
  `The file has ${(bytes / 1e6).toFixed(1)} MB; a deck may have ${mostBytes / 1e6} MB. Is it a deck file? Split it, or take out what is no text.`;

/** Read from text or from the build's data, equal decks are equal as text. */
const isSame = (one: Deck, other: Deck): boolean => JSON.stringify(one) === JSON.stringify(other);

async function cardsOfDeck(deck: Deck): Promise<readonly Card[]> {
  const { cardsOf } = await import('../../cards/registry.ts');
  const { procedure } = compileRules(deck);
  return procedure ? cardsOf(procedure) : [];
}
