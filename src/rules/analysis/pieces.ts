/** Uncovered states as few, large blocks, for people to read. */
import { uncovered, type Budget, type Uncovered } from '../cover.ts';
import { doMeet, type Block, type Space } from '../space.ts';

/**
 * As `uncovered`, but each block is grown along every input as far as it goes before the next is looked
 * for. Disjoint; a gap the shape of an L comes as two.
 */
export function largePieces(
  space: Space,
  start: Block,
  covers: readonly Block[],
  most: number,
  budget: Budget,
): Uncovered {
  const pieces: Block[] = [];
  for (;;) {
    const taken = [...covers, ...pieces];
    const { blocks, stopped } = uncovered(space, start, taken, 1, budget);
    const [found] = blocks;
    if (!found) return { blocks: pieces, stopped };
    if (pieces.length === most) return { blocks: pieces, stopped: 'limit' };
    pieces.push(grown(space, found, start, taken));
  }
}

/** The block widened within `start`, one axis after the other, by all that meets no cover. */
function grown(space: Space, block: Block, start: Block, covers: readonly Block[]): Block {
  const result = block.slice();
  for (const { firstWord, words } of space.axes) {
    const wide = result.slice();
    for (let w = firstWord; w < firstWord + words; w++) wide[w] = start[w]!;
    for (const cover of covers) {
      if (!doMeet(space, cover, wide)) continue;
      for (let w = firstWord; w < firstWord + words; w++) wide[w]! &= ~cover[w]!;
    }
    result.set(wide);
  }
  return result;
}
