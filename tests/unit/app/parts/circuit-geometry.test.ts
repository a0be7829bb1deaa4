import { describe, expect, it } from 'vitest';
import {
  layoutCircuit,
  type CircuitWanted,
  type GateLabel,
} from '../../../../src/app/parts/circuit-geometry.ts';
import { overlap } from '../../../../src/app/parts/label-placement.ts';
import { groundLinesOf, referencePlate } from '../../../../src/app/parts/reference-outline.ts';
import type { Deck } from '../../../../src/deck/types.ts';
import { shippedDecks } from './shipped-decks.ts';

const radius = 11;

function wantedFor(deck: Deck, widthPx: number, heightPx: number, withLabels = true): CircuitWanted {
  const plate = referencePlate(deck);
  return {
    gates: deck.gates,
    reference: plate ? groundLinesOf(plate) : [],
    widthPx,
    heightPx,
    markerRadiusPx: radius,
    labelSizePx: 13,
    labels: new Map(
      withLabels
        ? deck.gates.map((gate): [string, GateLabel] => [gate.id, { name: gate.label, note: '1,000 ft' }])
        : [],
    ),
  };
}

const sizes = [
  [300, 440],
  [358, 520],
  [480, 600],
  [560, 620],
  [720, 640],
  // As on a printed sheet.
  [491, 325],
] as const;
const cases = shippedDecks.flatMap((deck) => sizes.map(([w, h]) => ({ title: deck.title, deck, w, h })));

describe.each(cases)('the circuit of “$title” in $w by $h px', ({ deck, w, h }) => {
  const layout = layoutCircuit(wantedFor(deck, w, h));

  it('keeps every mark inside and apart from the others', () => {
    layout.gates.forEach((gate, i) => {
      expect(gate.x).toBeGreaterThanOrEqual(radius);
      expect(gate.x).toBeLessThanOrEqual(w - radius);
      expect(gate.y).toBeGreaterThanOrEqual(radius);
      expect(gate.y).toBeLessThanOrEqual(h - radius);
      for (const other of layout.gates.slice(i + 1))
        expect(Math.hypot(gate.x - other.x, gate.y - other.y)).toBeGreaterThanOrEqual(2 * radius - 0.1);
    });
  });

  it('names every gate without one name over another, over a mark or outside', () => {
    const labels = layout.gates.map((gate) => gate.label!);
    expect(labels).toHaveLength(deck.gates.length);
    labels.forEach((label, i) => {
      for (const other of labels.slice(i + 1)) expect(overlap(label, other)).toBe(0);
      expect(label.x).toBeGreaterThanOrEqual(-0.5);
      expect(label.x + label.width).toBeLessThanOrEqual(w + 0.5);
      expect(label.y).toBeGreaterThanOrEqual(-0.5);
      expect(label.y + label.height).toBeLessThanOrEqual(h + 0.5);
      for (const gate of layout.gates) {
        const inside =
          gate.x > label.x &&
          gate.x < label.x + label.width &&
          gate.y > label.y &&
          gate.y < label.y + label.height;
        expect(inside).toBe(false);
      }
    });
  });

  it('keeps left and right, ahead and behind as they are on the ground', () => {
    deck.gates.forEach((one, i) => {
      deck.gates.forEach((other, j) => {
        const [p, q] = [layout.gates[i]!, layout.gates[j]!];
        if (one.position.rightFt - other.position.rightFt > 200) expect(p.x).toBeGreaterThan(q.x);
        if (one.position.aheadFt - other.position.aheadFt > 200) expect(p.y).toBeLessThan(q.y);
      });
    });
  });

  it('gives each gate an area of its own to be pressed', () => {
    layout.gates.forEach((gate, i) => {
      for (const other of layout.gates.slice(i + 1))
        expect(Math.hypot(gate.x - other.x, gate.y - other.y)).toBeGreaterThanOrEqual(
          gate.reachPx + other.reachPx - 0.1 > 2 * radius ? gate.reachPx : 2 * radius - 0.1,
        );
    });
  });
});

describe('the scale of the circuit', () => {
  const square = (sideFt: number): CircuitWanted => ({
    ...wantedFor(shippedDecks[0]!, 400, 400, false),
    reference: [],
    gates: [
      { id: 'a', position: { aheadFt: 0, rightFt: 0, courseDeg: 0 } },
      { id: 'b', position: { aheadFt: sideFt, rightFt: 0, courseDeg: 0 } },
      { id: 'c', position: { aheadFt: sideFt, rightFt: -sideFt, courseDeg: 180 } },
      { id: 'd', position: { aheadFt: 0, rightFt: -sideFt, courseDeg: 180 } },
    ],
  });

  it('is true where the gates can be told apart that way', () => {
    const layout = layoutCircuit(square(5000));
    expect(layout.toScale).toBe(true);
    const [a, b, c] = layout.gates;
    expect(a!.y - b!.y).toBeCloseTo(b!.x - c!.x, 5);
  });

  it('is given up where a wingspan and miles must share the picture', () => {
    const marram = shippedDecks.find((deck) => deck.id === 'marram-recovery')!;
    expect(layoutCircuit(wantedFor(marram, 560, 620)).toScale).toBe(false);
  });

  it('sets gates over one point under each other, in order', () => {
    const marram = shippedDecks.find((deck) => deck.id === 'marram-recovery')!;
    const { gates } = layoutCircuit(wantedFor(marram, 300, 440, false));
    const [over, down] = ['over-spot', 'touchdown'].map((id) => gates.find((gate) => gate.id === id)!);
    expect(down!.y).toBeGreaterThan(over!.y);
    expect(Math.abs(down!.x - over!.x)).toBeLessThan(3);
  });
});

describe('what stands at the reference point', () => {
  it('is turned so that its bow points up and the spot is the origin', () => {
    const marram = shippedDecks.find((deck) => deck.id === 'marram-recovery')!;
    const [hull] = groundLinesOf(referencePlate(marram)!);
    // The plate is drawn bow to the right, spot 4 at (300, 150): its bow is 428 ft ahead of the spot.
    expect(Math.max(...hull!.points.map((point) => point.aheadFt))).toBeCloseTo(428);
    expect(Math.min(...hull!.points.map((point) => point.aheadFt))).toBeCloseTo(-260);
    expect(Math.min(...hull!.points.map((point) => point.rightFt))).toBeCloseTo(-50);
    expect(Math.max(...hull!.points.map((point) => point.rightFt))).toBeCloseTo(50);
  });

  it('is drawn in feet from a plate in metres', () => {
    const lines = groundLinesOf({
      id: 'pad',
      label: 'Pad',
      size: [100, 100],
      unit: 'm',
      reference: { at: [50, 50], courseDeg: 0 },
      shapes: [
        {
          shape: 'outline',
          points: [
            [50, 0],
            [60, 50],
            [40, 50],
          ],
        },
      ],
      spots: [],
    });
    expect(lines[0]!.points[0]!.aheadFt).toBeCloseTo(50 / 0.3048);
    expect(lines[0]!.points[1]!.rightFt).toBeCloseTo(10 / 0.3048);
  });

  it('is left out when the plate does not say where the point lies', () => {
    const { reference: _, ...plate } = referencePlate(shippedDecks[0]!)!;
    expect(groundLinesOf(plate)).toEqual([]);
  });
});
