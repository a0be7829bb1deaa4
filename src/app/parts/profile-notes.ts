/** A few words between two gates of the height profile, above its base line, where they are clear of what is drawn. */
import type { ProfileLayout } from './profile-geometry.ts';
import { textWidthPx } from './text-width.ts';

export interface ProfileNote {
  readonly text: string;
  /** The middle of the words, and the line they stand on. */
  readonly x: number;
  readonly y: number;
}

/** Air to the drop lines at either side, and to what lies above, px. */
const beside = 4;
const above = 5;
/** Half of a gate's mark, px. */
const mark = 6;

/** @param notes for each leg its words, or none. */
export function placeProfileNotes(
  layout: ProfileLayout,
  notes: readonly (string | null)[],
  sizePx: number,
): readonly ProfileNote[] {
  const y = layout.baseY - 7;
  const top = y - sizePx - above;
  return notes.flatMap((text, i) => {
    const [from, to] = [layout.xs[i], layout.xs[i + 1]];
    if (text === null || from === undefined || to === undefined) return [];
    if (textWidthPx(text, sizePx) + 2 * beside > to - from) return [];
    const ends = layout.gates.filter(({ number }) => number === i + 1 || number === i + 2);
    const lowest = ends.flatMap((gate) => [
      gate.y + mark,
      gate.floorY ?? 0,
      gate.label ? gate.label.y + sizePx / 2 : 0,
    ]);
    return Math.max(0, ...lowest) > top ? [] : [{ text, x: (from + to) / 2, y }];
  });
}
