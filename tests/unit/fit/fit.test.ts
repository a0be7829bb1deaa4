import { describe, expect, it } from 'vitest';
import { fitInTurns, fitNow } from '../../../src/fit/drive.ts';
import { fittedTo, fitting, HELD_OUT_SHARE, LEAST_ANSWERS } from '../../../src/fit/fit.ts';
import { foretell, logLoss } from '../../../src/fit/log-loss.ts';
import { foretoldAtMs, pack } from '../../../src/fit/packed.ts';
import type { CardAnswers, Fit, FitProgress } from '../../../src/fit/types.ts';
import type { Rating } from '../../../src/grading/types.ts';
import { DAY_MS } from '../../../src/memory/local-day.ts';
import { createScheduler, parameterBounds, usualParameters } from '../../../src/memory/scheduler.ts';
import { seeded } from '../../../src/rules/random.ts';
import { quickLearner, recordOf } from './learner.ts';

/** A clock that gains a tenth of a second each time it is read. */
function ticking(): () => number {
  let ms = 0;
  return () => (ms += 100);
}

function fitOf(cards: readonly CardAnswers[], inUse?: readonly number[]): Fit {
  const outcome = fitNow(cards, { nowMs: ticking(), ...(inUse ? { inUse } : {}) });
  if (outcome.kind !== 'fitted') throw new Error(outcome.message);
  return outcome;
}

const lossUnder = (cards: readonly CardAnswers[], parameters: readonly number[]): number =>
  logLoss(foretell(pack(cards), parameters))!;

const quick = recordOf(quickLearner, 2500, 1);
const quickFit = fitOf(quick);

describe('a fit to a record', () => {
  it('comes to within 1 % of the log loss of the parameters that made the record', () => {
    const search = fittedTo(pack(quick));
    let step = search.next();
    while (!step.done) step = search.next();
    const made = lossUnder(quick, quickLearner);
    expect(lossUnder(quick, step.value.parameters)).toBeLessThan(made * 1.01);
    expect(lossUnder(quick, usualParameters)).toBeGreaterThan(made * 1.05);
  });

  it('foretells a later record of the same learner better than the usual parameters do', () => {
    const later = recordOf(quickLearner, 2500, 2);
    expect(quickFit.better).toBe(true);
    expect(lossUnder(later, quickFit.parameters)).toBeLessThan(lossUnder(later, usualParameters));
  });

  it('gives parameters that the scheduler takes as they are', () => {
    const memory = createScheduler({ parameters: quickFit.parameters }).next(null, 3, 0, false);
    expect(memory.stability).toBeCloseTo(quickFit.parameters[2]!, 12);
  });

  it('holds out the last fifth in time, and tells both losses on either side', () => {
    const { fittedTo: seen, heldOut, heldOutFromMs } = quickFit;
    expect(seen + heldOut).toBe(foretoldAtMs(pack(quick)).length);
    expect(heldOut / (seen + heldOut)).toBeCloseTo(HELD_OUT_SHARE, 2);
    for (const [parameters, side] of [
      [usualParameters, 'inUse'],
      [quickFit.parameters, 'fitted'],
    ] as const) {
      const foretold = foretell(pack(quick), parameters);
      const earlier = foretold.filter(({ atMs }) => atMs < heldOutFromMs);
      const later = foretold.filter(({ atMs }) => atMs >= heldOutFromMs);
      expect(quickFit.fittedLoss[side]).toBe(logLoss(earlier));
      expect(quickFit.heldOutLoss[side]).toBe(logLoss(later));
    }
    expect(quickFit.gain).toBeCloseTo(quickFit.heldOutLoss.inUse - quickFit.heldOutLoss.fitted, 12);
  });

  it('does not see what it is judged by', () => {
    const changed = quick.map((answers) =>
      answers.map((answer) =>
        answer.atMs < quickFit.heldOutFromMs ? answer : { ...answer, rating: 1 as const },
      ),
    );
    expect(fitOf(changed).parameters).toEqual(quickFit.parameters);
  });

  it('does not mind the order of the cards, but for rounding', () => {
    const other = fitOf([...quick].reverse());
    expect(other.heldOutLoss.fitted).toBeCloseTo(quickFit.heldOutLoss.fitted, 3);
  });
});

describe('the judging of a fit', () => {
  it.each(Array.from({ length: 6 }, (_, seed) => seed))(
    'takes it when it foretells what was held out better, and only then: record %i of a usual learner',
    (seed) => {
      const { better, heldOutLoss } = fitOf(recordOf(usualParameters, 900, seed));
      expect(better).toBe(heldOutLoss.fitted < heldOutLoss.inUse);
    },
  );

  it('leaves most records of a usual learner, whom no fit can help, with the usual parameters', () => {
    const taken = Array.from({ length: 12 }, (_, seed) => fitOf(recordOf(usualParameters, 900, 50 + seed)));
    expect(taken.filter(({ better }) => better).length).toBeLessThan(6);
  });

  it('does not take it when the learner remembers otherwise of late', () => {
    const aYearOn = recordOf(usualParameters, 800, 5).map((answers) =>
      answers.map(({ atMs, rating }) => ({ atMs: atMs + 400 * DAY_MS, rating })),
    );
    const { better, fittedLoss, heldOutLoss } = fitOf([...quick, ...aYearOn]);
    expect(fittedLoss.fitted).toBeLessThan(fittedLoss.inUse);
    expect(heldOutLoss.fitted).toBeGreaterThan(heldOutLoss.inUse);
    expect(better).toBe(false);
  });

  it('is against the parameters in use, not the usual ones', () => {
    const again = fitOf(quick, quickFit.parameters);
    expect(again.heldOutLoss.inUse).toBe(quickFit.heldOutLoss.fitted);
    expect(again.better).toBe(false);
  });
});

describe('a record that is out of the ordinary', () => {
  const startMs = Date.UTC(2026, 2, 1, 20);
  const random = seeded(9);
  const record = (rating: () => Rating, gapDays: () => number): CardAnswers[] =>
    Array.from({ length: 80 }, () => {
      let atMs = startMs;
      return Array.from({ length: 12 }, () => ({ atMs: (atMs += gapDays() * DAY_MS), rating: rating() }));
    });
  const any = (): Rating => (1 + Math.floor(random() * 4)) as Rating;

  it.each([
    [
      'all known',
      record(
        () => 3,
        () => 5,
      ),
    ],
    [
      'all known at once',
      record(
        () => 4,
        () => 400,
      ),
    ],
    [
      'nothing known',
      record(
        () => 1,
        () => 1,
      ),
    ],
    ['guesses', record(any, () => 1 + Math.floor(random() * 30))],
    ['years between answers', record(any, () => 3000)],
    ['days between answers, and minutes', record(any, () => (random() < 0.3 ? 0.001 : 1))],
  ])('still comes to parameters within their bounds: %s', (_, cards) => {
    const { parameters, heldOutLoss, gainError } = fitOf(cards);
    parameters.forEach((value, i) => {
      expect(value).toBeGreaterThanOrEqual(parameterBounds[i]![0] - 1e-9);
      expect(value).toBeLessThanOrEqual(parameterBounds[i]![1] + 1e-9);
    });
    for (const figure of [heldOutLoss.inUse, heldOutLoss.fitted, gainError])
      expect(Number.isFinite(figure)).toBe(true);
  });
});

describe('a record with too few answers', () => {
  it('is refused, with how many it takes and how many more are needed', () => {
    const outcome = fitNow(recordOf(usualParameters, 300, 1), { nowMs: ticking() });
    if (outcome.kind !== 'none') throw new Error('It was fitted.');
    expect(outcome.code).toBe('too-few-answers');
    expect(outcome.message).toContain(`a fit takes ${LEAST_ANSWERS}`);
    expect(outcome.mend).toMatch(/^Rehearse on: \d+ more/);
  });

  it.each([
    ['none at all', []],
    ['cards without answers', [[], []]],
  ])('may hold %s', (_, cards) => {
    expect(fitNow(cards, { nowMs: ticking() })).toMatchObject({ kind: 'none', code: 'too-few-answers' });
  });

  it('is fitted from the first answer on that makes it enough', () => {
    const enough = recordOf(usualParameters, 2500, 1).filter((_, i) => i < 400);
    const trimmed = (count: number): CardAnswers[] => {
      const cards: CardAnswers[] = [];
      for (const answers of enough) {
        const left = count - foretoldAtMs(pack(cards)).length;
        if (left <= 0) break;
        let length = answers.length;
        while (foretoldAtMs(pack([answers.slice(0, length)])).length > left) length--;
        cards.push(answers.slice(0, length));
      }
      return cards;
    };
    expect(fitNow(trimmed(LEAST_ANSWERS - 1), { nowMs: ticking() }).kind).toBe('none');
    expect(fitNow(trimmed(LEAST_ANSWERS), { nowMs: ticking() }).kind).toBe('fitted');
  });
});

describe('a fit under way', () => {
  it('tells how far it got, never worse than before', () => {
    const told: FitProgress[] = [];
    const outcome = fitNow(quick, { nowMs: ticking(), onProgress: (progress) => told.push(progress) });
    expect(told.map(({ passes }) => passes)).toEqual(told.map((_, i) => i + 1));
    told.slice(1).forEach(({ logLoss: now }, i) => expect(now).toBeLessThanOrEqual(told[i]!.logLoss));
    expect(outcome).toMatchObject({ passes: told.length, seconds: 0.1 });
  });

  it('stops when asked to, and leaves everything as it was', async () => {
    let asked = 0;
    const isStopped = () => ++asked > 3;
    const giveTurn = () => Promise.resolve();
    const now = fitNow(quick, { nowMs: ticking(), isStopped });
    expect(now).toMatchObject({ kind: 'none', code: 'stopped' });
    expect(asked).toBe(4);
    asked = 0;
    expect(await fitInTurns(quick, { nowMs: ticking(), isStopped, giveTurn })).toEqual(now);
  });

  it('gives others their turn, and comes to the same', async () => {
    let turns = 0;
    const told: FitProgress[] = [];
    const outcome = await fitInTurns(quick, {
      nowMs: ticking(),
      turnMs: 250,
      giveTurn: () => Promise.resolve(void turns++),
      onProgress: (progress) => told.push(progress),
    });
    expect(turns).toBeGreaterThan(5);
    expect(told).toHaveLength(turns);
    expect({ ...outcome, seconds: 0 }).toEqual({ ...quickFit, seconds: 0 });
  });

  it('goes through the record once a step', () => {
    const steps = fitting(quick, { nowMs: ticking() });
    let last = 0;
    for (let step = steps.next(); !step.done; step = steps.next()) {
      expect(step.value.passes).toBe(last + 1);
      last = step.value.passes;
    }
    expect(last).toBe(quickFit.passes);
  });
});
