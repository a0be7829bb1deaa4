/** Two numbers that were written in another way than [from, to]: what to write instead. */
import { isMapping, type Plain } from './plain-data.ts';
import { sayInterval } from './quoting.ts';
import { numberIn } from './words-for-number.ts';

const number = String.raw`([-−+]?\s?\d+(?:[.,]\d+)?)`;
const pair = new RegExp(
  String.raw`^[[({]?\s*${number}\s*(?:\.{2,}|…|[-–—;:/,x×\s]|\bto\b)\s*${number}\s*[\])}]?$`,
);

/** "0 1000", "57-63", "57..63", "(57, 63)" -> the two numbers, in their order; else null. */
export function pairIn(text: string): readonly [number, number] | null {
  const [, first = '', second = ''] = (text.length <= 100 && pair.exec(text.trim())) || [];
  const [from, to] = [numberIn(first), numberIn(second)];
  return from === null || to === null ? null : [from, to];
}

/**
 * The mend for what stands where two numbers belong.
 * @param target of the band whose end it is, if it is one
 * @param found the elements of the list there, or what stands there alone
 */
export function mendForPair(found: readonly (Plain | undefined)[], target?: Plain): string {
  const [only] = found;
  const either = typeof only === 'number' ? only : numberIn(String(only).replace(/^(\+\/?-|±)\s*/, ''));
  if (
    found.length === 1 &&
    either !== null &&
    typeof target === 'number' &&
    Math.abs(either) < Math.abs(target)
  ) {
    const ends = [target - Math.abs(either), target + Math.abs(either)] as const;
    return `write both ends, ${sayInterval(ends)} for ${Math.abs(either)} to either side of the target`;
  }
  const named = found.length === 1 && isMapping(only) ? Object.values(only) : [];
  const [first, second] = named;
  if (named.length === 2 && typeof first === 'number' && typeof second === 'number')
    return `write ${sayInterval([first, second])}`;
  const meant = found.length === 1 && typeof only === 'string' ? pairIn(only) : null;
  if (meant) return `write ${sayInterval(meant)}, with a comma between them`;
  return 'write them as [first, second], with a point before decimals';
}
