/** A value of another type than the schema wants: a text for a number, a mapping for a list. */
import type { DeckCode } from './codes.ts';
import type { Draft } from './draft.ts';
import type { DocumentPath } from './findings.ts';
import { isList, isMapping, valueAt, type Plain, type PlainMapping } from './plain-data.ts';
import { sayFound, sayInterval } from './quoting.ts';
import { requiredKeysOf, schemaAt } from './schema-at.ts';
import { deckFormat, deckSchema, idPattern } from './schema.ts';
import { wrongForm } from './words-for-id.ts';
import { wordsForNumber } from './words-for-number.ts';
import { mendForPair } from './words-for-pair.ts';

export function wrongType(
  expected: string,
  value: Plain | undefined,
  path: DocumentPath,
  data: Plain,
): Draft {
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
      // A number with one dot looks like a version, and any number may be meant as an id.
      if (typeof value === 'number' && hasForm(data, path)) return wrongForm(value, path, data);
      if (typeof value === 'number' || typeof value === 'boolean')
        return draft(
          'wrong-type',
          `A text must stand here, found ${found}; put it in quotes: "${String(value)}".`,
        );
      if (Array.isArray(value))
        return draft(
          'wrong-type',
          `A text must stand here, found ${found}; put a text that begins with “[” in quotes${exampleOf(value, path)}.`,
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
      {
        const points = pointsIn(data, path);
        if (points) return { code: 'wrong-type', ...points };
      }
      return draft(
        'wrong-type',
        `Two numbers must stand here, found ${found}; ${mendForPair([value], valueAt(data, [...path.slice(0, -1), 'target']))}.`,
      );
    default:
      if (isWhen(path))
        return draft(
          'wrong-type',
          `“when” holds conditions as quantity: "test", found ${found}; write ${conditionIn(value)}.`,
        );
      return draft(
        'wrong-type',
        `Keys with their values must stand here, found ${found}; write ${mappingAt(data, path) ?? 'them indented below, or in {braces}'}.`,
      );
  }
}

function mendForList(value: Plain | undefined): string {
  const text = typeof value === 'string' ? value : '';
  if (/^-\S/.test(text)) return 'put a space behind each dash that begins an element';
  const names = text.replace(/^\(|\)$/g, '').split(/\s*[,;>|]\s*/);
  return names.length > 1 && names.every((name) => idPattern.test(name))
    ? `write [${names.join(', ')}]`
    : 'put each element on a line of its own after “- ”, or all in [brackets]';
}

/** "sink > 600" -> { sink: "> 600" }, for the conditions of a rule. */
function conditionIn(value: Plain | undefined): string {
  const [, key, test] =
    (typeof value === 'string' && /^([a-z][a-z0-9-]*)\s*((?:[<>]=?|!?=|\[|\().+)$/.exec(value)) || [];
  return key === undefined
    ? '“when: { … }”, or “when: {}” when the rule always fits'
    : `{ ${key}: "${test}" }`;
}

/** `[600..800]` as a condition is a list for YAML. */
function exampleOf(value: readonly unknown[], path: DocumentPath): string {
  const [from, to] = value;
  if (!path.includes('when')) return '';
  if (value.length === 1 && typeof from === 'string') return `: "[${from}]"`;
  return value.length === 2 && typeof from === 'number' && typeof to === 'number'
    ? `: "[${from}..${to}]"`
    : '';
}

/** True when the text there must have a form: an id, a version. */
function hasForm(data: Plain, path: DocumentPath): boolean {
  const def = schemaAt(deckSchema, data, path)?._zod.def;
  return def?.type === 'string' && (def.checks ?? []).some(({ _zod }) => _zod.def.check === 'string_format');
}

/** In a longer list each is told of by itself: the whole is looked at once for every element. */
const mostPoints = 100;

/** `[10, 50, 190, 50]` or `[(10, 50), (190, 50)]` where points belong: told once, for the whole list. */
function pointsIn(data: Plain, path: DocumentPath): Pick<Draft, 'message' | 'path'> | null {
  const listPath = path.slice(0, -1);
  const list = valueAt(data, listPath);
  if (typeof path[path.length - 1] !== 'number' || !isList(list) || list.length > mostPoints) return null;
  const numbers = list.map((one) => Number(String(one).replace(/^\(|\)$/g, '')));
  if (numbers.some(Number.isNaN)) return null;
  const pairs = numbers.flatMap((x, at) =>
    at % 2 === 0 && at + 1 < numbers.length ? [sayInterval([x, numbers[at + 1]!])] : [],
  );
  const shown = pairs.length <= 4 ? pairs.join(', ') : `${pairs.slice(0, 3).join(', ')}, …`;
  return {
    message: `Each point is a pair of numbers in its own [brackets], found them side by side; write [${shown}].`,
    path: listPath,
  };
}

/** "{ aheadFt: …, rightFt: …, courseDeg: … }": the keys that must be there; null when that depends. */
function mappingAt(data: Plain, path: DocumentPath): string | null {
  const keys = requiredKeysOf(schemaAt(deckSchema, data, path));
  return keys.length > 0 && keys.length <= 6 ? `{ ${keys.map((key) => `${key}: …`).join(', ')} }` : null;
}

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
export const isWhen = (path: DocumentPath): boolean =>
  path[0] === 'tables' && path[2] === 'rules' && path[4] === 'when' && path.length === 5;
