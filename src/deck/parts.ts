/**
 * The sound parts of a deck that may be broken elsewhere, so that one missing key doesn't hide what is
 * wrong in the next part. Parts keep their place in the document; names are known even when the part
 * that bears them is broken.
 */
import type * as z from 'zod/mini';
import type { DocumentPath } from './findings.ts';
import type { FormulasRead } from './formula-reader.ts';
import { mostSuggestions } from './limits.ts';
import { suggester } from './nearest.ts';
import { plainGates } from './plain-bands.ts';
import { isList, isMapping, valueAt, type Plain, type PlainMapping } from './plain-data.ts';
import {
  chartSchema,
  checklistSchema,
  controlSchema,
  daySettingSchema,
  deckSchema,
  flyingSchema,
  formulaSchema,
  gateSchema,
  idPattern,
  noteSchema,
  phaseSchema,
  plateSchema,
  quantitySchema,
  sourceSchema,
  tableSchema,
  windSchema,
  workedSchema,
} from './schema.ts';
import { bookPaths, soundPart } from './sound-part.ts';
import type {
  AuthoredGate,
  Chart,
  Checklist,
  Control,
  Deck,
  DecisionTable,
  Flying,
  Formula,
  Gate,
  Note,
  Phase,
  Plate,
  Quantity,
  Source,
  Wind,
  WorkedValue,
} from './types.ts';

export type DaySetting = NonNullable<Deck['day']>[number];

/** All names of one kind, and the sound parts that bear them (the first, when several do). */
export interface Known<T> {
  readonly ids: ReadonlySet<string>;
  /** True also when it can't be told: the list itself is broken, or an element lacks its id. */
  readonly has: (id: string) => boolean;
  readonly get: (id: string) => T | undefined;
}

export interface DeckParts {
  readonly data: PlainMapping;
  readonly reference: Deck['reference'] | null;
  readonly wind: Wind | null;
  readonly flying: Flying | null;
  readonly defaultSource: string | null;
  readonly sources: readonly Source[];
  readonly quantities: readonly Quantity[];
  readonly day: readonly DaySetting[];
  readonly formulas: readonly Formula[];
  /** As written: bands may hold formulas. */
  readonly authoredGates: readonly AuthoredGate[];
  /** In plain numbers; bands whose formulas have not been read are left out. */
  readonly gates: readonly Gate[];
  readonly charts: readonly Chart[];
  readonly checklists: readonly Checklist[];
  readonly controls: readonly Control[];
  readonly phases: readonly Phase[];
  readonly tables: readonly DecisionTable[];
  readonly plates: readonly Plate[];
  readonly notes: readonly Note[];
  readonly worked: readonly WorkedValue[];
  readonly known: {
    readonly source: Known<Source>;
    readonly quantity: Known<Quantity>;
    readonly gate: Known<Gate>;
    readonly control: Known<Control>;
    readonly phase: Known<Phase>;
  };
  /** True when nothing was taken out: only then can something be said to be nowhere. */
  readonly whole: boolean;
  /** Position of each gate in the procedure, broken ones counted. */
  readonly orderOfGate: (id: string) => number | undefined;
  /** Where a list or mapping of these parts stands, and what is under it. */
  readonly pathOf: (part: object, ...below: readonly (string | number)[]) => DocumentPath;
  /** A changed copy stands where its original does. */
  readonly copied: (from: object, to: object) => void;
  /** True when the part had faulty pieces, so that what it lacks may have been among them. */
  readonly isBroken: (part: object) => boolean;
  /** True when nothing was taken out of a list, so that what it lacks is lacking. */
  readonly isComplete: (list: string) => boolean;
  readonly suggest: (name: string, known: ReadonlySet<string>) => string | null;
}

export function partsOf(data: PlainMapping, issues: readonly z.core.$ZodIssue[]): DeckParts {
  const book = bookPaths(data);
  const faulty = new Set(issues.map(({ path }) => path.slice(0, 2).join('/')));
  const faultyLists = new Set(issues.map(({ path }) => String(path[0])));

  const isFaulty = (list: string, index: number): boolean => faulty.has(`${list}/${index}`);
  const soundList = <S extends z.core.$ZodType>(name: string, schema: Parses<S>): z.core.output<S>[] =>
    listOf(data, name).flatMap((element, index) => {
      if (!isFaulty(name, index)) return [element as z.core.output<S>];
      const sound = isMapping(element) ? soundPart(schema, element, book) : null;
      return sound === null ? [] : [sound];
    });

  const sources = soundList('sources', sourceSchema);
  const quantities = soundList('quantities', quantitySchema);
  const authoredGates: readonly AuthoredGate[] = soundList('gates', gateSchema);
  const gates = plainGates(authoredGates, new Map(), new Map(), book.copied);
  const controls = soundList('controls', controlSchema);
  const phases = soundList('phases', phaseSchema);
  const reference = soundPart(deckSchema.shape.reference, valueAt(data, ['reference']) ?? null, book);
  const wind = soundPart(windSchema, valueAt(data, ['wind']) ?? null, book);
  const flying = soundPart(flyingSchema, valueAt(data, ['flying']) ?? null, book);
  const defaultSource = soundPart(
    deckSchema.shape.defaultSource,
    valueAt(data, ['defaultSource']) ?? null,
    book,
  );
  const gateOrder = firstIndices(idsIn(data, 'gates'));

  return {
    data,
    reference,
    wind,
    flying,
    defaultSource,
    sources,
    quantities,
    authoredGates,
    gates,
    controls,
    phases,
    day: soundList('day', daySettingSchema),
    formulas: soundList('formulas', formulaSchema),
    charts: soundList('charts', chartSchema),
    checklists: soundList('checklists', checklistSchema),
    tables: soundList('tables', tableSchema),
    plates: soundList('plates', plateSchema),
    notes: soundList('notes', noteSchema),
    worked: soundList('worked', workedSchema),
    known: {
      source: knownOf(data, 'sources', sources),
      quantity: knownOf(data, 'quantities', quantities),
      gate: knownOf(data, 'gates', gates),
      control: knownOf(data, 'controls', controls),
      phase: knownOf(data, 'phases', phases),
    },
    whole: issues.length === 0,
    orderOfGate: (id) => gateOrder.get(id),
    pathOf: (part, ...below) => [...book.pathOf(part), ...below],
    copied: book.copied,
    isBroken: (part) => {
      const [list, index] = book.pathOf(part);
      return isFaulty(String(list), Number(index));
    },
    isComplete: (list) => !faultyLists.has(list),
    suggest: suggester(mostSuggestions),
  };
}

/** The same parts with the bands and positions that formulas make. */
export function withNumbers(
  parts: DeckParts,
  { bands, positions }: Pick<FormulasRead, 'bands' | 'positions'>,
): DeckParts {
  const gates = plainGates(parts.authoredGates, bands, positions, parts.copied);
  const lacking = new Set<object>(
    gates.filter(
      ({ values }, at) => Object.keys(values).length < Object.keys(parts.authoredGates[at]!.values).length,
    ),
  );
  return {
    ...parts,
    gates,
    whole: parts.whole && lacking.size === 0,
    isBroken: (part) => lacking.has(part) || parts.isBroken(part),
    known: { ...parts.known, gate: knownOf(parts.data, 'gates', gates) },
  };
}

/** True when a formula stands anywhere. */
export const hasFormulas = ({ formulas, authoredGates, gates }: DeckParts): boolean =>
  formulas.length > 0 || authoredGates.some((gate, index) => gate !== gates[index]);

type Parses<S extends z.core.$ZodType> = S & {
  safeParse: (value: unknown) => z.core.util.SafeParseResult<z.core.output<S>>;
};

const listOf = (data: PlainMapping, name: string): readonly Plain[] => {
  const list = valueAt(data, [name]);
  return isList(list) ? list : [];
};

/** Null for an element whose id is missing or not fit to be named elsewhere. */
const idsIn = (data: PlainMapping, name: string): (string | null)[] =>
  listOf(data, name).map((element) => {
    const id = valueAt(element, ['id']);
    return typeof id === 'string' && idPattern.test(id) ? id : null;
  });

function firstIndices(ids: readonly (string | null)[]): ReadonlyMap<string, number> {
  const indices = new Map<string, number>();
  ids.forEach((id, index) => {
    if (id !== null && !indices.has(id)) indices.set(id, index);
  });
  return indices;
}

function knownOf<T extends { readonly id: string }>(
  data: PlainMapping,
  name: string,
  sound: readonly T[],
): Known<T> {
  const there = idsIn(data, name);
  const ids = new Set(there.filter((id): id is string => id !== null));
  const isCertain = isList(data[name]) && !there.includes(null);
  const byId = new Map<string, T>();
  for (const part of sound) if (!byId.has(part.id)) byId.set(part.id, part);
  return { ids, has: (id) => !isCertain || ids.has(id), get: (id) => byId.get(id) };
}
