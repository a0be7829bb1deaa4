import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { clashes, fewestClashes, interleaved } from '../../../src/memory/interleave.ts';

interface Piece {
  readonly id: number;
  readonly group: string;
  readonly kind: string;
}

/** `'a1'` is a card of group a and kind 1. */
const pieces = (...names: string[]): Piece[] =>
  names.map((name, id) => ({ id, group: name[0]!, kind: name[1]! }));

const anyName = fc
  .tuple(fc.constantFrom('a', 'b', 'c', 'd'), fc.constantFrom('1', '2', '3'))
  .map((pair) => pair.join(''));
const anyParts = (max: number) =>
  fc
    .tuple(fc.array(anyName, { maxLength: max }), fc.nat(max))
    .map(([names, cut]): [Piece[], Piece[]] => [pieces(...names).slice(cut), pieces(...names).slice(0, cut)]);

/** The fewest clashes of all orders that keep the new cards in theirs. */
function fewestByTrying(rehearsals: readonly Piece[], fresh: readonly Piece[], before?: Piece): number {
  if (rehearsals.length + fresh.length === 0) return 0;
  const after = (piece: Piece, restOfRehearsals: readonly Piece[], restOfFresh: readonly Piece[]) =>
    (before ? clashes([before, piece]) : 0) + fewestByTrying(restOfRehearsals, restOfFresh, piece);
  const choices = rehearsals.map((piece) =>
    after(
      piece,
      rehearsals.filter((other) => other !== piece),
      fresh,
    ),
  );
  if (fresh[0]) choices.push(after(fresh[0], rehearsals, fresh.slice(1)));
  return Math.min(...choices);
}

describe('an interleaved session', () => {
  it('holds every card once, new ones in the order of the procedure', () => {
    fc.assert(
      fc.property(anyParts(40), ([rehearsals, fresh]) => {
        const order = interleaved(rehearsals, fresh);
        expect(order.map(({ id }) => id).sort((a, b) => a - b)).toEqual(
          [...rehearsals, ...fresh].map(({ id }) => id).sort((a, b) => a - b),
        );
        expect(order.filter((piece) => fresh.includes(piece))).toEqual(fresh);
      }),
    );
  });

  it('has as few neighbours alike as any order of up to seven cards can have', () => {
    fc.assert(
      fc.property(anyParts(7), ([rehearsals, fresh]) => {
        expect(clashes(interleaved(rehearsals, fresh))).toBe(fewestByTrying(rehearsals, fresh));
      }),
      { numRuns: 300 },
    );
  });

  it('comes within two clashes of what is possible at all for forty rehearsals', () => {
    const anyForty = fc.array(anyName, { minLength: 40, maxLength: 40 });
    fc.assert(
      fc.property(anyForty, (names) => {
        const order = interleaved(pieces(...names), []);
        expect(clashes(order)).toBeLessThanOrEqual(fewestClashes(order) + 2);
      }),
      { numRuns: 40 },
    );
  });

  it('keeps the wanted order of rehearsals where nothing clashes', () => {
    const wanted = pieces('a1', 'b2', 'c3', 'd1', 'a2');
    expect(interleaved(wanted, [])).toEqual(wanted);
  });

  it('parts the many cards of one gate with the few of others', () => {
    const order = interleaved(pieces('a1', 'a2', 'a3', 'b1', 'b2'), []);
    expect(order.map(({ group }) => group).join('')).toBe('ababa');
  });

  it('spreads new cards between the rehearsals', () => {
    const rehearsals = pieces('a1', 'b2', 'c3', 'd1', 'a2', 'b3', 'c1', 'd2');
    const fresh = pieces('e4', 'f5').map((piece) => ({ ...piece, id: piece.id + 100 }));
    const places = interleaved(rehearsals, fresh).flatMap(({ id }, place) => (id >= 100 ? [place] : []));
    expect(places[0]).toBeGreaterThan(0);
    expect(places[1]! - places[0]!).toBeGreaterThan(2);
  });

  it('is the same for the same cards', () => {
    fc.assert(
      fc.property(anyParts(30), ([rehearsals, fresh]) => {
        expect(interleaved(rehearsals, fresh)).toEqual(interleaved(rehearsals, fresh));
      }),
      { numRuns: 20 },
    );
  });
});

describe('the bound on clashes', () => {
  it('is never more than what the best order has', () => {
    fc.assert(
      fc.property(anyParts(6), ([rehearsals, fresh]) => {
        const all = [...rehearsals, ...fresh];
        expect(fewestClashes(all)).toBeLessThanOrEqual(fewestByTrying(all, []));
      }),
      { numRuns: 200 },
    );
  });

  it.each([
    [['a1', 'b2'], 0],
    [['a1', 'a2'], 1],
    [['a1', 'a1'], 2],
    [['a1', 'a2', 'a3', 'b1'], 1],
    [['a1', 'a2', 'b3', 'b4'], 0],
  ])('of %j is %i', (names, fewest) => {
    expect(fewestClashes(pieces(...names))).toBe(fewest);
  });
});
