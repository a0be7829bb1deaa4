import { inSentence } from '../cards/wording.ts';
import type { Answer, Ask } from '../cards/types.ts';
import { sayNumber, unitSuffix } from '../deck/say.ts';
import { unreadable, type AskOf, type FormResult } from './form-grade.ts';

/** By the distance from the spot, in the plate's unit, against the spot's two radii. */
export function gradePoint({ plate, spot }: AskOf<'point', Ask>, answer: AskOf<'point', Answer>): FormResult {
  const [x, y] = answer.at;
  if (!Number.isFinite(x) || !Number.isFinite(y))
    return unreadable('not-a-number', 'That point has no place on the drawing. Point to it again.');
  const [width, height] = plate.size;
  if (x < 0 || y < 0 || x > width || y > height)
    return unreadable('out-of-range', 'That point is off the drawing. Point to a place on it.');
  const away = (at: readonly [number, number]) => Math.hypot(x - at[0], y - at[1]);
  const distance = away(spot.at);
  const performance =
    distance <= spot.desiredWithin ? 'desired' : distance <= spot.adequateWithin ? 'adequate' : 'outside';
  const said = `${sayNumber(Number(distance.toPrecision(2)))}${unitSuffix(plate)} off`;
  const taken = plate.spots.find((other) => away(other.at) <= other.desiredWithin);
  const headline = {
    desired: 'on the spot',
    adequate: said,
    outside: taken ? `that is ${inSentence(taken.label)}` : said,
  }[performance];
  return { ok: true, performance, headline, detail: { form: 'point', at: answer.at, distance } };
}
