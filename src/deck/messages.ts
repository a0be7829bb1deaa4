/** What the schema says is wrong -> findings with the rule, what was found, and the mend. */
import type * as z from 'zod/mini';
import type { DeckCode } from './codes.ts';
import type { Draft } from './draft.ts';
import type { DocumentPath } from './findings.ts';
import { withoutLoneEntries } from './lone-entries.ts';
import { nearestOf } from './nearest.ts';
import { valueAt, type Plain } from './plain-data.ts';
import { quoted, sayFigure, sayFound, uncapitalised } from './quoting.ts';
import { sayList } from './say.ts';
import { descriptionAt, schemaAt } from './schema-at.ts';
import { deckFormat, deckSchema } from './schema.ts';
import { units } from './units.ts';
import { unknownKey, type ShapeDraft } from './unknown-key.ts';
import { wrongForm } from './words-for-id.ts';
import { wordsForNumber } from './words-for-number.ts';
import { mendForPair } from './words-for-pair.ts';
import { isWhen, wrongType } from './wrong-type.ts';

type Issue = z.core.$ZodIssue;

/** Everything the schema refuses; a misspelt key is told of once, not as a missing one too. */
export function draftsForIssues(issues: readonly Issue[], data: Plain): Draft[] {
  const drafts: readonly ShapeDraft[] = withoutLoneEntries(
    issues.flatMap((issue) => draftsForIssue(issue, data)),
    data,
  );
  const misspelt = new Set(drafts.flatMap(({ meant }) => (meant ? [JSON.stringify(meant)] : [])));
  return drafts.filter(({ code, path }) => code !== 'missing-key' || !misspelt.has(JSON.stringify(path)));
}

function draftsForIssue(issue: Issue, data: Plain): ShapeDraft[] {
  const path = issue.path as (string | number)[];
  const value = valueAt(data, path);
  const one = (code: DeckCode, message: string): Draft[] => [{ code, message, path }];
  if (value === undefined && path.length > 0) return [missing(path, data)];
  switch (issue.code) {
    case 'unrecognized_keys':
      return issue.keys.map((key) => unknownKey(key, path, data));
    case 'invalid_type':
      return [wrongType(issue.expected, value, path, data)];
    case 'invalid_value':
      return [wrongValue(issue.values.map(String), value, path)];
    case 'custom':
      return [{ ...wordsForNumber(String(value)), path }];
    case 'invalid_union':
      // A number of a band, or a formula: what is neither is told of as a number that is missing.
      if (!('discriminator' in issue) && issue.errors[0]?.[0]?.code === 'invalid_type')
        return [wrongType('number', value, path, data)];
      return [
        wrongValue(
          (issue.code === 'invalid_union' && 'options' in issue ? (issue.options ?? []) : []).map(String),
          value,
          path,
        ),
      ];
    case 'invalid_format':
      return [wrongForm(value, path, data)];
    case 'too_small':
      if (issue.origin === 'string')
        return one('empty-text', 'A text must stand here, it is empty; write it or take the key away.');
      if (issue.origin === 'number') return one('number-too-large', tooFar(value));
      return [wrongLength(Number(issue.minimum), 'at least', value, path, data)];
    case 'too_big':
      if (issue.origin === 'string')
        return one(
          'text-too-long',
          `A text here may have ${issue.maximum} characters, this one has ${String(value).length}; shorten it.`,
        );
      if (issue.origin === 'number') return one('number-too-large', tooFar(value));
      return [wrongLength(Number(issue.maximum), 'at most', value, path, data)];
    default:
      // The schema uses no other kind of check; should one come, it is still told where it is.
      return one(
        'wrong-type',
        `What stands here does not fit the format, found ${sayFound(value)}; compare it with the schema.`,
      );
  }
}

function missing(path: DocumentPath, data: Plain): Draft {
  const key = String(path[path.length - 1]);
  if (isWhen(path))
    return {
      code: 'missing-key',
      message: `A rule needs “when” with its conditions, it is missing; add “when: { … }”, or “when: {}” when the rule always fits.`,
      path,
    };
  const about = descriptionAt(deckSchema, data, path);
  const meaning = about ? ` (${uncapitalised(about.replace(/\.$/, ''))})` : '';
  const mend = key === 'format' ? `begin the file with “format: ${deckFormat}”` : `add “${key}: …”`;
  return {
    code: 'missing-key',
    message: `${quoted(key)}${meaning} must be given, it is missing; ${mend}.`,
    path,
  };
}

function wrongValue(known: readonly string[], value: Plain | undefined, path: DocumentPath): Draft {
  const found = sayFound(value);
  const text = typeof value === 'string' ? value : '';
  if (path.length === 1 && path[0] === 'format')
    return {
      code: 'wrong-format',
      message: `This program reads the format “${deckFormat}”, found ${found}; write “format: ${deckFormat}”, or open the file with a program that knows its format.`,
      path,
    };
  const isUnit = path.length > 1 && path[path.length - 1] === 'unit' && path[0] !== 'plates';
  const unit = path[path.length - 1] === 'unit' ? unitMeantBy(text) : null;
  const near =
    (unit !== null && known.includes(unit) ? unit : null) ??
    (text ? nearestOf(text.slice(0, 100), known) : null);
  const mend = near ? `write ${quoted(near)}` : 'write one of them';
  return {
    code: isUnit ? 'unknown-unit' : 'unknown-choice',
    message: `${isUnit ? 'A unit is one of' : 'Here stands one of'} ${sayList(known, 'or')}, found ${found}; ${mend}.`,
    path,
  };
}

/** "feet" -> "ft", "degrees" -> "deg": the words and marks by which a unit is known elsewhere. */
function unitMeantBy(text: string): string | null {
  const wanted = text.trim().toLowerCase();
  const fits = ([id, unit]: [
    string,
    { symbol: string; spoken: string; typed: readonly string[] },
  ]): boolean =>
    wanted !== '' &&
    [id, unit.symbol, unit.spoken, ...unit.typed].some((word) => word.toLowerCase() === wanted);
  return Object.entries(units).find(fits)?.[0] ?? null;
}

function wrongLength(
  wanted: number,
  bound: 'at least' | 'at most',
  value: Plain | undefined,
  path: DocumentPath,
  data: Plain,
): Draft {
  const length = Array.isArray(value) ? value.length : 0;
  if (schemaAt(deckSchema, data, path)?._zod.def.type === 'tuple')
    return {
      code: 'wrong-count',
      message: `Exactly ${wanted} numbers must stand here, found ${length === 1 ? sayFound(valueAt(data, [...path, 0])) : length}; ${mendForPair(Array.isArray(value) ? (value as readonly Plain[]) : [])}.`,
      path,
    };
  if (bound === 'at least')
    return {
      code: 'too-few',
      message: `A list needs at least ${wanted} element${wanted === 1 ? '' : 's'} here, found ${length}; add ${wanted - length} or take the key away.`,
      path,
    };
  return {
    code: 'too-many',
    message: `A list may have ${wanted} elements here, found ${length}; take ${length - wanted} away.`,
    path,
  };
}

const tooFar = (value: Plain | undefined): string =>
  `A number must lie between -1000000000 and 1000000000, found ${typeof value === 'number' ? sayFigure(value) : sayFound(value)}; check its digits.`;
