import { describe, expect, it } from 'vitest';
import { ruleCodes } from '../../../src/rules/codes.ts';
import { deckCodes } from '../../../src/deck/codes.ts';
import { motionCodes, type MotionCode } from '../../../src/motion/codes.ts';
import { judge } from '../../../src/motion/judge.ts';
import { legFindings } from '../../../src/motion/leg-findings.ts';
import { bestLeg } from '../../../src/motion/leg-limits.ts';
import { placed, readProcedure } from '../../../src/rules/read.ts';
import { turnRadiusFt } from '../../../src/motion/turn.ts';
import { documentedCodes } from '../deck/documented-codes.ts';
import { edited } from '../deck/edited.ts';
import { fixtureDeckText } from '../deck/fixture.ts';
import { twoGates, type GateSketch } from './two-gates.ts';

const calm = { ahead: 0, right: 0 };
const from: GateSketch = { aheadFt: 0, rightFt: 0, courseDeg: 0, airspeed: 150, height: 650 };
/** Half a turn to the left, as wide as 38° of bank at 150 kt make it. */
const round: GateSketch = {
  aheadFt: 0,
  rightFt: -2 * turnRadiusFt(150, 38),
  courseDeg: 180,
  airspeed: 150,
  height: 650,
};
const most = { bankDeg: 30 };

describe('a leg that the aeroplane can’t fly', () => {
  it('is an error that names both gates, what it takes, and by how much that is too much', () => {
    expect(legFindings(twoGates(from, round, { most }))).toEqual([
      {
        code: 'leg-not-flyable',
        severity: 'error',
        path: ['gates', 1, 'position'],
        message:
          'A leg must be flown within the aeroplane’s limits, from “One” to “Other” it takes 38° of bank, 8° more than the 30° stated, whatever adequate values are flown; move the gates apart or lower the speeds, or raise the limit in “flying”.',
      },
    ]);
  });

  it('counts the best that the adequate bands allow', () => {
    // At 145 instead of 150 kt: tan φ goes with the square of the speed, tan 38° · (145/150)² is 36.1°.
    const [found] = legFindings(twoGates({ ...from, adequate: 5 }, { ...round, adequate: 5 }, { most }));
    expect(found).toMatchObject({ code: 'leg-not-flyable', severity: 'error' });
    expect(found!.message).toContain('it takes 36.1° of bank, 6.1° more than the 30° stated');
  });

  it.each([
    [
      'a load factor',
      { loadFactor: 1.2 },
      {},
      'a load factor of 1.27\u00a0g, 0.07\u00a0g more than the 1.2\u00a0g stated',
    ],
    [
      'a deceleration',
      { decelerationKtS: 1 },
      { airspeed: 100 },
      'a loss of 1.2\u00a0kt a second, 0.2\u00a0kt more than the 1\u00a0kt stated',
    ],
    ['an acceleration', { accelerationKtS: 1 }, { airspeed: 200 }, 'a gain of'],
    ['a sink', { sinkFtMin: 600 }, { height: 100 }, 'a mean sink of'],
    ['a climb', { climbFtMin: 600 }, { height: 1500 }, 'a mean climb of'],
  ])('may ask for too much of %s', (_name, limit, change, words) => {
    const found = legFindings(twoGates(from, { ...round, ...change }, { most: limit }));
    expect(found.map(({ code }) => code)).toEqual(['leg-not-flyable']);
    expect(found[0]!.message).toContain(words);
  });

  it('is found for each limit that it passes', () => {
    const low = { ...round, height: 0 };
    const found = legFindings(twoGates(from, low, { most: { ...most, sinkFtMin: 600 } }));
    expect(found.map(({ path }) => path.at(-1))).toEqual(['position', 'height']);
  });

  it('is judged by limits of its own where the deck gives it some', () => {
    const legs = [{ from: 'one', most: { bankDeg: 45 } }];
    expect(legFindings(twoGates(from, round, { most, legs }))).toEqual([]);
  });

  it('is none without limits, and none without “flying”', () => {
    expect(legFindings(twoGates(from, round))).toEqual([]);
    const { flying: _, ...deck } = twoGates(from, round, { most });
    expect(legFindings(deck)).toEqual([]);
  });
});

describe('a leg that can be flown only off its targets', () => {
  it('is a warning that says with which speeds it can be', () => {
    const wide = { adequate: 40 };
    const [found, ...more] = legFindings(twoGates({ ...from, ...wide }, { ...round, ...wide }, { most }));
    expect(more).toEqual([]);
    expect(found).toMatchObject({ code: 'leg-not-at-targets', severity: 'warning' });
    expect(found!.message).toMatch(
      /^Targets should be flown .*, from “One” to “Other” they take 38° of bank, 8° more than the 30° stated; airspeeds of \d+ and \d+ kt would do/,
    );
  });

  it('is so with the speeds it says', () => {
    const wide = { adequate: 40 };
    const deck = twoGates({ ...from, ...wide }, { ...round, ...wide }, { most });
    const [first, last] = bestLeg(deck, 0, calm)!.airspeedKt!;
    const there = twoGates({ ...from, airspeed: first }, { ...round, airspeed: last }, { most });
    expect(legFindings(there)).toEqual([]);
  });

  it('is a sink that the ends of the adequate heights make good', () => {
    // 550 ft in 32 s are 1,041 ft/min; 510 ft at 130 kt, 836; 350 ft at 50 kt, 221.
    const deck = (adequate: number, sinkFtMin: number) =>
      twoGates({ ...from, adequate }, { ...round, height: 100, adequate }, { most: { sinkFtMin } });
    const sinkOf = (deck: Parameters<typeof legFindings>[0]) => legFindings(deck).map(({ code }) => code);
    expect(sinkOf(deck(0, 700))).toEqual(['leg-not-flyable']);
    expect(sinkOf(deck(20, 700))).toEqual(['leg-not-flyable']);
    expect(sinkOf(deck(100, 700))).toEqual(['leg-not-at-targets']);
    expect(sinkOf(deck(100, 1100))).toEqual([]);
  });
});

/** For each code an edit of the fixture deck that makes it faulty so, and the line it is found in. */
const faults: Readonly<Record<MotionCode, readonly [from: string, to: string, at: string]>> = {
  'leg-not-flyable': ['from: far, seconds: 35', 'from: far, seconds: 20', '{ target: 300'],
  'leg-not-at-targets': ['from: far, seconds: 35', 'from: far, seconds: 28', '{ target: 300'],
  'leg-not-worked-out': [
    '    - { from: middle, seconds: 20, most: { sinkFtMin: 900 } }\n',
    '',
    'altitude: { target: 300',
  ],
};

describe('every code of the physics', () => {
  it.each(Object.entries(faults))('%s has its place in the text', (code, [piece, by, at]) => {
    const text = edited(piece, by);
    const { loaded, procedure } = readProcedure(text);
    const found = placed(loaded, judge(procedure!));
    expect(found.map((finding) => finding.code)).toEqual([code]);
    const [finding] = found;
    const line = text.split('\n')[finding!.at!.line - 1]!;
    expect(line.slice(finding!.at!.column - 1)).toMatch(new RegExp(`^${at.replace('{', '\\{')}`));
    expect(finding!.where).toContain('Middle gate');
    expect(documentedCodes.get(code)).toContain(finding!.severity);
    const own = finding!.message.replace(/“[^”]*”/g, '…');
    expect(own).toMatch(/^[A-Z“…].*[,;:] .+; .+\.$/);
    expect(own).not.toMatch(/[.!?] [A-Z]/);
  });

  it('finds nothing in the deck as it is', () => {
    expect(judge(readProcedure(fixtureDeckText).procedure!)).toEqual([]);
  });

  it.each(motionCodes)('%s is no other folder’s', (code) => {
    expect([...deckCodes, ...ruleCodes] as readonly string[]).not.toContain(code);
  });
});

describe('a leg that can’t be worked out', () => {
  const { airspeed: _, ...still } = from;
  it.each([
    [
      'has no speed at a gate',
      still,
      'A leg is worked out from the speeds at both its gates, from “One” to “Other” there is none at “Other”; add a band of it, or say the “seconds” of the leg in “flying”.',
    ],
    [
      'lies aside',
      { ...from, rightFt: 500 },
      'the next gate lies aside, behind or over the same point; check positions and courses',
    ],
    [
      'can’t be turned',
      { ...from, aheadFt: -900, rightFt: 900, courseDeg: 90 },
      'no turn joins courses 0° and 90° where the gates lie',
    ],
  ])('is a warning where it %s', (_name, to, words) => {
    const found = legFindings(twoGates(from, to));
    expect(found).toMatchObject([{ code: 'leg-not-worked-out', severity: 'warning' }]);
    expect(found[0]!.message).toContain(words);
  });
});
