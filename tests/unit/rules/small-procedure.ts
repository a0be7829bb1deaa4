/** Procedures small enough to try every state of, with the conditions also as plain predicates. */
import fc from 'fast-check';
import type { Deck, DecisionTable } from '../../../src/deck/types.ts';
import { compileRules } from '../../../src/rules/compile.ts';
import type { Procedure, State } from '../../../src/rules/types.ts';

export interface Condition {
  readonly text: string;
  readonly fits: (value: number) => boolean;
}

export interface SmallRule {
  readonly id: string;
  readonly when: Readonly<Record<string, Condition>>;
  readonly then: string;
  readonly critical: boolean;
}

export interface SmallTable {
  readonly id: string;
  readonly control: string;
  readonly hit: DecisionTable['hit'];
  readonly overriding: boolean;
  readonly rules: readonly SmallRule[];
}

export interface SmallDeck {
  /** Input -> its range in the phase. The quantity's own range is one wider on each side. */
  readonly box: Readonly<Record<string, readonly [number, number]>>;
  /** Two base tables at most, for `power` and `pitch`. */
  readonly tables: readonly SmallTable[];
}

export const actionsOf = (control: string): string[] =>
  ['less', 'hold', 'more'].map((word) => `${word}-${control}`);
export const priorityOf = (control: string): string[] => [...actionsOf(control)].reverse();

/** One phase, `here`, with a control for each base table, one without a table, and one for overriding. */
export function procedureOf({ box, tables }: SmallDeck): Procedure {
  const inputs = Object.keys(box);
  const deck: Deck = {
    format: 'gatecall-deck/1',
    id: 'small',
    title: 'Small',
    version: '1.0.0',
    language: 'en',
    cautions: ['Invented.'],
    reference: { label: 'Spot', height: inputs[0]! },
    defaultSource: 'notes',
    sources: [{ id: 'notes', title: 'Notes', kind: 'invented' }],
    quantities: Object.entries(box).map(([id, [lo, hi]]) => ({
      id,
      label: id.toUpperCase(),
      unit: 'ft',
      range: [lo - 1, hi + 1],
      step: 1,
    })),
    gates: ['one', 'two'].map((id) => ({
      id,
      label: id,
      cue: id,
      position: { aheadFt: 0, rightFt: 0, courseDeg: 0 },
      values: {},
    })),
    controls: ['power', 'pitch', 'nozzle', 'call'].map((id) => ({
      id,
      label: id,
      actions: actionsOf(id).map((action) => ({
        id: action,
        label: action,
        neutral: action === `hold-${id}`,
      })),
    })),
    phases: [
      {
        id: 'here',
        label: 'Here',
        from: 'one',
        to: 'two',
        windowS: 5,
        state: box,
        controls: ['power', 'pitch', 'nozzle', 'call'],
      },
    ],
    tables: tables.map(({ id, control, hit, overriding, rules }) => ({
      id,
      label: id,
      phases: ['here'],
      control,
      hit,
      overriding,
      inputs,
      ...(hit === 'priority' ? { priority: priorityOf(control) } : {}),
      rules: rules.map((rule) => ({
        id: rule.id,
        then: rule.then,
        critical: rule.critical,
        because: `${rule.id} fits.`,
        when: Object.fromEntries(Object.entries(rule.when).map(([input, { text }]) => [input, text])),
      })),
    })),
  };
  const { procedure, findings } = compileRules(deck);
  if (!procedure) throw new Error(findings.map(({ message }) => message).join('\n'));
  return procedure;
}

/** Every combination of whole and half values of the box: each edge of its rules and each middle between. */
export function gridOf(box: SmallDeck['box']): State[] {
  let states: State[] = [{}];
  for (const [input, [lo, hi]] of Object.entries(box)) {
    const values = Array.from({ length: 2 * (hi - lo) + 1 }, (_, i) => lo + i / 2);
    states = states.flatMap((state) => values.map((value) => ({ ...state, [input]: value })));
  }
  return states;
}

const end = fc.integer({ min: -3, max: 3 });

const piece: fc.Arbitrary<Condition> = fc.oneof(
  end.map((v) => ({ text: `${v}`, fits: (x: number) => x === v })),
  end.map((v) => ({ text: `< ${v}`, fits: (x: number) => x < v })),
  end.map((v) => ({ text: `<= ${v}`, fits: (x: number) => x <= v })),
  end.map((v) => ({ text: `> ${v}`, fits: (x: number) => x > v })),
  end.map((v) => ({ text: `>= ${v}`, fits: (x: number) => x >= v })),
  fc
    .tuple(end, fc.integer({ min: 1, max: 4 }), fc.boolean(), fc.boolean())
    .map(([lo, width, loOpen, hiOpen]) => ({
      text: `${loOpen ? '(' : '['}${lo}..${lo + width}${hiOpen ? ')' : ']'}`,
      fits: (x: number) => (loOpen ? x > lo : x >= lo) && (hiOpen ? x < lo + width : x <= lo + width),
    })),
);

export const condition: fc.Arbitrary<Condition> = fc.oneof(
  { weight: 6, arbitrary: piece },
  {
    weight: 1,
    arbitrary: fc.tuple(piece, piece).map(([a, b]) => ({
      text: `${a.text}, ${b.text}`,
      fits: (x: number) => a.fits(x) || b.fits(x),
    })),
  },
  {
    weight: 1,
    arbitrary: piece.map(({ text, fits }) => ({ text: `not(${text})`, fits: (x: number) => !fits(x) })),
  },
);

const rulesFor = (inputs: readonly string[], control: string, most: number): fc.Arbitrary<SmallRule[]> => {
  const when = fc
    .tuple(...inputs.map((input) => fc.option(condition).map((made) => [input, made] as const)))
    .map((pairs) =>
      Object.fromEntries(pairs.filter((pair): pair is [string, Condition] => pair[1] !== null)),
    );
  const rule = fc.record({ when, then: fc.constantFrom(...actionsOf(control)), critical: fc.boolean() });
  return fc
    .array(rule, { minLength: 1, maxLength: most })
    .map((rules) => rules.map((made, i) => ({ ...made, id: `rule-${i}` })));
};

const hit = fc.constantFrom<DecisionTable['hit']>('unique', 'any', 'first', 'priority');

const table = (inputs: readonly string[], id: string, control: string, overriding: boolean, most: number) =>
  fc
    .tuple(hit, rulesFor(inputs, control, most))
    .map(([policy, rules]): SmallTable => ({ id, control, hit: policy, overriding, rules }));

/** One to `mostInputs` inputs, two base tables, up to two overriding ones, in any order. */
export const smallDeck = (mostInputs: number): fc.Arbitrary<SmallDeck> =>
  fc.integer({ min: 1, max: mostInputs }).chain((count) => {
    const inputs = ['a', 'b', 'c', 'd'].slice(0, count);
    const range =
      count > 2 ? fc.constant([-1, 2] as const) : fc.constantFrom([-3, 3] as const, [-2, 3] as const);
    return fc
      .tuple(
        fc.tuple(...inputs.map((input) => range.map((ends) => [input, ends] as const))),
        table(inputs, 'power-table', 'power', false, 6),
        table(inputs, 'pitch-table', 'pitch', false, 3),
        fc.option(table(inputs, 'go-table', 'call', true, 2)),
        fc.option(table(inputs, 'stop-table', 'power', true, 2)),
      )
      .map(([box, power, pitch, go, stop]) => ({
        box: Object.fromEntries(box),
        tables: [power, go, pitch, stop].filter((made) => made !== null),
      }));
  });
