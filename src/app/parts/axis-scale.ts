/**
 * A way to show a mile and a wingspan in one picture: along each axis the gap between neighbouring
 * stops is drawn as a power of its true length. Power 1 is to scale; smaller powers bring near things
 * apart and far things together. Order and straight lines along the axes are kept, which is what a
 * pattern of legs and turns is recognised by.
 */

/** Gaps well under this are drawn in proportion, so that a few feet of stagger don't become a jog. */
const softFt = 30;

export interface AxisScale {
  /** Picture units, no particular length; rises with the value. */
  (valueFt: number): number;
}

export interface Stretch {
  readonly fromFt: number;
  readonly toFt: number;
  /** Gaps inside are drawn this many times as long. */
  readonly factor: number;
}

/**
 * @param stopsFt values that must be told apart; any order, repeats allowed.
 * @param power 0 < power <= 1; 1 is to scale.
 */
export function axisScale(stopsFt: readonly number[], power: number, stretch?: Stretch): AxisScale {
  const stops = [...new Set(stopsFt)].sort((a, b) => a - b);
  if (stops.length < 2 || power >= 1) return (valueFt) => valueFt;
  const at: number[] = [0];
  for (let i = 1; i < stops.length; i++) {
    const gapFt = stops[i]! - stops[i - 1]!;
    const inside = stretch && stops[i - 1]! >= stretch.fromFt && stops[i]! <= stretch.toFt;
    const drawn = ((gapFt + softFt) ** power - softFt ** power) * (inside ? stretch.factor : 1);
    at.push(at[i - 1]! + drawn);
  }
  return (valueFt) => {
    let i = 1;
    while (i < stops.length - 1 && valueFt > stops[i]!) i++;
    const share = (valueFt - stops[i - 1]!) / (stops[i]! - stops[i - 1]!);
    return at[i - 1]! + share * (at[i]! - at[i - 1]!);
  };
}
