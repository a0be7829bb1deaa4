import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { compileRules } from '../../../../src/rules/compile.ts';
import { decide } from '../../../../src/rules/decide.ts';
import { interval } from '../../../../src/rules/intervals.ts';
import { decisionMap } from '../../../../src/drill/decision-map.ts';
import { targetsOf } from '../../../../src/drill/targets.ts';
import { drawScenario } from '../../../../src/drill/scenario.ts';
import { seeded } from '../../../../src/rules/random.ts';
import type { DecisionMap } from '../../../../src/drill/types.ts';
import { along, letterOf, mapShapes } from '../../../../src/app/parts/decision-map-geometry.ts';
import { mapWords, outcomeAt, sayMap } from '../../../../src/app/parts/decision-map-words.ts';
import { startingInputs } from '../../../../src/app/prompt/map-inputs.ts';
import { shippedDecks } from './shipped-decks.ts';

const size = { widthPx: 400, heightPx: 300 };

/** Left of 40 one answer, right of it another, and at the bottom right a small corner of a third. */
const byHand: DecisionMap = {
  x: 'closure',
  y: 'altitude',
  xRange: interval(0, 100),
  yRange: interval(0, 300),
  cells: [
    { x: interval(0, 40, false, true), y: interval(0, 300), outcome: 0 },
    { x: interval(40, 100), y: interval(30, 300), outcome: 1 },
    { x: interval(40, 90), y: interval(0, 30, false, true), outcome: 1 },
    { x: interval(90, 100, true, false), y: interval(0, 30, false, true), outcome: 2 },
  ],
  outcomes: [
    { actions: { pitch: 'nose-up' }, overriding: false, rules: ['a/b'] },
    { actions: { pitch: 'hold' }, overriding: false, rules: ['a/c'] },
    { actions: { call: 'go-around' }, overriding: true, rules: ['a/d'] },
  ],
};

describe('the shapes of a decision map', () => {
  const words = [['nose up'], ['hold the nose'], ['go around']];

  test('altitude grows upwards, the other input to the right', () => {
    const { fills } = mapShapes(byHand, size, words);
    expect(fills[0]).toEqual({ x: 0, y: 0, width: 160, height: 300, outcome: 0 });
    expect(fills[3]).toMatchObject({ x: 360, y: 270, width: 40, height: 30 });
  });

  test('lines stand only where something else is asked for', () => {
    const { lines } = mapShapes(byHand, size, words);
    const vertical = lines.filter(({ x1, x2 }) => x1 === x2);
    expect(new Set(vertical.map(({ x1 }) => x1))).toEqual(new Set([160, 360]));
    const lengthAt = (x: number) =>
      vertical.filter(({ x1 }) => x1 === x).reduce((sum, { y1, y2 }) => sum + y2 - y1, 0);
    expect(lengthAt(160)).toBeCloseTo(300);
    expect(lengthAt(360)).toBeCloseTo(30);
  });

  test('a region has its word; one too small for it has its letter', () => {
    const said = mapShapes(byHand, size, words).words.map(({ outcome, lines, isLetter }) => [
      outcome,
      lines.join(' '),
      isLetter,
    ]);
    expect(said).toContainEqual([0, 'nose up', false]);
    expect(said).toContainEqual([1, 'hold the nose', false]);
    expect(said).toContainEqual([2, letterOf(2), true]);
  });

  test('words keep off the marks', () => {
    const mark = { x: 80, y: 150 };
    const word = mapShapes(byHand, size, words, [mark]).words.find(({ outcome }) => outcome === 0)!;
    expect(Math.abs(word.x - mark.x) > word.width / 2 || Math.abs(word.y - mark.y) > word.height / 2).toBe(
      true,
    );
  });

  test('single values, which have no width, are left to the words', () => {
    const withPoint = {
      ...byHand,
      cells: [...byHand.cells, { x: interval(40, 40), y: interval(0, 300), outcome: 2 }],
    };
    expect(mapShapes(withPoint, size, words).fills).toHaveLength(4);
  });
});

describe.each(shippedDecks.map((deck) => [deck.title, compileRules(deck).procedure!] as const))(
  'the maps of “%s”',
  (_, procedure) => {
    const { rules } = targetsOf(procedure);
    const drawn = fc
      .record({ target: fc.constantFrom(...rules), seed: fc.nat(), x: fc.nat(9), y: fc.nat(9) })
      .map(({ target, seed, ...picks }) => {
        const { phase, state } = drawScenario(procedure, target, 'near', seeded(seed))!;
        const ids = Object.keys(state);
        const x = ids[picks.x % ids.length]!;
        const others = ids.filter((id) => id !== x);
        const y = others[picks.y % others.length]!;
        return { phase, state, map: decisionMap(procedure, phase, state, x, y) };
      });

    test('cover the whole area once', () => {
      fc.assert(
        fc.property(drawn, ({ map }) => {
          const { fills } = mapShapes(map, size, []);
          const area = fills.reduce((sum, { width, height }) => sum + width * height, 0);
          expect(area).toBeCloseTo(size.widthPx * size.heightPx, 3);
        }),
        { numRuns: 60 },
      );
    });

    test('have every word inside a region that asks for it', () => {
      fc.assert(
        fc.property(drawn, ({ phase, map }) => {
          const words = mapWords(procedure.deck, phase, map);
          for (const { x, y, width, height, outcome } of mapShapes(map, size, words.outcomes).words)
            for (const [dx, dy] of [
              [0, 0],
              [-0.49, -0.49],
              [0.49, 0.49],
              [-0.49, 0.49],
              [0.49, -0.49],
            ] as const)
              expect(outcomesAt(map, x + dx * width, y + dy * height)).toContain(outcome);
        }),
        { numRuns: 60 },
      );
    });

    test('say of the state what the rules ask for', () => {
      fc.assert(
        fc.property(drawn, ({ phase, state, map }) => {
          const outcome = map.outcomes[outcomeAt(map, state[map.x]!, state[map.y]!)]!;
          expect(outcome.actions).toEqual(decide(procedure, phase, state).actions);
          const words = mapWords(procedure.deck, phase, map);
          expect(new Set(words.outcomes.map((phrases) => phrases.join())).size).toBe(map.outcomes.length);
          for (const sentence of sayMap(procedure.deck, map, words, state)) expect(sentence).toMatch(/\.$/);
        }),
        { numRuns: 60 },
      );
    });
  },
);

/** What is asked for where a pixel lies; both sides' where it lies on a line. */
function outcomesAt(map: DecisionMap, xPx: number, yPx: number): number[] {
  return map.cells
    .filter(
      ({ x, y }) =>
        along(x.lo, map.xRange, size.widthPx) <= xPx &&
        xPx <= along(x.hi, map.xRange, size.widthPx) &&
        size.heightPx - along(y.hi, map.yRange, size.heightPx) <= yPx &&
        yPx <= size.heightPx - along(y.lo, map.yRange, size.heightPx),
    )
    .map(({ outcome }) => outcome);
}

describe('the inputs a map begins with', () => {
  test('are those that matter most', () => {
    expect(startingInputs(['closure', 'altitude'], { closure: 1, altitude: 2 }, null)).toEqual([
      'closure',
      'altitude',
    ]);
    expect(startingInputs(null, {}, { a: 1 })).toBeNull();
  });

  test('include the one in which a twin differs', () => {
    const state = { closure: 1, altitude: 2, sink: 3 };
    expect(startingInputs(['closure', 'altitude'], state, { ...state, sink: 4 })).toEqual([
      'sink',
      'altitude',
    ]);
    expect(startingInputs(['closure', 'altitude'], state, { ...state, altitude: 4 })).toEqual([
      'closure',
      'altitude',
    ]);
  });
});
