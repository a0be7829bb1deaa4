/** A pilot's training and a drill to test with: no page, no disk, a clock that the test moves. */
import { targetsIn } from '../../../src/app/state/drill-knowledge.ts';
import { DrillRun, type DrillRunSetup } from '../../../src/app/state/drill-run.svelte.ts';
import { Settings, type KeyValue } from '../../../src/app/state/settings.svelte.ts';
import { Training } from '../../../src/app/state/training.svelte.ts';
import { cardsOf } from '../../../src/cards/registry.ts';
import type { Answer, Prompt } from '../../../src/cards/types.ts';
import type { Deck } from '../../../src/deck/types.ts';
import { createScheduler } from '../../../src/memory/scheduler.ts';
import { eventIds } from '../../../src/record/event-id.ts';
import { openRecord } from '../../../src/record/live.ts';
import { memoryStore } from '../../../src/record/store/memory-store.ts';
import { decide } from '../../../src/rules/decide.ts';
import { shippedDecks } from '../../unit/app/parts/shipped-decks.ts';

export function storage(): KeyValue {
  let kept: string | null = null;
  return { getItem: () => kept, setItem: (_, value) => void (kept = value) };
}

export class Pilot {
  nowMs = Date.UTC(2026, 8, 1, 19);
  readonly settings = new Settings(storage());
  readonly training: Training;
  #seed = 1;

  constructor(training: (pilot: Pilot) => Training) {
    this.training = training(this);
  }

  startRun(change: Partial<DrillRunSetup> = {}): DrillRun {
    return new DrillRun({
      training: this.training,
      settings: this.settings,
      monotonicMs: () => this.nowMs,
      seed: this.#seed++,
      targets: targetsIn(this.training, null),
      length: 10,
      ...change,
    });
  }

  /** Answers the scenario at hand after a while; by the rules, or as told. */
  answer(run: DrillRun, answer?: Answer, afterMs = 1000): void {
    this.nowMs += afterMs;
    const { answering } = run;
    answering!.submit(answer ?? byTheRules(this.training, answering!.prompt));
    this.nowMs += 1000;
  }
}

export function byTheRules({ procedure }: Training, { ask }: Prompt): Answer {
  if (ask.form !== 'controls') throw new Error('A drill asks for controls.');
  return { form: 'controls', chosen: decide(procedure, ask.phase, ask.state).actions };
}

/** Shows the answer without one: outside, always. */
export const noAnswer: Answer = { form: 'none' };

/** @param of a shipped deck's id, or another deck */
export async function pilotOf(of: string | Deck): Promise<Pilot> {
  const scheduler = createScheduler();
  let bytes = 0;
  const record = await openRecord({
    store: memoryStore(),
    scheduler,
    ids: eventIds((count) => Uint8Array.from({ length: count }, () => (bytes = (bytes * 31 + 7) % 251))),
  });
  const deck = typeof of === 'string' ? shippedDecks.find(({ id }) => id === of)! : of;
  let seed = 1;
  return new Pilot(
    (pilot) =>
      new Training(deck, { cardsOf, record, scheduler, nowMs: () => pilot.nowMs, newSeed: () => seed++ }),
  );
}
