/** Labels along one line: each as near to where it belongs as the others let it. */

export interface Wish {
  /** Where its middle would like to be. */
  readonly at: number;
  readonly width: number;
}

/**
 * Middles of labels in a row such that none overlaps or leaves the row, with the least sum of squared
 * moves (pool adjacent violators: labels that would collide form a block that shares its displacement).
 * @param wishes in order of `at`.
 * @param gap least room between two labels.
 * @returns one middle per wish, or null when they can't all fit.
 */
export function spread(
  wishes: readonly Wish[],
  from: number,
  to: number,
  gap: number,
): readonly number[] | null {
  const needed = wishes.reduce((sum, wish) => sum + wish.width, 0) + gap * Math.max(0, wishes.length - 1);
  if (needed > to - from + 1e-9) return null;
  // In shifted coordinates (each label less the width before it) "no overlap" reads "not decreasing".
  let before = 0;
  const shifts = wishes.map((wish) => {
    const shift = before + wish.width / 2;
    before += wish.width + gap;
    return shift;
  });
  const blocks: { sum: number; count: number }[] = [];
  wishes.forEach((wish, i) => {
    blocks.push({ sum: wish.at - shifts[i]!, count: 1 });
    while (blocks.length > 1) {
      const [one, other] = [blocks[blocks.length - 2]!, blocks[blocks.length - 1]!];
      if (one.sum / one.count <= other.sum / other.count) break;
      blocks.splice(-2, 2, { sum: one.sum + other.sum, count: one.count + other.count });
    }
  });
  const latest = to - needed;
  const starts = blocks.flatMap(({ sum, count }) =>
    new Array<number>(count).fill(Math.min(Math.max(sum / count, from), Math.max(from, latest))),
  );
  return starts.map((start, i) => start + shifts[i]!);
}
