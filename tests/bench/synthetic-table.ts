/**
 * Decks with one large decision table, made from a seed. The whole space is split again and again, each
 * time one piece along one input, and every piece becomes a rule: so the table is complete and free of
 * conflicts by construction, and most rules restrain some of the inputs only.
 */
import type { Deck } from '../../src/deck/types.ts';
import { seeded, type Random } from '../../src/rules/random.ts';

export interface SyntheticSize {
  readonly rules: number;
  readonly inputs: number;
}

const usual: SyntheticSize = { rules: 200, inputs: 6 };
const lowest = 0;
const highest = 1000;

/** A piece's stretch along one input; the ends of the whole range are never open. */
interface Side {
  readonly lo: number;
  readonly hi: number;
  readonly loOpen: boolean;
  readonly hiOpen: boolean;
}

type Piece = readonly Side[];

export interface SyntheticFaults {
  readonly deck: Deck;
  /** The rule that was cut short: the states it gave up are answered by none. */
  readonly gap: { readonly rule: string; readonly input: string; readonly from: number; readonly to: number };
  /** The rule that was widened by the same stretch, into its neighbours. */
  readonly conflict: {
    readonly rule: string;
    readonly input: string;
    readonly from: number;
    readonly to: number;
  };
}

/** A complete table without conflicts, hit policy `unique`. */
export function syntheticDeck(seed: number, size: SyntheticSize = usual): Deck {
  return deckOf(piecesOf(seeded(seed), size), size);
}

/** The same table with one rule cut short by 3 and another widened by 3 beyond its upper end. */
export function syntheticFaultyDeck(seed: number, size: SyntheticSize = usual): SyntheticFaults {
  const pieces = piecesOf(seeded(seed), size);
  // Upper ends that can be moved: inside the range, and not so near a lower one that nothing is left.
  const places = pieces.flatMap((piece, rule) =>
    piece.flatMap(({ hi }, input) => (hi < highest - 10 ? [{ rule, input, hi }] : [])),
  );
  const cut = places[0]!;
  const conflict = places.findLast(({ rule }) => rule !== cut.rule)!;
  const changed = pieces.map((piece, rule) =>
    piece.map((side, input) => {
      if (rule === cut.rule && input === cut.input) return { ...side, hi: side.hi - 3 };
      if (rule === conflict.rule && input === conflict.input) return { ...side, hi: side.hi + 3 };
      return side;
    }),
  );
  return {
    deck: deckOf(changed, size),
    gap: { rule: ruleId(cut.rule), input: inputId(cut.input), from: cut.hi - 3, to: cut.hi },
    conflict: {
      rule: ruleId(conflict.rule),
      input: inputId(conflict.input),
      from: conflict.hi,
      to: conflict.hi + 3,
    },
  };
}

function piecesOf(random: Random, { rules, inputs }: SyntheticSize): Piece[] {
  const all: Side = { lo: lowest, hi: highest, loOpen: false, hiOpen: false };
  const pieces: Piece[] = [Array.from({ length: inputs }, () => all)];
  while (pieces.length < rules) {
    const place = Math.floor(random() * pieces.length);
    const piece = pieces[place]!;
    const input = Math.floor(random() * inputs);
    const { lo, hi, loOpen, hiOpen } = piece[input]!;
    if (hi - lo < 50) continue;
    const at = Math.round(lo + (hi - lo) * (0.3 + 0.4 * random()));
    const openBelow = random() < 0.5;
    pieces[place] = piece.with(input, { lo, hi: at, loOpen, hiOpen: openBelow });
    pieces.push(piece.with(input, { lo: at, hi, loOpen: !openBelow, hiOpen }));
  }
  return pieces;
}

const ruleId = (index: number): string => `rule-${index + 1}`;
const inputId = (index: number): string => `input-${index + 1}`;
const actions = ['less', 'hold', 'more'] as const;

function conditionsOf(piece: Piece): Record<string, string> {
  return Object.fromEntries(
    piece.flatMap(({ lo, hi, loOpen, hiOpen }, index) => {
      if (lo === lowest && hi === highest) return [];
      const test =
        lo === lowest
          ? `${hiOpen ? '<' : '<='} ${hi}`
          : hi === highest
            ? `${loOpen ? '>' : '>='} ${lo}`
            : `${loOpen ? '(' : '['}${lo}..${hi}${hiOpen ? ')' : ']'}`;
      return [[inputId(index), test]];
    }),
  );
}

function deckOf(pieces: readonly Piece[], { inputs }: SyntheticSize): Deck {
  const names = Array.from({ length: inputs }, (_, index) => inputId(index));
  const gate = (id: string) => ({
    id,
    label: id,
    cue: 'None.',
    position: { aheadFt: 0, rightFt: 0, courseDeg: 0 },
    values: {},
  });
  return {
    format: 'gatecall-deck/1',
    id: 'synthetic',
    title: 'Synthetic',
    version: '1.0.0',
    language: 'en',
    cautions: ['Made by a program, for measuring one.'],
    reference: { label: 'Spot', height: names[0]! },
    defaultSource: 'made',
    sources: [{ id: 'made', title: 'Made from a seed', kind: 'invented' }],
    quantities: names.map((id) => ({ id, label: id, unit: 'ft', range: [lowest, highest], step: 1 })),
    gates: [gate('start'), gate('end')],
    controls: [
      {
        id: 'power',
        label: 'Power',
        actions: actions.map((id) => ({ id, label: id, neutral: id === 'hold' })),
      },
    ],
    phases: [
      {
        id: 'leg',
        label: 'Leg',
        from: 'start',
        to: 'end',
        windowS: 5,
        state: Object.fromEntries(names.map((id) => [id, [lowest, highest]])),
        controls: ['power'],
      },
    ],
    tables: [
      {
        id: 'large',
        label: 'Large table',
        phases: ['leg'],
        control: 'power',
        hit: 'unique',
        inputs: names,
        rules: pieces.map((piece, index) => ({
          id: ruleId(index),
          when: conditionsOf(piece),
          then: actions[index % actions.length]!,
          because: 'Made.',
        })),
      },
    ],
  };
}
