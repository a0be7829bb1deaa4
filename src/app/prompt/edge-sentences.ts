/** How far a state was from one that calls for something else, in words. */
import { actionOf, controlOf, phaseOf, quantityOf } from '../../deck/lookup.ts';
import { sayList, sayValue } from '../../deck/say.ts';
import type { Deck, Quantity } from '../../deck/types.ts';
import { saySigned } from '../../rules/say-signed.ts';
import type { Decision, Edge, EdgeDistance } from '../../rules/types.ts';

const mostSentences = 3;

/**
 * The nearest edges first, measured in steps of each quantity, a few at most. Where what can occur in the
 * phase ends there is nothing to learn: such an end is none.
 */
export function edgeSentences(
  deck: Deck,
  phase: string,
  scenario: { readonly decision: Decision; readonly edges: readonly EdgeDistance[] },
): readonly string[] {
  const { actions } = scenario.decision;
  const ranges = phaseOf(deck, phase).state;
  return scenario.edges
    .flatMap(({ quantity: id, below, above }) => {
      const quantity = quantityOf(deck, id);
      const sides: { edge: Edge | null; up: boolean }[] = [
        { edge: below, up: false },
        { edge: above, up: true },
      ];
      return sides.flatMap(({ edge, up }) =>
        edge === null || ranges[id]?.includes(edge.at)
          ? []
          : [
              {
                steps: edge.distance / quantity.step,
                text: `${quantity.label}: ${sayPlace(edge, quantity, up)} ${sayChange(deck, actions, edge.actions)}.`,
              },
            ],
      );
    })
    .sort((one, other) => one.steps - other.steps)
    .slice(0, mostSentences)
    .map(({ text }) => text);
}

/**
 * How far the edge is, or that the state lies on the last value before it. Of a value that is said by its
 * side, "more" is more to that side: "falling back 6 kt; any more and it is go around".
 * @param up the edge lies above the state's value.
 */
function sayPlace({ at, distance }: Edge, quantity: Quantity, up: boolean): string {
  const edge = saySigned(at, quantity);
  const value = up ? at - distance : at + distance;
  const isBySide = value < 0 && saySigned(value, quantity) !== sayValue(value, quantity);
  const way = up === isBySide ? 'less' : 'more';
  if (distance < quantity.step / 2) return `you are at the edge, ${edge}; any ${way} and it is`;
  const far = sayValue(distance, quantity);
  return at * value < 0
    ? `the edge is ${edge}, ${far} away; past it`
    : `the edge is ${edge}, ${far} ${way}; past it`;
}

function sayChange(
  deck: Deck,
  before: Readonly<Record<string, string>>,
  after: Readonly<Record<string, string>>,
): string {
  const changed = Object.entries(after).filter(([control, action]) => before[control] !== action);
  const words = changed.map(([controlId, action]) => {
    const control = controlOf(deck, controlId);
    const { label, spoken } = actionOf(control, action);
    return spoken ?? `${control.label.toLowerCase()} ${label.toLowerCase()}`;
  });
  return words.length > 0 ? sayList(words) : 'the rest is asked again';
}
