/** What the schema says is wrong -> findings with the rule, what was found, and the mend. */
import type * as z from 'zod/mini';
import type { DeckCode } from './codes.ts';
import type { Draft } from './draft.ts';
import type { DocumentPath } from './findings.ts';
import { idLike, idWithLabel } from './words-for-id.ts';
import { withoutLoneEntries } from './lone-entries.ts';
import { nearestOf } from './nearest.ts';
import { isMapping, valueAt, type Plain, type PlainMapping } from './plain-data.ts';
import { quoted, sayFigure, sayFound, uncapitalised } from './quoting.ts';
import { sayList } from './say.ts';
import { descriptionAt, keysOf, requiredKeysOf, schemaAt } from './schema-at.ts';
import { deckFormat, deckSchema } from './schema.ts';
import { units } from './units.ts';
import { wordsForNumber } from './words-for-number.ts';
import { mendForPair } from './words-for-pair.ts';

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

/** A draft on an unknown key says which one was meant. */
interface ShapeDraft extends Draft {
  readonly meant?: DocumentPath;
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
    case 'invalid_union':
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

function unknownKey(key: string, path: DocumentPath, data: Plain): ShapeDraft {
  const known = keysOf(schemaAt(deckSchema, data, path));
  const present = valueAt(data, path);
  const free = known.filter((name) => !isMapping(present) || !Object.hasOwn(present, name));
  const near = nearestOf(key.slice(0, 100), free) ?? onlyOneThatHolds(key, free);
  const mend = near ? `write ${quoted(near)}` : 'take it away';
  return {
    code: 'unknown-key',
    message: `The keys here are ${sayList(known)}, found ${quoted(key)}; ${mend}.`,
    path: [...path, key],
    onKey: true,
    ...(near ? { meant: [...path, near] } : {}),
  };
}

/** "ahead" -> "aheadFt", when no other key holds it. */
function onlyOneThatHolds(key: string, free: readonly string[]): string | null {
  const held = key.length >= 3 ? free.filter((name) => name.toLowerCase().includes(key.toLowerCase())) : [];
  return held.length === 1 ? held[0]! : null;
}

function wrongType(expected: string, value: Plain | undefined, path: DocumentPath, data: Plain): Draft {
  const draft = (code: DeckCode, message: string): Draft => ({ code, message, path });
  const found = sayFound(value);
  if (path.length === 0)
    return draft(
      'not-a-mapping',
      `A deck file must be a mapping of keys and values, found ${found}; begin it with “format: ${deckFormat}”.`,
    );
  switch (expected) {
    case 'number': {
      if (typeof value === 'number')
        return draft(
          'not-a-number',
          `A value must be a number that can be flown, found ${found}; write a plain number.`,
        );
      if (typeof value === 'string') return { ...wordsForNumber(value), path };
      return draft('wrong-type', `A number must stand here, found ${found}; write one.`);
    }
    case 'string':
      // A number with one dot looks like a version, and any number like an id.
      if (typeof value === 'number' && (isVersion(path) || path[path.length - 1] === 'id'))
        return wrongForm(value, path, data);
      if (typeof value === 'number' || typeof value === 'boolean')
        return draft(
          'wrong-type',
          `A text must stand here, found ${found}; put it in quotes: "${String(value)}".`,
        );
      if (Array.isArray(value))
        return draft(
          'wrong-type',
          `A text must stand here, found ${found}; put a text that begins with “[” in quotes.`,
        );
      if (isMapping(value)) return draft('wrong-type', textTakenForKeys(value));
      return draft('wrong-type', `A text must stand here, found ${found}; write it.`);
    case 'boolean':
      return draft(
        'wrong-type',
        `Yes or no is written “true” or “false”, found ${found}; write one of them, without quotes.`,
      );
    case 'array':
      if (isMapping(value) && Object.keys(value).length > 0)
        return draft(
          'wrong-type',
          `A list must stand here, found keys without a “- ” before them; write “- ” before the first key of each element: “- ${Object.keys(value)[0]}: …”.`,
        );
      return draft('wrong-type', `A list must stand here, found ${found}; ${mendForList(value)}.`);
    case 'tuple':
      return draft(
        'wrong-type',
        `Two numbers must stand here, found ${found}; ${mendForPair([value], valueAt(data, [...path.slice(0, -1), 'target']))}.`,
      );
    default:
      if (isWhen(path))
        return draft(
          'wrong-type',
          `“when” holds conditions as quantity: "test", found ${found}; write “when: { … }”, or “when: {}” when the rule always fits.`,
        );
      return draft(
        'wrong-type',
        `Keys with their values must stand here, found ${found}; write ${mappingAt(data, path) ?? 'them indented below, or in {braces}'}.`,
      );
  }
}

const mendForList = (value: Plain | undefined): string =>
  typeof value === 'string' && /^-\S/.test(value)
    ? 'put a space behind each dash that begins an element'
    : 'put each element on a line of its own after “- ”, or all in [brackets]';

/** "{ aheadFt: …, rightFt: …, courseDeg: … }": the keys that must be there; null when that depends. */
function mappingAt(data: Plain, path: DocumentPath): string | null {
  const keys = requiredKeysOf(schemaAt(deckSchema, data, path));
  return keys.length > 0 && keys.length <= 6 ? `{ ${keys.map((key) => `${key}: …`).join(', ')} }` : null;
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
  const isUnit = path[0] === 'quantities' && path[2] === 'unit';
  const near = (isUnit ? unitMeantBy(text) : null) ?? (text ? nearestOf(text.slice(0, 100), known) : null);
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

function wrongForm(value: Plain | undefined, path: DocumentPath, data: Plain): Draft {
  const found = sayFound(value);
  if (isVersion(path))
    return {
      code: 'bad-version',
      message: `A version is three whole numbers with dots, found ${found}; write one like “1.0.0”.`,
      path,
    };
  if (path.length === 1 && path[0] === 'language')
    return {
      code: 'bad-language',
      message: `A language is written as a BCP 47 tag, found ${found}; write one like “en” or “de-AT”.`,
      path,
    };
  const like = idWithLabel(String(value), path, data) ?? idLike(String(value));
  return {
    code: 'bad-id',
    message: `An id has small letters, digits and single hyphens and begins with a letter, found ${found}; write ${like ? quoted(like) : 'one like “short-final”'}.`,
    path,
  };
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

/** "Note: not for flight", unquoted, is a key and a value. */
function textTakenForKeys(value: PlainMapping): string {
  const [key] = Object.keys(value);
  const below = key === undefined ? undefined : value[key];
  const written = typeof below === 'string' ? `"${key}: ${below}"` : null;
  return written && written.length < 80
    ? `A text must stand here, a “: ” makes it a key and a value; put the whole text in quotes: ${written}.`
    : `A text must stand here, found a mapping; put a text that holds “: ” or begins with “{” in quotes.`;
}

/** The conditions of a rule. */
const isWhen = (path: DocumentPath): boolean =>
  path[0] === 'tables' && path[2] === 'rules' && path[4] === 'when' && path.length === 5;

const isVersion = (path: DocumentPath): boolean => path.length === 1 && path[0] === 'version';
