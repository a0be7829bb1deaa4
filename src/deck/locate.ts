/** Path in the document -> place in the text. */
import { isAlias, isMap, isScalar, isSeq, type Node } from 'yaml';
import type { DocumentPath } from './findings.ts';

/** From and to, in UTF-16 units from the start of the text. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

export type Target = 'value' | 'key';

/**
 * Where the value at a path stands, or the key that leads to it. What isn't there (a missing key) is
 * looked for at its nearest existing ancestor; what an alias stands for, at the alias.
 */
export function stretchOf(root: Node | null, path: DocumentPath, target: Target): Stretch {
  let stretch = stretchOfNode(root) ?? { from: 0, to: 0 };
  let node: unknown = root;
  for (const [depth, step] of path.entries()) {
    const isLast = depth === path.length - 1;
    if (isMap(node)) {
      const pair = node.items.find(({ key }) => isScalar(key) && key.value === step);
      if (!pair) return stretch;
      const key = stretchOfNode(pair.key) ?? stretch;
      if (isLast && target === 'key') return key;
      // An empty value has no text of its own: point to its key.
      const value = stretchOfNode(pair.value);
      stretch = value && value.to > value.from ? value : key;
      node = pair.value;
    } else if (isSeq(node) && typeof step === 'number') {
      const item = node.items[step];
      const here = stretchOfNode(item);
      if (!here) return stretch;
      stretch = here;
      node = item;
    } else return stretch;
    if (isAlias(node)) return stretch;
  }
  return stretch;
}

function stretchOfNode(node: unknown): Stretch | null {
  const range = (node as Node | null | undefined)?.range;
  return range ? { from: range[0], to: range[1] } : null;
}

/** The path of the innermost value that a place in the text belongs to, as far as it can be told. */
export function pathAt(root: Node | null, offset: number): DocumentPath {
  const path: (string | number)[] = [];
  let node: unknown = root;
  for (;;) {
    if (isMap(node)) {
      const pair = node.items.findLast(
        ({ key }) => isScalar(key) && (stretchOfNode(key)?.from ?? Infinity) <= offset,
      );
      const key = isScalar(pair?.key) ? pair.key.value : undefined;
      if (!pair || typeof key !== 'string' || !reaches(pair.value, offset)) return path;
      path.push(key);
      node = pair.value;
    } else if (isSeq(node)) {
      const index = node.items.findLastIndex((item) => (stretchOfNode(item)?.from ?? Infinity) <= offset);
      if (index < 0 || !reaches(node.items[index], offset)) return path;
      path.push(index);
      node = node.items[index];
    } else return path;
  }
}

/** False when the value ended before the place; an empty value may go on to it. */
function reaches(node: unknown, offset: number): boolean {
  const range = (node as Node | null | undefined)?.range;
  return !range || range[1] === range[0] || offset < range[2] || offset <= range[1];
}
