/**
 * A longest strictly increasing subsequence (Schensted 1961), by the plain table over all pairs: lists that
 * a pilot puts in order are short. Of several equally long ones it is one that holds the most numbers that
 * are `worth` more; of several of those the one whose last numbers stand last. Fixed for a given input.
 * @param worth of the number at a place of the list; alike for all when left out.
 */
export function longestIncreasing(
  numbers: readonly number[],
  worth: (index: number) => number = () => 0,
): number[] {
  /** Of the best subsequence that ends at each place; `before` is -1 where it begins there. */
  const best: { readonly length: number; readonly worth: number; readonly before: number }[] = [];
  const isBetter = (one: number, other: number): boolean =>
    other < 0 ||
    best[one]!.length > best[other]!.length ||
    (best[one]!.length === best[other]!.length && best[one]!.worth >= best[other]!.worth);
  let last = -1;
  numbers.forEach((number, index) => {
    let before = -1;
    for (let earlier = 0; earlier < index; earlier++)
      if (numbers[earlier]! < number && isBetter(earlier, before)) before = earlier;
    const from = best[before] ?? { length: 0, worth: 0 };
    best.push({ length: from.length + 1, worth: from.worth + worth(index), before });
    if (isBetter(index, last)) last = index;
  });
  const result: number[] = [];
  for (let index = last; index >= 0; index = best[index]!.before) result.push(numbers[index]!);
  return result.reverse();
}
