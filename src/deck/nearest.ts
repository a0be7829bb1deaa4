/** The known name that was probably meant: edit distance, as for a slip of the finger. */

/**
 * The nearest of the known names, or null when none is near enough (a third of its letters, at most
 * three). Ties go to the earlier one.
 */
export function nearestOf(name: string, known: Iterable<string>): string | null {
  const wanted = name.toLowerCase();
  let best: string | null = null;
  let least = Math.min(3, Math.max(1, Math.floor(name.length / 3))) + 1;
  for (const candidate of known) {
    const distance = editDistance(wanted, candidate.toLowerCase(), least);
    if (distance < least) {
      least = distance;
      best = candidate;
    }
  }
  return best;
}

/**
 * Insertions, deletions, replacements and swaps of neighbours that make one text the other (optimal
 * string alignment distance); `limit` when there are that many or more.
 */
export function editDistance(one: string, other: string, limit = Infinity): number {
  if (Math.abs(one.length - other.length) >= limit) return limit;
  let beforeLast: number[] = [];
  let last = Array.from({ length: other.length + 1 }, (_, column) => column);
  for (let row = 1; row <= one.length; row++) {
    const current = [row];
    let least = row;
    for (let column = 1; column <= other.length; column++) {
      const same = one[row - 1] === other[column - 1];
      let cost = Math.min(last[column]! + 1, current[column - 1]! + 1, last[column - 1]! + (same ? 0 : 1));
      const swapped =
        row > 1 && column > 1 && one[row - 1] === other[column - 2] && one[row - 2] === other[column - 1];
      if (swapped) cost = Math.min(cost, beforeLast[column - 2]! + 1);
      current[column] = cost;
      least = Math.min(least, cost);
    }
    if (least >= limit) return limit;
    beforeLast = last;
    last = current;
  }
  return Math.min(last[other.length]!, limit);
}

/** Remembers what it found and stops looking after so many names: a bounded cost on hostile files. */
export function suggester(most: number): (name: string, known: ReadonlySet<string>) => string | null {
  const found = new Map<ReadonlySet<string>, Map<string, string | null>>();
  let asked = 0;
  return (name, known) => {
    const before = found.get(known) ?? new Map<string, string | null>();
    found.set(known, before);
    if (!before.has(name))
      before.set(name, asked++ < most && name.length <= 200 ? nearestOf(name, known) : null);
    return before.get(name)!;
  };
}
