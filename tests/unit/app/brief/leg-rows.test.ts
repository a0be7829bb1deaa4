import { describe, expect, it } from 'vitest';
import { legRows, planNotes, saySeconds, saySink } from '../../../../src/app/pages/brief/leg-rows.ts';
import { twoGates, type GateSketch } from '../../motion/two-gates.ts';
import { shippedDecks } from '../parts/shipped-decks.ts';

const from: GateSketch = { aheadFt: 0, rightFt: 0, courseDeg: 0, airspeed: 135, height: 650 };
const round: GateSketch = { aheadFt: 0, rightFt: -6000, courseDeg: 180, airspeed: 135, height: 350 };
const cellsOf = (...given: Parameters<typeof twoGates>) => legRows(twoGates(...given), {})[0]!.cells!;

describe('the rows of the legs', () => {
  it('are one between each gate and the next, with their numbers', () => {
    for (const deck of shippedDecks) {
      const rows = legRows(deck, {});
      expect(rows.map(({ from, to }) => [from.number, to.number])).toEqual(
        deck.gates.slice(1).map((_, i) => [i + 1, i + 2]),
      );
      expect(rows.map(({ to }) => to.label)).toEqual(deck.gates.slice(1).map(({ label }) => label));
    }
  });

  it('are all worked out in the decks that come with the app, within their limits', () => {
    for (const deck of shippedDecks)
      for (const { cells, why, to } of legRows(deck, {})) {
        expect(why, to.label).toBeNull();
        expect(Object.values(cells!).filter((cell) => cell?.over)).toEqual([]);
      }
  });

  // 135 kt are 69.45 m/s, 3,000 ft are 914.4 m: tan φ = 69.45² / (9.80665 · 914.4), so 28.3° and 1.136 g;
  // π · 914.4 m take 41.4 s; 300 ft in these are 435 ft/min.
  it('say time, way, sink and turn', () => {
    expect(cellsOf(from, round)).toMatchObject({
      time: { text: '41\u00a0s', over: null },
      distance: { text: '1.6\u00a0nm' },
      height: { text: '440', full: '440\u00a0ft/min' },
      airspeed: { text: 'steady' },
      bank: { text: '28° left' },
      load: { text: '1.14\u00a0g' },
    });
  });

  // A mean of 90 kt over 9,114 ft, 1.5 nm: a minute, in which 60 kt go.
  it('say what of the airspeed goes or comes in a second', () => {
    const [fast, slow] = [
      { ...from, airspeed: 120 },
      { ...from, aheadFt: 9114, airspeed: 60 },
    ];
    expect(cellsOf(fast, slow).airspeed).toMatchObject({ text: 'loses 1.0', full: 'loses 1.0\u00a0kt/s' });
    expect(cellsOf({ ...fast, airspeed: 60 }, { ...slow, airspeed: 120 }).airspeed!.text).toBe('gains 1.0');
  });

  it('say nothing of a turn on a straight leg', () => {
    const { bank, load, radius } = cellsOf(from, { ...from, aheadFt: 5000 });
    expect([bank, load, radius]).toEqual([null, null, null]);
  });

  it('say which limit is passed, to a tenth of a degree', () => {
    const { bank, height, time } = cellsOf(from, round, { most: { bankDeg: 20, sinkFtMin: 400 } });
    expect(bank!.text).toMatch(/^28\.\d° left$/);
    expect(bank!.over).toBe('over 20°');
    expect(height!.over).toBe('over 400');
    expect(time.over).toBeNull();
  });

  it('say why a leg can’t be worked out', () => {
    const { airspeed: _, ...still } = round;
    expect(legRows(twoGates(from, still), {})[0]).toMatchObject({
      cells: null,
      why: 'no speed given at Other',
    });
  });

  it('follow the day', () => {
    const marram = shippedDecks.find(({ id }) => id === 'marram-recovery')!;
    const timeOf = (day: Record<string, number>) => legRows(marram, day)[0]!.leg.flight!.seconds;
    expect(timeOf({ 'wind-speed': 30 })).toBeGreaterThan(timeOf({}));
    expect(timeOf({ 'ship-speed': 0 })).toBeLessThan(timeOf({}));
  });
});

describe('the words', () => {
  it.each([
    [9.4, '9\u00a0s'],
    [89, '89\u00a0s'],
    [90.2, '1\u00a0min 30\u00a0s'],
    [125, '2\u00a0min 5\u00a0s'],
  ])('of %f seconds', (seconds, words) => expect(saySeconds(seconds)).toBe(words));

  it.each([
    [534, '530'],
    [-684, '680 up'],
    [20, 'level'],
    [-20, 'level'],
  ])('of a mean sink of %f ft/min', (ftMin, words) => expect(saySink(ftMin).text).toBe(words));

  it('beside a turn are its time and bank, or the time alone where there is less room', () => {
    expect(planNotes(twoGates(from, round), {})).toEqual([['41\u00a0s, 28°', '41\u00a0s']]);
    expect(planNotes(twoGates(from, { ...from, aheadFt: 5000 }), {})).toEqual([['22\u00a0s']]);
  });
});
