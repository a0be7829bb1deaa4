/** Which hatch each outcome of a decision map has. */
import type { MapOutcome } from '../../drill/types.ts';
import type { MapWords } from './decision-map-words.ts';

const hatches = ['slant', 'dots', 'level', 'back', 'upright', 'net', 'rings', 'dashes'] as const;

export type MapLook = (typeof hatches)[number] | 'over' | 'blank';

/** What overrides is the darkest, what asks for nothing is blank; the rest are hatched in turn. */
export function mapLooks(
  outcomes: readonly MapOutcome[],
  { isQuiet }: Pick<MapWords, 'isQuiet'>,
): readonly MapLook[] {
  let hatched = 0;
  return outcomes.map(({ overriding }, outcome) => {
    if (overriding) return 'over';
    return isQuiet[outcome] ? 'blank' : hatches[hatched++ % hatches.length]!;
  });
}
