/** What of a deck rests on which of its sources. */
import { sayList } from '../../../deck/say.ts';
import type { Deck, Source } from '../../../deck/types.ts';

export interface SourceUse {
  readonly source: Source;
  /** "31 values, 2 checklists and 54 corrections"; empty for a source that nothing rests on. */
  readonly rests: string;
  /** Everything that names no source rests on this one. */
  readonly isDefault: boolean;
}

interface Bearing {
  readonly one: string;
  readonly many: string;
  /** How much rests on each source named here; undefined stands for the deck's default. */
  readonly of: readonly { readonly source?: string | undefined; readonly count?: number }[];
}

/** Each source of the deck in its order, with what rests on it. */
export function sourceUses(deck: Deck): readonly SourceUse[] {
  const bearings: readonly Bearing[] = [
    { one: 'value', many: 'values', of: deck.gates.flatMap(({ values }) => Object.values(values)) },
    {
      one: 'limit',
      many: 'limits',
      of: (deck.phases ?? []).flatMap(({ limits }) => Object.values(limits ?? {})),
    },
    { one: 'formula', many: 'formulas', of: deck.formulas ?? [] },
    { one: 'chart', many: 'charts', of: deck.charts ?? [] },
    { one: 'worked value', many: 'worked values', of: deck.worked ?? [] },
    { one: 'checklist', many: 'checklists', of: deck.checklists ?? [] },
    {
      one: 'correction',
      many: 'corrections',
      of: (deck.tables ?? []).map(({ source, rules }) => ({ source, count: rules.length })),
    },
    { one: 'plate', many: 'plates', of: deck.plates ?? [] },
    { one: 'note', many: 'notes', of: deck.notes ?? [] },
  ];
  return deck.sources.map((source) => {
    const parts = bearings.flatMap(({ one, many, of }) => {
      const count = of
        .filter((bearer) => (bearer.source ?? deck.defaultSource) === source.id)
        .reduce((sum, bearer) => sum + ('count' in bearer ? (bearer.count ?? 1) : 1), 0);
      return count === 0 ? [] : [`${count} ${count === 1 ? one : many}`];
    });
    return { source, rests: sayList(parts), isDefault: source.id === deck.defaultSource };
  });
}

const kinds: Readonly<Record<Source['kind'], string>> = {
  published: 'published',
  'common practice': 'common practice, no source',
  invented: 'invented',
};

/** What kind of source it is, in words. */
export const sayKind = ({ kind }: Source): string => kinds[kind];
