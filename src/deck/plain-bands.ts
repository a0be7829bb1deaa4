/** Gates in plain numbers: what formulas stand in is replaced by what they come to. */
import type { AuthoredBand, AuthoredGate, Band, Gate, Position } from './types.ts';

/** True when no formula stands in the band. */
export const isPlain = (band: AuthoredBand): band is Band =>
  [band.target, ...band.desired, ...band.adequate, band.floor, band.ceiling].every(
    (number) => typeof number !== 'string',
  );

/** True when no formula stands in the position. */
export const isPlace = (position: AuthoredGate['position']): position is Position =>
  typeof position.aheadFt === 'number' && typeof position.rightFt === 'number';

/** Where a gate stands while it can't be told; never seen by anyone. */
const nowhere: Position = { aheadFt: 0, rightFt: 0, courseDeg: 0 };

/**
 * The gates in plain numbers only: bands with formulas are exchanged for those given, or left out, and so
 * are positions, which can't be left out.
 * @param copied is told of each copy made of a gate.
 */
export function plainGates(
  gates: readonly AuthoredGate[],
  bands: ReadonlyMap<AuthoredBand, Band>,
  positions: ReadonlyMap<AuthoredGate['position'], Position>,
  copied: (from: object, to: object) => void,
): Gate[] {
  return gates.map((gate) => {
    const entries = Object.entries(gate.values);
    const { position } = gate;
    if (isPlace(position) && entries.every(([, band]) => isPlain(band))) return gate as Gate;
    const place = isPlace(position) ? position : (positions.get(position) ?? nowhere);
    if (place !== position && place !== nowhere) copied(position, place);
    const values: Record<string, Band> = {};
    for (const [id, band] of entries) {
      const plain = isPlain(band) ? band : bands.get(band);
      if (!plain) continue;
      values[id] = plain;
      if (plain !== band) copied(band, plain);
    }
    const plainGate = { ...gate, position: place, values };
    copied(gate, plainGate);
    return plainGate;
  });
}
