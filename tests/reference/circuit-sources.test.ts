/**
 * The circuit deck against the published values it names. Every deck value whose source is a published
 * one must stand here; what is from memory must say so in the deck.
 */
import { describe, expect, test } from 'vitest';
import { gateOf, sourceOf, tableOf } from '../../src/deck/lookup.ts';
import type { Band } from '../../src/deck/types.ts';
import { publishedValue, publishedValues } from './published-values.ts';
import { bandOf, shippedDeck } from './shipped-deck.ts';
import { ftPerNm, ftPerSecondPerKt } from './turn-in-wind.ts';

const deck = shippedDeck('light-aircraft-circuit');
const band = (gate: string, quantity: string) => bandOf(gateOf(deck, gate), quantity);
const condition = (table: string, rule: string, input: string) =>
  tableOf(deck, table).rules.find((candidate) => candidate.id === rule)!.when[input];

interface Claim {
  readonly row: string;
  /** Where in the deck, in words. */
  readonly where: string;
  readonly value: number;
  /** The source the deck gives for it; null where it stands in the words of another value. */
  readonly source: string | null;
}

function claim(row: string, gate: string, quantity: string, pick: (band: Band) => number): Claim {
  const found = band(gate, quantity);
  return { row, where: `${gate}/${quantity}`, value: pick(found), source: found.source ?? null };
}

function noteClaim(row: string, id: string): Claim {
  const note = deck.notes!.find((candidate) => candidate.id === id)!;
  return { row, where: `note/${id}`, value: Number.parseFloat(note.answer), source: note.source ?? null };
}

const claims: readonly Claim[] = [
  claim('pattern-height-propeller', 'downwind-start', 'height', (b) => b.target),
  claim('pattern-height-propeller', 'downwind', 'height', (b) => b.target),
  claim('pattern-height-propeller', 'abeam', 'height', (b) => b.target),
  claim('crosswind-below-pattern', 'crosswind-turn', 'height', (b) => 1000 - b.floor!),
  claim('final-complete', 'final', 'final-length', (b) => b.floor!),
  claim('downwind-nearest', 'downwind', 'spacing', (b) => b.adequate[0]),
  claim('downwind-farthest', 'downwind', 'spacing', (b) => b.adequate[1]),
  claim('base-turn-angle', 'base-turn', 'behind-wing', (b) => b.target),
  claim('stabilised-sink', 'stabilised-gate', 'sink', (b) => b.ceiling!),
  claim('stabilised-sink', 'base', 'sink', (b) => b.ceiling!),
  claim('standard-approach-fast', 'stabilised-gate', 'airspeed', (b) => b.adequate[1] - b.target),
  claim('standard-approach-slow', 'stabilised-gate', 'airspeed', (b) => b.target - b.adequate[0]),
  claim('standard-touchdown', 'touchdown', 'past-point', (b) => b.adequate[1]),
  claim('standard-touchdown-short', 'touchdown', 'past-point', (b) => b.desired[1]),
  noteClaim('stabilised-circling-height', 'wings-level-by'),
  noteClaim('entry-angle', 'entry-angle'),
  noteClaim('load-factor-60', 'load-at-sixty'),
  noteClaim('descent-3-at-90', 'three-degrees'),
];

describe('deck values and the published ones', () => {
  test.each(claims)('$where is $row', ({ row, value }) => {
    const published = publishedValue(row);
    expect(Math.abs(value - published.value)).toBeLessThanOrEqual(published.tolerance);
  });

  test.each(claims)('$where says how sure it is', ({ row, source }) => {
    const { status } = publishedValue(row);
    const named = sourceOf(deck, source ?? undefined);
    if (status === 'printed') expect(named.kind).toBe('published');
    else expect(`${named.title} ${named.place}`).toContain('from memory');
  });

  test('every gate value that names a published source is compared', () => {
    const published = deck.gates.flatMap((gate) =>
      Object.entries(gate.values)
        .filter(([, value]) => sourceOf(deck, value.source).kind === 'published')
        .map(([quantity]) => `${gate.id}/${quantity}`),
    );
    const compared = claims.map(({ where }) => where);
    expect(published.filter((where) => !compared.includes(where))).toEqual([]);
    expect(published).not.toEqual([]);
  });

  test('every note that names a published source is compared', () => {
    const published = deck.notes!.filter((note) => sourceOf(deck, note.source).kind === 'published');
    expect(published.map((note) => `note/${note.id}`).sort()).toEqual(
      claims
        .filter(({ where }) => where.startsWith('note/'))
        .map(({ where }) => where)
        .sort(),
    );
  });

  test.each([
    ['downwind-start', 'height', 'standard-height'],
    ['downwind', 'height', 'standard-height'],
    ['abeam', 'height', 'standard-height'],
    ['downwind', 'airspeed', 'standard-speed'],
    ['abeam', 'airspeed', 'standard-speed'],
  ])('%s %s is adequate within the test standard', (gate, quantity, row) => {
    const { target, adequate } = band(gate, quantity);
    const tolerance = publishedValue(row).value;
    expect(adequate).toEqual([target - tolerance, target + tolerance]);
  });

  test('a band that borrows the test standard says that it is from memory', () => {
    expect(band('downwind', 'height').because).toContain('from memory');
    expect(band('downwind', 'airspeed').because).toContain('from memory');
  });

  test('the go-around limits are those of the stabilised approach', () => {
    const table = 'stabilised-go-around';
    const height = publishedValue('stabilised-circling-height').value;
    const sink = publishedValue('stabilised-sink').value;
    const over = publishedValue('stabilised-over-reference').value;
    const referenceSpeed = band('threshold', 'airspeed').desired[0];
    expect(condition(table, 'sink-not-stable', 'height')).toBe(`<= ${height}`);
    expect(condition(table, 'sink-not-stable', 'sink')).toBe(`> ${sink}`);
    expect(condition(table, 'speed-not-stable', 'airspeed')).toBe(
      `< ${referenceSpeed}, > ${referenceSpeed + over}`,
    );
    expect(sourceOf(deck, tableOf(deck, table).source).kind).toBe('published');
    for (const rule of ['banked-low', 'turn-left-low'])
      expect(condition('wings-level-go-around', rule, 'height')).toBe(`< ${height}`);
    for (const [turn, final] of [
      ['turn-speed-low', 'speed-not-stable'],
      ['turn-sink-low', 'sink-not-stable'],
    ])
      for (const input of ['height', 'airspeed', 'sink'])
        expect(condition('wings-level-go-around', turn!, input)).toBe(condition(table, final!, input));
    expect(sourceOf(deck, tableOf(deck, 'wings-level-go-around').source).kind).toBe('published');
  });

  test('the spacing table holds the handbook’s half mile to a mile', () => {
    const nearest = publishedValue('downwind-nearest').value;
    const farthest = publishedValue('downwind-farthest').value;
    expect(condition('downwind-spacing', 'spaced', 'spacing')).toBe(`[${nearest}..${farthest}]`);
  });

  test('the runway markings stand where they are remembered, and the plate says so', () => {
    const plate = deck.plates!.find(({ id }) => id === 'runway')!;
    const thresholdAt = Math.min(
      ...plate.shapes.flatMap((s) => (s.shape === 'outline' ? s.points.map(([x]) => x) : [])),
    );
    const starts = (id: string, lengthFt: number) =>
      plate.spots.find((spot) => spot.id === id)!.at[0] - lengthFt / 2 - thresholdAt;
    expect(Math.abs(starts('aiming-point', 150) - publishedValue('marking-aiming-point').value)).toBeLessThan(
      1,
    );
    expect(
      Math.abs(starts('touchdown-zone', 75) - publishedValue('marking-touchdown-zone').value),
    ).toBeLessThan(1);
    expect(sourceOf(deck, plate.source).place).toContain('from memory');
  });

  test('no row of the published values is stated twice', () => {
    const ids = publishedValues.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });
});

describe('the circuit agrees with itself', () => {
  const at = (gate: string) => gateOf(deck, gate).position;
  /** The height asked at a gate, or the one by which it is recognised. */
  const heightAt = (id: string) => {
    const { values, detect } = gateOf(deck, id);
    if (values.height) return values.height.target;
    if (detect?.kind === 'falling' && detect.quantity === 'height') return detect.value;
    throw new Error(`Gate “${id}” has no height.`);
  };

  test('the positions give the spacing, the 45 degrees and the length of final that are called', () => {
    expect(-at('downwind').rightFt / ftPerNm).toBeCloseTo(band('downwind', 'spacing').target, 2);
    const { aheadFt, rightFt } = at('base-turn');
    expect((Math.atan2(-aheadFt, -rightFt) * 180) / Math.PI).toBeCloseTo(
      band('base-turn', 'behind-wing').target,
      0,
    );
    expect(Math.abs(-at('final').aheadFt / ftPerNm - band('final', 'final-length').target)).toBeLessThan(
      0.05,
    );
  });

  test('the crosswind turn comes beyond the departure end', () => {
    expect(at('crosswind-turn').aheadFt).toBeGreaterThan(at('departure-end').aheadFt);
  });

  test.each(['downwind', 'abeam', 'base'])('%s is recognised by the bearing its position has', (id) => {
    const { position, detect } = gateOf(deck, id);
    if (detect?.kind !== 'bearing') throw new Error(`Gate “${id}” is not recognised by a bearing.`);
    const toThreshold = (Math.atan2(-position.rightFt, -position.aheadFt) * 180) / Math.PI;
    const relative = (toThreshold - position.courseDeg + 720) % 360;
    expect(Math.abs(relative - detect.relativeDeg)).toBeLessThan(2);
  });

  test('the cue on base says where its position shows the threshold', () => {
    expect(gateOf(deck, 'base').cue).toContain('three quarters of the way from the nose to the left wing');
    const { aheadFt, rightFt, courseDeg } = at('base');
    const leftOfNose = courseDeg - (Math.atan2(-rightFt, -aheadFt) * 180) / Math.PI;
    expect(leftOfNose / 90).toBeCloseTo(0.75, 1);
  });

  test('no gate is recognised by a value that it asks for', () => {
    const circular = deck.gates.filter(
      ({ detect, values }) => detect && 'quantity' in detect && values[detect.quantity],
    );
    expect(circular.map(({ id }) => id)).toEqual([]);
  });

  test('a target leaves room to its floor', () => {
    const onTheFloor = deck.gates.flatMap(({ id, values }) =>
      Object.entries(values)
        .filter(([, { target, floor, ceiling }]) => target === floor || target === ceiling)
        .map(([quantity]) => `${id}/${quantity}`),
    );
    expect(onTheFloor).toEqual([]);
  });

  test('a go-around over the runway begins where the test standard ends, and the plate points there', () => {
    const most = publishedValue('standard-touchdown').value;
    const limit = Number(condition('landing-go-around', 'floated', 'past-point')!.replace('> ', ''));
    expect(limit).toBeGreaterThan(most);
    expect(limit).toBeLessThanOrEqual(most + 200);
    const plate = deck.plates!.find(({ id }) => id === 'runway')!;
    const thresholdAt = 200;
    const touchdownPointFt = at('touchdown').aheadFt - band('touchdown', 'past-point').target;
    expect(touchdownPointFt).toBe(publishedValue('marking-aiming-point').value);
    expect(plate.spots.find(({ id }) => id === 'too-long')!.at[0] - thresholdAt).toBe(
      touchdownPointFt + limit,
    );
  });

  test('the heights come down from abeam to the threshold', () => {
    const heights = ['abeam', 'base-turn', 'base', 'final', 'stabilised-gate', 'threshold'].map(heightAt);
    expect(heights).toEqual([...heights].sort((a, b) => b - a));
  });

  // Lengths along the path: straight legs and quarter turns of 1,070 ft (base) and 930 ft (final) radius,
  // which is 25 degrees of bank at 75 and 70 kt (V²/(11.29 tan bank)).
  test.each([
    ['abeam', 'base-turn', 4560],
    ['base-turn', 'base', (1070 * Math.PI) / 2 + 4560 - 1070 - 2200],
    ['base', 'final', 2200 - 930 + (930 * Math.PI) / 2],
    ['final', 'stabilised-gate', 800],
    ['stabilised-gate', 'threshold', 3900],
  ])('from %s to %s the sink stays between 350 and 600 ft/min', (from, to, lengthFt) => {
    const meanKt = (band(from, 'airspeed').target + band(to, 'airspeed').target) / 2;
    const seconds = lengthFt / (meanKt * ftPerSecondPerKt);
    const sink = ((heightAt(from) - heightAt(to)) / seconds) * 60;
    expect(sink).toBeGreaterThan(350);
    expect(sink).toBeLessThan(600);
  });
});
