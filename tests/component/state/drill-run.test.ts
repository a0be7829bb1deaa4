import { beforeEach, describe, expect, it } from 'vitest';
import { freshPrompt } from '../../../src/app/state/fresh-prompt.ts';
import { coverageOf, targetsIn, weaknessOf } from '../../../src/app/state/drill-knowledge.ts';
import { ladder } from '../../../src/drill/difficulty.ts';
import type { Assessment } from '../../../src/grading/types.ts';
import { decide } from '../../../src/rules/decide.ts';
import { noAnswer, pilotOf, type Pilot } from './drilling.ts';

let pilot: Pilot;
beforeEach(async () => {
  pilot = await pilotOf('marram-recovery');
});

describe('a run', () => {
  it('asks as many scenarios as were asked for, and then ends', () => {
    const run = pilot.startRun({ length: 20 });
    for (let i = 1; i <= 20; i++) {
      expect([run.number, run.length]).toEqual([i, 20]);
      pilot.answer(run);
      run.next();
    }
    expect(run.answering).toBeNull();
    expect(run.results.map(({ performance }) => performance)).toEqual(Array(20).fill('desired'));
    expect(run.missGroups).toEqual([]);
  });

  it('shows states for which the rule on record is a reason, in the phase said', () => {
    const { training } = pilot;
    const run = pilot.startRun({ length: 30 });
    for (let i = 0; i < 30; i++) {
      const { ask, card } = run.answering!.prompt;
      if (ask.form !== 'controls') throw new Error('no controls');
      const { reasons } = decide(training.procedure, ask.phase, ask.state);
      expect(reasons.map(({ table, rule }) => `rule/${table}/${rule}`)).toContain(card.id);
      expect(training.deck.phases!.find(({ id }) => id === ask.phase)!.from).toBe(card.gate);
      pilot.answer(run);
      run.next();
    }
  });

  it('keeps to a phase when one is chosen', () => {
    const run = pilot.startRun({ targets: targetsIn(pilot.training, 'closing') });
    expect(new Set(run.items.map(({ phase }) => phase))).toEqual(new Set(['closing']));
  });

  it('puts each answer on the record of its rule, with where it was drawn', () => {
    const run = pilot.startRun();
    const { card } = run.answering!.prompt;
    const { phase } = run.item!;
    pilot.answer(run);
    const call = pilot.training.history(card.id)!.calls.at(-1)!;
    expect(call.performance).toBe('desired');
    expect(call.drill).toMatchObject({ phase });
  });

  it('goes on only after the grade could be seen', () => {
    const run = pilot.startRun();
    pilot.nowMs += 1000;
    run.answering!.submit(noAnswer);
    run.next();
    expect(run.number).toBe(1);
    pilot.nowMs += 1000;
    run.next();
    expect(run.number).toBe(2);
  });

  it('may be ended early: what was answered stays', () => {
    const run = pilot.startRun();
    pilot.answer(run);
    run.next();
    run.end();
    expect(run.answering).toBeNull();
    expect(run.results).toHaveLength(1);
    expect(run.mayGoOn).toBe(false);
    pilot.nowMs += 1000;
    expect(run.mayGoOn).toBe(true);
  });

  it('says before it asks that a gate was never met', () => {
    const run = pilot.startRun();
    expect(run.answering!.prompt.place).toMatch(/^New to you · /);
    const gate = run.answering!.prompt.card.gate!;
    const value = pilot.training.cards.find((card) => card.kind === 'value' && card.gate === gate)!;
    const prompt = freshPrompt(pilot.training, value);
    expect(weaknessOf(pilot.training).met(gate)).toBe(false);
    pilot.answer(run);
    pilot.training.keep(prompt, 'recall', run.answering!.assessment!, 1000);
    expect(weaknessOf(pilot.training).met(gate)).toBe(true);
  });
});

describe('taking back', () => {
  it('asks the same scenario again, and leaves nothing on record', () => {
    const run = pilot.startRun();
    const { card, ask } = run.answering!.prompt;
    pilot.answer(run, noAnswer);
    run.takeBack();
    expect(run.results).toEqual([]);
    expect(run.answering!.prompt.ask).toEqual(ask);
    expect(pilot.training.history(card.id)?.calls ?? []).toEqual([]);
  });

  it('takes the difficulty back as well', () => {
    const run = pilot.startRun();
    const before = run.level.level;
    pilot.answer(run, noAnswer);
    expect(run.level.level).toBe(before - 1);
    run.takeBack();
    expect(run.level.level).toBe(before);
  });

  it('works from the end of the run', () => {
    const run = pilot.startRun();
    pilot.answer(run);
    run.end();
    run.takeBack();
    expect(run.number).toBe(1);
    expect(run.answering).not.toBeNull();
  });
});

describe('difficulty', () => {
  it('goes a step up after two right and prompt, a step down after one outside', () => {
    const run = pilot.startRun({ length: 20 });
    const levels = [run.level.level];
    for (const answer of [undefined, undefined, noAnswer]) {
      pilot.answer(run, answer);
      levels.push(run.level.level);
      run.next();
    }
    expect(levels).toEqual([1, 1, 2, 1]);
  });

  it('is kept to: well clear of the edges stands first what can, then what can’t, and it is said', () => {
    pilot.settings.change({ drillLevel: 0, drillPinned: true });
    const run = pilot.startRun({ length: 10 });
    const drawn: string[] = [];
    for (let i = 0; i < 10; i++) {
      drawn.push(run.closeness!);
      expect(run.level.words(undefined, run.closeness)).toMatch(
        i < 4 ? /^well clear of the edges/ : /^(near|on) an edge/,
      );
      pilot.answer(run, i % 2 === 0 ? noAnswer : undefined);
      if (i === 2) {
        const { item } = run;
        run.takeBack();
        expect(run.item).toBe(item);
        pilot.answer(run);
      }
      run.next();
    }
    expect(drawn.slice(0, 4)).toEqual(Array(4).fill('wide'));
    expect(drawn.slice(4)).not.toContain('wide');
    expect(new Set(run.results.map(({ item }) => item))).toEqual(new Set(run.items));
  });

  it('says where it moved', () => {
    const run = pilot.startRun();
    pilot.answer(run, noAnswer);
    expect(run.level.moved).toBe('down');
    run.next();
    pilot.answer(run);
    expect(run.level.moved).toBeNull();
  });

  it('stays where the pilot holds it', () => {
    pilot.settings.change({ drillLevel: 3, drillPinned: true });
    const run = pilot.startRun();
    for (let i = 0; i < 4; i++) {
      pilot.answer(run, noAnswer);
      run.next();
    }
    expect(run.level.level).toBe(3);
  });

  it('is remembered for the next run', () => {
    const run = pilot.startRun();
    pilot.answer(run, noAnswer);
    expect(pilot.startRun().level.level).toBe(0);
  });

  it('sets the window, and what is shown', () => {
    pilot.settings.change({ drillLevel: 0, drillPinned: true });
    const easy = pilot.startRun({ targets: targetsIn(pilot.training, 'abeam-leg') });
    const shown: number[] = [];
    for (let i = 0; i < 10; i++) {
      const { ask } = easy.answering!.prompt;
      if (ask.form === 'controls') shown.push(ask.gauges.length);
      expect(easy.answering!.windowMs).toBe(12_000);
      pilot.answer(easy);
      easy.next();
    }
    expect(Math.min(...shown)).toBeLessThan(5);
    pilot.settings.change({ drillLevel: ladder.length - 1 });
    const hard = pilot.startRun({ targets: targetsIn(pilot.training, 'abeam-leg') });
    const { ask } = hard.answering!.prompt;
    expect(ask.form === 'controls' && ask.gauges.length).toBe(5);
    expect(hard.answering!.windowMs).toBe(4500);
  });

  it('is multiplied by the time the pilot wants', () => {
    pilot.settings.change({ drillLevel: 4, drillPinned: true, timing: 2 });
    const run = pilot.startRun({ targets: targetsIn(pilot.training, 'abeam-leg') });
    expect(run.answering!.windowMs).toBe(12_000);
    expect(run.level.words(run.answering!.windowMs)).toMatch(/: 12 s$/);
    const { prompt } = run.answering!;
    pilot.settings.change({ timing: Infinity });
    run.askAgain();
    expect(run.answering!.untimed).toBe(true);
    expect(run.answering!.prompt).toBe(prompt);
    expect(run.level.words(Infinity)).toMatch(/: untimed$/);
  });
});

describe('misses', () => {
  it('are grouped by gate, with the rules that were not followed, and can be drilled by themselves', () => {
    const run = pilot.startRun({ length: 10 });
    for (let i = 0; i < 10; i++) {
      pilot.answer(run, i < 3 ? noAnswer : undefined);
      run.next();
    }
    expect(run.missedCount).toBe(3);
    expect(run.missGroups.flatMap(({ results }) => results)).toHaveLength(3);
    const missed = run.results.slice(0, 3);
    for (const { broken, expected } of missed) {
      expect(broken.rule).not.toBe('');
      expect(expected).not.toBe('');
    }
    const again = pilot.startRun({ targets: run.missed });
    const rules = new Set(missed.map(({ scenario: { table, rule } }) => `rule/${table}/${rule}`));
    const phases = new Set(missed.map(({ scenario }) => scenario.phase));
    expect(again.length).toBe(6);
    for (const { phase, kind, card } of again.items) {
      expect(phases).toContain(phase);
      if (kind === 'rule') expect(rules).toContain(card);
    }
  });
});

describe('twins', () => {
  it('are shown beside each other once both were asked', () => {
    const run = pilot.startRun({ length: 20 });
    let shown = 0;
    for (let i = 0; i < 20; i++) {
      const item = run.item!;
      const first = run.results.some(
        ({ item: one }) => one.kind === 'twin' && item.kind === 'twin' && one.pair === item.pair,
      );
      expect(run.twin !== null, `before ${i}`).toBe(first);
      pilot.answer(run);
      expect(run.twin !== null, `after ${i}`).toBe(first);
      if (run.twin) {
        shown++;
        const { state } = run.results.at(-1)!.scenario;
        expect(Object.keys(state).filter((id) => state[id] !== run.twin![id])).toHaveLength(1);
      }
      run.next();
    }
    expect(shown).toBe(4);
  });
});

describe('coverage', () => {
  it('grows with what is drilled', () => {
    expect(coverageOf(pilot.training).rules.drilled).toBe(0);
    const run = pilot.startRun({ length: 20 });
    for (let i = 0; i < 20; i++) {
      pilot.answer(run);
      run.next();
    }
    const { rules, inputs, twins } = coverageOf(pilot.training);
    expect(rules.drilled).toBeGreaterThan(10);
    expect(inputs.drilled).toBeGreaterThan(4);
    expect(twins.drilled).toBeGreaterThanOrEqual(4);
    expect(rules.of).toBe(targetsIn(pilot.training, null).rules.length);
  });
});

describe('a drill of all phases', () => {
  it('leaves rules of gates never met out of Recall, until the gate has been met', () => {
    let lastAssessment: Assessment | null = null;
    const run = pilot.startRun({ length: 30 });
    for (let i = 0; i < 30; i++) {
      pilot.answer(run, noAnswer);
      lastAssessment = run.answering!.assessment;
      run.next();
    }
    const due = () => pilot.training.plan(60).items.filter(({ why }) => why === 'due');
    expect(due()).toEqual([]);
    const { gate } = pilot.training.card(run.items[0]!.card)!;
    const value = pilot.training.cards.find((card) => card.kind === 'value' && card.gate === gate)!;
    const assessment = { ...lastAssessment!, performance: 'desired', rating: 3 } as const;
    pilot.training.keep(freshPrompt(pilot.training, value), 'recall', assessment, 1000);
    expect(due().map(({ id }) => id)).toContain(run.items[0]!.card);
    expect(new Set(due().map(({ id }) => pilot.training.card(id)!.gate))).toEqual(new Set([gate]));
  });
});
