import { describe, expect, it } from 'vitest';
import { planNotes, profileNotes } from '../../../../src/app/pages/brief/leg-rows.ts';
import { layoutCircuit } from '../../../../src/app/parts/circuit-geometry.ts';
import { lengthOf, sampleLeg } from '../../../../src/app/parts/flown-path.ts';
import { overlap } from '../../../../src/app/parts/label-placement.ts';
import { placeLegNotes } from '../../../../src/app/parts/leg-note-placement.ts';
import { layoutProfile } from '../../../../src/app/parts/profile-geometry.ts';
import { placeProfileNotes } from '../../../../src/app/parts/profile-notes.ts';
import { groundLinesOf, referencePlate } from '../../../../src/app/parts/reference-outline.ts';
import { textWidthPx } from '../../../../src/app/parts/text-width.ts';
import type { Deck } from '../../../../src/deck/types.ts';
import { shippedDecks } from './shipped-decks.ts';

const [radius, size] = [11, 13];

function layoutOf(deck: Deck, widthPx: number, heightPx: number) {
  const plate = referencePlate(deck);
  return layoutCircuit({
    gates: deck.gates,
    reference: plate ? groundLinesOf(plate) : [],
    widthPx,
    heightPx,
    markerRadiusPx: radius,
    labelSizePx: size,
    labels: new Map(deck.gates.map((gate) => [gate.id, { name: gate.label, note: '1,000 ft' }])),
  });
}

const sizes = [
  [300, 440],
  [358, 520],
  [480, 600],
  [560, 650],
  [491, 325],
] as const;
const cases = shippedDecks.flatMap((deck) => sizes.map(([w, h]) => ({ title: deck.title, deck, w, h })));

describe.each(cases)('the notes beside the legs of “$title” in $w by $h px', ({ deck, w, h }) => {
  const layout = layoutOf(deck, w, h);
  const placed = placeLegNotes(layout, planNotes(deck, {}), size, radius);

  it('stand apart from each other, from labels, marks and lines, and inside the picture', () => {
    placed.forEach((note, i) => {
      for (const other of placed.slice(i + 1)) expect(overlap(note, other)).toBe(0);
      for (const { label } of layout.gates) expect(label ? overlap(note, label) : 0).toBe(0);
      const away = ({ x, y }: { x: number; y: number }): number =>
        Math.hypot(
          Math.max(note.x - x, 0, x - note.x - note.width),
          Math.max(note.y - y, 0, y - note.y - note.height),
        );
      for (const gate of layout.gates) expect(away(gate)).toBeGreaterThan(radius);
      for (const leg of layout.legs)
        for (const point of sampleLeg(leg, Math.ceil(lengthOf(leg)))) expect(away(point)).toBeGreaterThan(1);
      expect(note.x).toBeGreaterThanOrEqual(0);
      expect(note.x + note.width).toBeLessThanOrEqual(w);
      expect(note.y).toBeGreaterThanOrEqual(0);
      expect(note.y + note.height).toBeLessThanOrEqual(h);
    });
  });

  it('find room for most of the long legs', () => {
    const long = layout.legs.filter((leg) => lengthOf(leg) > 5 * radius);
    expect(placed.length).toBeGreaterThanOrEqual(0.7 * long.length);
  });
});

describe.each(shippedDecks)('the notes between the gates of the profile of “$title”', (deck) => {
  it.each([358, 491, 1040])('stand between their gates and under the line, at %i px', (widthPx) => {
    const heights = new Map(
      deck.gates.flatMap((gate) => {
        const band = gate.values[deck.reference.height];
        return band ? [[gate.id, band] as const] : [];
      }),
    );
    const written = new Map([...heights].map(([id, band]) => [id, String(band.target)]));
    const wanted = { gates: deck.gates, heights, written, widthPx, heightPx: 190, labelSizePx: size };
    const layout = layoutProfile(wanted);
    const placed = placeProfileNotes(layout, profileNotes(deck, {}), size);
    for (const { text, x, y } of placed) {
      const half = textWidthPx(text, size) / 2;
      const after = layout.xs.findIndex((one) => one > x);
      expect(x - half).toBeGreaterThan(layout.xs[after - 1]!);
      expect(x + half).toBeLessThan(layout.xs[after]!);
      for (const gate of layout.gates)
        if (Math.abs(gate.number - after - 0.5) < 1) expect(gate.y).toBeLessThan(y - size);
    }
    if (widthPx === 1040) expect(placed.length).toBeGreaterThan(5);
  });
});
