/** A look at data from outside before anything walks it: only plain, shallow data without traps passes. */

const traps: ReadonlySet<string> = new Set(['__proto__', 'constructor', 'prototype']);
const deepest = 8;

/** What is wrong with an object from outside, in words; null when it is plain data and harmless. */
export function harmIn(value: unknown): string | null {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return 'it is not an object';
  return harmWithin(value, 1);
}

function harmWithin(value: object, depth: number): string | null {
  if (depth > deepest) return 'it is nested too deeply';
  if (!Array.isArray(value) && !isPlain(value)) return 'it is not plain data';
  for (const key of Object.keys(value)) {
    if (traps.has(key)) return `it has a field named “${key}”`;
    const inner: unknown = (value as Record<string, unknown>)[key];
    if (typeof inner === 'object' && inner !== null) {
      const harm = harmWithin(inner, depth + 1);
      if (harm !== null) return harm;
    } else if (typeof inner === 'function' || typeof inner === 'symbol' || typeof inner === 'bigint')
      return `“${key}” is not plain data`;
  }
  return null;
}

function isPlain(value: object): boolean {
  const prototype: unknown = Object.getPrototypeOf(value);
  return prototype === Object.prototype || prototype === null;
}
