/**
 * A longest strictly increasing subsequence, by patience sorting in n log n (Schensted 1961;
 * Fredman 1975). Of several equally long ones the result is the one this method gives: fixed for a
 * given input.
 */
export function longestIncreasing(numbers: readonly number[]): number[] {
  /** Index of the smallest last number of an increasing subsequence of each length. */
  const tails: number[] = [];
  const before: number[] = [];
  numbers.forEach((number, index) => {
    let low = 0;
    let high = tails.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (numbers[tails[middle]!]! < number) low = middle + 1;
      else high = middle;
    }
    before[index] = low > 0 ? tails[low - 1]! : -1;
    tails[low] = index;
  });
  const result: number[] = [];
  for (let index = tails.at(-1) ?? -1; index >= 0; index = before[index]!) result.push(numbers[index]!);
  return result.reverse();
}
