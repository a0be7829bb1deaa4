/** A plate's drawing on the screen, and the way between a point on it and a point in its own unit. */
import type { Plate } from '../../deck/types.ts';

export type PlatePoint = readonly [number, number];

/** Where the arrow keys take the cross. Coarse steps cross the drawing in about 30 presses. */
const coarseShare = 1 / 32;
const fineShare = 1 / 160;

const directions: Readonly<Record<string, PlatePoint>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

const held = (value: number, most: number): number => Math.min(most, Math.max(0, value));

/** The nearest point of the drawing, rounded to a thousandth of its width: what a hand can mean. */
export function onPlate(plate: Plate, at: PlatePoint): PlatePoint {
  const grain = plate.size[0] / 1000;
  const round = (value: number): number => Number((Math.round(value / grain) * grain).toPrecision(8));
  return [
    held(round(held(at[0], plate.size[0])), plate.size[0]),
    held(round(held(at[1], plate.size[1])), plate.size[1]),
  ];
}

/** Where a key moves the cross, or null when the key is not an arrow. With `fine`, in small steps. */
export function movedBy(plate: Plate, at: PlatePoint, key: string, fine: boolean): PlatePoint | null {
  const direction = directions[key];
  if (!direction) return null;
  const step = Math.max(...plate.size) * (fine ? fineShare : coarseShare);
  return onPlate(plate, [at[0] + direction[0] * step, at[1] + direction[1] * step]);
}

/** From a pointer's place over the drawing's box on the screen to the plate's unit. */
export function fromScreen(
  plate: Plate,
  box: { readonly left: number; readonly top: number; readonly width: number; readonly height: number },
  clientX: number,
  clientY: number,
): PlatePoint {
  return onPlate(plate, [
    ((clientX - box.left) / (box.width || 1)) * plate.size[0],
    ((clientY - box.top) / (box.height || 1)) * plate.size[1],
  ]);
}

/** Distance between two points, in the plate's unit. */
export function distanceOn(one: PlatePoint, other: PlatePoint): number {
  return Math.hypot(one[0] - other[0], one[1] - other[1]);
}
