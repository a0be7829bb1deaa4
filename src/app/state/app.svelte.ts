/** The app as a whole: which deck is in hand, which session runs, what has to be said to the pilot. */
import { cardsMade } from '../../cards/cards-of.ts';
import type { deckOfDay } from '../../day/deck-of-day.ts';
import type { Deck } from '../../deck/types.ts';
import type { Scheduler, SessionPlan } from '../../memory/types.ts';
import type { LiveRecord } from '../../record/live.ts';
import { askToPersist } from '../../record/store/persist.ts';
import type { RecordStore } from '../../record/store/store.ts';
import type { RunTargets } from '../../drill/plan.ts';
import type { DaySet } from '../../record/types.ts';
import { isOwn, keptWith, soundDay } from './day-set.ts';
import type { DrillRun } from './drill-run.svelte.ts';
import type { PassFlight } from './pass-flight.svelte.ts';
import { Library } from './library.svelte.ts';
import type { RecallSession } from './recall-session.svelte.ts';
import { hrefOf, readRoute, type Page, type Route } from './route.svelte.ts';
import type { Settings } from './settings.svelte.ts';
import { firstDeck } from './shipped-decks.ts';
import { Training, type SetDay, type TrainingSetup } from './training.svelte.ts';
import { troublesOf, type Trouble } from './troubles.ts';

export interface AppSetup {
  readonly settings: Settings;
  readonly record: LiveRecord;
  readonly store: RecordStore;
  readonly scheduler: Scheduler;
  readonly nowMs: () => number;
  readonly monotonicMs: () => number;
  readonly newSeed: () => number;
  /** The pilot wants no movement on the screen. */
  readonly stillness: () => boolean;
  readonly hash: () => string;
  readonly goTo: (hash: string) => void;
}

export class App {
  readonly settings: Settings;
  readonly record: LiveRecord;
  readonly library: Library;
  readonly #setup: AppSetup;
  #deckOfDay: typeof deckOfDay | null = null;
  route = $state.raw<Route>({ page: 'recall', rest: '' });
  training = $state.raw<Training | null>(null);
  session = $state.raw<RecallSession | null>(null);
  run = $state.raw<DrillRun | null>(null);
  flight = $state.raw<PassFlight | null>(null);
  /** Says that writing fails, or that something could not be read. */
  troubles = $state.raw<readonly Trouble[]>([]);
  /** Keys of the troubles that the pilot has read and closed. */
  #closed = $state.raw<readonly string[]>([]);
  deckTrouble = $state.raw<string | null>(null);
  /** Lets a new version of the app in. */
  update = $state.raw<(() => void) | null>(null);

  constructor(setup: AppSetup) {
    this.#setup = setup;
    this.settings = setup.settings;
    this.record = setup.record;
    this.library = new Library(setup.store);
    setup.record.subscribe(() => this.#readTroubles());
    this.#readTroubles();
    this.followAddress();
  }

  get nowMs(): () => number {
    return this.#setup.nowMs;
  }

  /** A new version may be let in only when nothing is being answered. */
  get idle(): boolean {
    return (
      (this.session?.finished ?? true) &&
      this.run?.answering == null &&
      this.flight?.stage !== 'moving' &&
      this.flight?.stage !== 'asking'
    );
  }

  followAddress(): void {
    this.route = readRoute(this.#setup.hash());
    // Leaving a page covers its prompt: the clock must not run on unseen.
    if (this.route.page !== 'recall') this.session?.answering?.pause();
    if (this.route.page !== 'drill') this.run?.answering?.pause();
    if (this.route.page !== 'pass') this.flight?.pause();
  }

  go(page: Page, rest = ''): void {
    this.#setup.goTo(hrefOf(page, rest));
  }

  async chooseDeck(id: string): Promise<void> {
    const deck = (await this.library.deck(id)) ?? (await this.library.deck(firstDeck));
    if (!deck) {
      this.deckTrouble = `The deck “${id}” could not be loaded. Reload the page, or choose another deck.`;
      return;
    }
    const kept = soundDay(deck, this.settings.days[deck.id] ?? {});
    if (!isOwn(kept)) await this.readyDays();
    const day = this.#setDayOf(deck, kept);
    const cardsOf = await cardMakerOf(deck);
    this.deckTrouble = null;
    this.training?.close();
    this.session = null;
    this.run = null;
    this.flight = null;
    this.settings.change({ deck: deck.id });
    const { record, scheduler, nowMs, newSeed } = this.#setup;
    this.training = new Training(deck, { cardsOf, record, scheduler, nowMs, newSeed }, day);
  }

  /**
   * Sets the day of the deck in hand, for all pages, and keeps it on this device. Nothing set is the deck's own.
   * At once when `readyDays` is through: the next press of a key goes on from what this one set.
   */
  async setDay(wanted: DaySet): Promise<void> {
    if (!this.#deckOfDay) await this.readyDays();
    const { training, settings } = this;
    if (!training) return;
    const day = this.#setDayOf(training.ownDeck, wanted);
    training.takeDay(day);
    settings.change({ days: keptWith(settings.days, training.ownDeck.id, day?.set ?? {}) });
    this.session?.takeDay();
  }

  /** Working out another day is no part of the first page. */
  async readyDays(): Promise<void> {
    this.#deckOfDay ??= (await import('../../day/deck-of-day.ts')).deckOfDay;
  }

  /** What of a day can be set for a deck, and the deck of that day; null when it is the deck's own. */
  #setDayOf(deck: Deck, wanted: DaySet): SetDay | null {
    const set = soundDay(deck, wanted);
    return isOwn(set) || !this.#deckOfDay ? null : { set, day: this.#deckOfDay(deck, set) };
  }

  async startSession(plan?: SessionPlan): Promise<void> {
    // Asking and grading are no part of the first page.
    const { RecallSession } = await import('./recall-session.svelte.ts');
    const { training, settings } = this;
    if (!training) return;
    const what = plan ?? training.plan(settings.minutes);
    if (what.items.length === 0) return;
    this.session = new RecallSession(what, training, settings, this.#setup.monotonicMs);
  }

  endSession(): void {
    const worthKeeping = this.session?.finished ?? false;
    this.session = null;
    if (worthKeeping) void askToPersist();
    void this.record.settle();
  }

  /** @param what a phase, null for all, or just these targets. */
  async startDrill(what: string | null | RunTargets): Promise<void> {
    // The drill's core is no part of the first page.
    const [{ DrillRun }, { targetsIn }] = await Promise.all([
      import('./drill-run.svelte.ts'),
      import('./drill-knowledge.ts'),
    ]);
    const { training, settings } = this;
    if (!training) return;
    const { monotonicMs, newSeed } = this.#setup;
    const targets = what === null || typeof what === 'string' ? targetsIn(training, what) : what;
    const length = settings.drillLength;
    this.run = new DrillRun({ training, settings, monotonicMs, seed: newSeed(), targets, length });
  }

  endDrill(): void {
    this.run = null;
    void this.record.settle();
  }

  /** @param seed of its errors and its air; a new one when left out. */
  async startPass(fromGate: string, seed = this.#setup.newSeed()): Promise<void> {
    // Nor is the engine that flies it.
    const { PassFlight } = await import('./pass-flight.svelte.ts');
    const { training, settings } = this;
    if (!training) return;
    const { monotonicMs, stillness } = this.#setup;
    this.flight = new PassFlight({
      training,
      start: { fromGate, seed, roughness: settings.passRoughness, day: training.daySet },
      pace: settings.passPace,
      timing: settings.timing,
      tells: settings.passTells,
      monotonicMs,
      still: stillness,
    });
  }

  flyAgain(sameAir: boolean): void {
    const start = this.flight?.setup.start;
    if (start) void this.startPass(start.fromGate, ...(sameAir ? [start.seed] : []));
  }

  endPass(): void {
    this.flight = null;
    void this.record.settle();
  }

  /** Drills the rules that were missed in the pass that was flown. */
  async drillPass(): Promise<void> {
    const { training, flight } = this;
    if (!training || !flight?.assessment) return;
    const { targetsOfPass } = await import('./pass-drill.ts');
    const targets = targetsOfPass(training, flight.assessment);
    await this.startDrill(targets);
    this.go('drill');
    this.endPass();
  }

  drillFrom(phase: string): void {
    void this.startDrill(phase);
    this.go('drill', phase);
  }

  acceptCaution(): void {
    this.settings.change({ cautionSeen: true });
  }

  /** Those to be shown over every page. */
  get openTroubles(): readonly Trouble[] {
    return this.troubles.filter(({ key }) => !this.#closed.includes(key));
  }

  closeTrouble(key: string): void {
    this.#closed = [...this.#closed, key];
  }

  #readTroubles(): void {
    this.troubles = troublesOf(this.record.problems);
  }
}

/** What makes the cards of a deck. Worked values bring the working out of days along: only with decks that have some. */
async function cardMakerOf({ worked }: Deck): Promise<TrainingSetup['cardsOf']> {
  const workedCards = worked?.length ? (await import('../../cards/worked-cards.ts')).workedCards : null;
  return (procedure) => cardsMade(procedure, workedCards);
}
