/**
 * Commas and colons inside brackets that say something else than was meant: `response: Down, two green`
 * is a text and a key without a value, `target: 1,500` a number and a key, `target:60` only a key.
 */
import { isMap, isScalar, isSeq, type Pair, type YAMLMap, type YAMLSeq } from 'yaml';
import type { DeckCode } from './codes.ts';
import { quoted, sayInterval } from './quoting.ts';
import { numberIn } from './words-for-number.ts';
import { pairIn } from './words-for-pair.ts';

export interface BracketSlip {
  readonly code: DeckCode;
  readonly message: string;
  /** In UTF-16 units from the start of the text. */
  readonly offset: number;
  /** The key whose value it is, when that can be told. */
  readonly key: string | null;
  /** The keys that stand there in truth or whose values are cut: of them nothing can be said. */
  readonly spoiled: readonly string[];
  /** Whole entries that are only a rest of a value. */
  readonly rests: ReadonlySet<Pair>;
}

type Stretch = readonly [from: number, to: number];
const stretchOf = (node: unknown): Stretch | null => {
  const range = (node as { range?: readonly [number, number, number] | null } | null)?.range;
  return range ? [range[0], range[1]] : null;
};

const isRest = ({ key, value }: Pair): boolean => value === null && isScalar(key) && key.type === 'PLAIN';
const nameOf = ({ key }: Pair): string => (isScalar(key) ? String(key.value) : '');

/** What is wrong with the entries of a mapping in braces; an empty list when each has its colon. */
export function slipsInBraces(node: YAMLMap, text: string): readonly BracketSlip[] {
  if (node.flow !== true || !node.items.some(isRest)) return [];
  if (node.items.every((pair) => isRest(pair) && !/[:<>=]/.test(nameOf(pair))))
    return [valuesAlone(node, text)];
  const slips: BracketSlip[] = [];
  for (let index = 0; index < node.items.length; index++) {
    const pair = node.items[index]!;
    if (!isRest(pair)) continue;
    const colon = slipOfColon(pair);
    if (colon) {
      slips.push(colon);
      continue;
    }
    const before = node.items[index - 1];
    const group = [pair];
    while (node.items[index + 1] && isRest(node.items[index + 1]!) && !slipOfColon(node.items[index + 1]!))
      group.push(node.items[++index]!);
    slips.push(slipOfComma(before, group, text));
  }
  return slips;
}

/** `{57, 63}`. */
function valuesAlone(node: YAMLMap, text: string): BracketSlip {
  const [from, to] = stretchOf(node) ?? [0, 0];
  const inside = text.slice(from + 1, to - 1).trim();
  return {
    code: 'missing-colon',
    message: `In {braces} stand keys with their values, found ${quoted(text.slice(from, to))}; write “key: value”, or a list as [${inside.length > 30 ? '…' : inside}].`,
    offset: from,
    key: null,
    spoiled: [],
    rests: new Set(node.items),
  };
}

/** `target:60`, `altitude < 350`. */
function slipOfColon(pair: Pair): BracketSlip | null {
  const written = nameOf(pair);
  const tight = /^([A-Za-z][\w-]*):(\S.*)$/.exec(written);
  const compared = /^([A-Za-z][\w-]*)\s*((?:[<>]=?|!?=).*)$/.exec(written);
  const [, key = '', rest = ''] = tight ?? compared ?? [];
  if (key === '') return null;
  return {
    code: 'missing-colon',
    message: tight
      ? `A colon needs a space after it, ${quoted(written)} has none; write “${key}: ${rest}”.`
      : `A key in braces needs a colon and its value, ${quoted(written)} has none; write “${key}: "${rest}"”.`,
    offset: stretchOf(pair.key)?.[0] ?? 0,
    key: null,
    spoiled: [key],
    rests: new Set([pair]),
  };
}

function slipOfComma(before: Pair | undefined, group: readonly Pair[], text: string): BracketSlip {
  const [first, last] = [stretchOf(group[0]!.key), stretchOf(group[group.length - 1]!.key)];
  const value = stretchOf(before?.value) ?? first;
  const whole = value && last ? text.slice(value[0], last[1]) : '';
  const isOneText = isScalar(before?.value);
  const slip = (spoils: boolean, message: string): BracketSlip => ({
    code: 'stray-comma',
    message,
    offset: (spoils ? value?.[0] : first?.[0]) ?? 0,
    key: before ? nameOf(before) : null,
    spoiled: spoils && before ? [nameOf(before)] : [],
    rests: new Set(group),
  });
  if (isOneText) {
    const number = /^[-−+]?\d+(,\d+)+$/.test(whole) ? numberIn(whole) : null;
    if (number !== null)
      return slip(
        true,
        `A comma ends a value in brackets, so ${quoted(whole)} is no number; write ${number}.`,
      );
    const pair = pairIn(whole);
    if (pair)
      return slip(
        true,
        `Two numbers stand in [brackets], found ${quoted(whole)} without them; write ${sayInterval(pair)}.`,
      );
  }
  const rest = nameOf(group[0]!);
  if (!before || !isOneText || flags.has(rest)) {
    const [key = rest, ...words] = rest.split(/\s+/);
    const value = words.join(' ') || (flags.has(rest) ? 'true' : '…');
    return {
      ...slip(false, ''),
      code: 'missing-colon',
      message: `Entries in {braces} are a key, a colon and a value, ${quoted(rest)} has no colon; write it like “${key}: ${value}”, or take it away.`,
      spoiled: [key],
    };
  }
  const plain = whole.replace(/^[“”„‘’«»]|[“”„‘’«»]$/g, '');
  const example = plain.length <= 60 && !/["\\\n]/.test(plain) ? `: "${plain}"` : '';
  const straight = plain === whole ? '' : 'straight ';
  return slip(
    false,
    `A comma ends a value in brackets, so ${quoted(rest)} is taken for a key; put the whole text in ${straight}quotes${example}.`,
  );
}

/** Keys whose value is yes or no. */
const flags: ReadonlySet<string> = new Set(['critical', 'neutral', 'overriding', 'dashed']);

/** `[57,5, 63,5]`: some commas stand between digits, others are followed by a space. */
export function slipInList(
  node: YAMLSeq,
  text: string,
): Pick<BracketSlip, 'code' | 'message' | 'offset'> | null {
  if (node.flow !== true || node.items.length < 3 || node.items.length > 20) return null;
  const groups: string[] = [];
  let end = -1;
  for (const item of node.items) {
    const stretch = isMap(item) || isSeq(item) ? null : stretchOf(item);
    const written = stretch ? text.slice(...stretch) : '';
    if (!stretch || !/^[-−+]?\d+$/.test(written)) return null;
    if (end >= 0 && text.slice(end, stretch[0]) === ',') groups[groups.length - 1] += `,${written}`;
    else groups.push(written);
    end = stretch[1];
  }
  const numbers = groups.map(numberIn);
  if (groups.length < 2 || groups.length === node.items.length || numbers.includes(null)) return null;
  const cut = groups.find((group) => group.includes(','))!;
  return {
    code: 'stray-comma',
    message: `A comma ends a value in brackets, so ${quoted(cut)} is read as two numbers; write [${numbers.join(', ')}].`,
    offset: stretchOf(node)?.[0] ?? 0,
  };
}
