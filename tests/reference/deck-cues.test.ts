/** A gate's cue is shown with the question, so it must not hold the answer. */
import { describe, expect, test } from 'vitest';
import { shippedDeck } from './shipped-deck.ts';

describe.each(['marram-recovery', 'light-aircraft-circuit'])('the cues of %s', (name) => {
  test('never say a value that is asked at the gate', () => {
    for (const { id, cue, values } of shippedDeck(name).gates) {
      const said =
        cue
          .replaceAll(/spot \d/gi, '')
          .match(/\d[\d,.]*\d|\d/g)
          ?.map((text) => Number(text.replaceAll(',', ''))) ?? [];
      const asked = Object.values(values).map((value) => value.target);
      expect(
        said.filter((value) => asked.includes(value)),
        id,
      ).toEqual([]);
    }
  });
});
