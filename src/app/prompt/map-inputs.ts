/** Which two inputs a decision map begins with. */
import type { State } from '../../rules/types.ts';

/**
 * The two that matter most; where a twin was asked, the input in which it differs is one of them, else
 * the pair could not be seen.
 * @param telling the two that matter most, across and up; null where there is no pair.
 */
export function startingInputs(
  telling: readonly [x: string, y: string] | null,
  state: State,
  twin: State | null,
): readonly [x: string, y: string] | null {
  if (!telling || !twin) return telling;
  const differs = Object.keys(twin).find((id) => twin[id] !== state[id]);
  if (differs === undefined || telling.includes(differs)) return telling;
  return [differs, telling[1]];
}
