/** Chance in a pass, from the seed alone: the same at the same moment, however it was got to. */
import { seeded } from '../rules/random.ts';

/** Between two values of restless air, ms. */
const knotMs = 3000;

/** FNV-1a over the parts, 32 bit (Fowler, Noll and Vo, public domain). */
function hash(...parts: readonly (string | number)[]): number {
  let value = 0x811c9dc5;
  for (const character of parts.join('/'))
    value = Math.imul(value ^ character.charCodeAt(0), 0x01000193) >>> 0;
  return value;
}

/** A number in [-1, 1), the same for the same parts. */
export const chance = (...parts: readonly (string | number)[]): number => {
  const random = seeded(hash(...parts));
  random();
  return 2 * random() - 1;
};

/**
 * Slow, bounded and smooth: a number in [-1, 1] that swings with time, another for each seed and quantity.
 * Values drawn every 3 s, half a cosine between two of them.
 */
export function restlessAir(seed: number, quantity: string): (tMs: number) => number {
  const knots: number[] = [];
  const knot = (index: number): number => (knots[index] ??= chance(seed, quantity, 'air', index));
  return (tMs) => {
    const index = Math.floor(tMs / knotMs);
    const share = (1 - Math.cos((Math.PI * (tMs - index * knotMs)) / knotMs)) / 2;
    return knot(index) * (1 - share) + knot(index + 1) * share;
  };
}
