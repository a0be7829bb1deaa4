/** Putting things in order by picking them one after the other: what a picker and a page's keys share. */

/** Digits first, then letters; left out are those that pages use for themselves (take back, untimed, pause…). A page that takes a letter after an
 * answer must wait until the grade has been seen. */
const keyRow = '123456789abcdefghijklmnoqrstvwxy'.split('');

/** The key for the option at a position, as `KeyboardEvent.key` gives it; none after the last. */
export function optionKey(index: number): string | null {
  return keyRow[index] ?? null;
}

/** Position of the option that a key means among so many, or null. */
export function optionIndexForKey(key: string, count: number): number | null {
  const index = keyRow.indexOf(key.length === 1 ? key.toLowerCase() : key);
  return index >= 0 && index < count ? index : null;
}

/** With one more picked; picking what is already picked takes it out and closes the gap. */
export function picked(chosen: readonly string[], id: string): readonly string[] {
  return chosen.includes(id) ? chosen.filter((other) => other !== id) : [...chosen, id];
}

/** Without the last one. */
export function takenBack(chosen: readonly string[]): readonly string[] {
  return chosen.slice(0, -1);
}
