import { describe, expect, it } from 'vitest';
import { layoutProfile } from '../../../../src/app/parts/profile-geometry.ts';
import { textWidthPx } from '../../../../src/app/parts/text-width.ts';
import { quantityOf } from '../../../../src/deck/lookup.ts';
import { sayNumber } from '../../../../src/deck/say.ts';
import { shippedDecks } from './shipped-decks.ts';

const cases = shippedDecks.flatMap((deck) =>
  (
    [
      [300, 176],
      [358, 176],
      [491, 115],
      [620, 176],
      [1040, 190],
    ] as const
  ).map(([widthPx, heightPx]) => ({ title: deck.title, deck, widthPx, heightPx })),
);

describe.each(cases)(
  'the height profile of “$title” at $widthPx by $heightPx px',
  ({ deck, widthPx, heightPx }) => {
    const quantity = quantityOf(deck, deck.reference.height);
    const heights = new Map(
      deck.gates.flatMap((gate) => {
        const band = gate.values[quantity.id];
        return band ? [[gate.id, band] as const] : [];
      }),
    );
    const layout = layoutProfile({
      gates: deck.gates,
      heights,
      written: new Map([...heights].map(([id, band]) => [id, sayNumber(band.target, quantity.step)])),
      widthPx,
      heightPx,
      labelSizePx: 13,
    });

    it('shows every gate that has a height, in order, inside the picture', () => {
      expect(layout.gates.map((gate) => gate.id)).toEqual([...heights.keys()]);
      layout.gates.forEach((gate, i) => {
        expect(gate.x).toBeGreaterThan(0);
        expect(gate.x).toBeLessThan(widthPx);
        if (i > 0) expect(gate.x).toBeGreaterThan(layout.gates[i - 1]!.x);
      });
    });

    it('draws a greater height higher', () => {
      for (const one of layout.gates)
        for (const other of layout.gates)
          if (heights.get(one.id)!.target > heights.get(other.id)!.target)
            expect(one.y).toBeLessThan(other.y);
    });

    it('writes every height, none over another', () => {
      const labels = layout.gates.map((gate) => gate.label!);
      labels.forEach((label, i) => {
        expect(label.text).not.toBe('');
        for (const other of labels.slice(i + 1)) {
          const beside =
            Math.abs(label.x - other.x) >= (textWidthPx(label.text, 13) + textWidthPx(other.text, 13)) / 2;
          expect(beside || Math.abs(label.y - other.y) >= 13).toBe(true);
        }
      });
    });

    it('leaves room for each gate’s number under the line', () => {
      layout.gates.slice(1).forEach((gate, i) => {
        expect(gate.x - layout.gates[i]!.x).toBeGreaterThanOrEqual(textWidthPx('10', 13));
      });
    });
  },
);

describe('a height profile', () => {
  it('has no line and no ribbon when no gate has a height', () => {
    const layout = layoutProfile({
      gates: [{ id: 'a', position: { aheadFt: 0, rightFt: 0, courseDeg: 0 } }],
      heights: new Map(),
      written: new Map(),
      widthPx: 320,
      heightPx: 120,
      labelSizePx: 13,
    });
    expect(layout.gates).toEqual([]);
    expect(layout.line).toBe('');
    expect(layout.desired).toBe('');
  });
});
