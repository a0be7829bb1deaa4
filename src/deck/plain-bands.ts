/** Bands as plain numbers: what formulas stand in is replaced by what they come to. */
import type { AuthoredBand, AuthoredGate, Band, Gate } from './types.ts';

/** True when no formula stands in the band. */
export const isPlain = (band: AuthoredBand): band is Band =>
  [band.target, ...band.desired, ...band.adequate, band.floor, band.ceiling].every(
    (number) => typeof number !== 'string',
  );

/**
 * The gates with plain bands only: the others are exchanged for those given, or left out.
 * @param copied is told of each copy made of a gate.
 */
export function plainGates(
  gates: readonly AuthoredGate[],
  bands: ReadonlyMap<AuthoredBand, Band>,
  copied: (from: object, to: object) => void,
): Gate[] {
  return gates.map((gate) => {
    const entries = Object.entries(gate.values);
    if (entries.every(([, band]) => isPlain(band))) return gate as Gate;
    const values: Record<string, Band> = {};
    for (const [id, band] of entries) {
      const plain = isPlain(band) ? band : bands.get(band);
      if (!plain) continue;
      values[id] = plain;
      if (plain !== band) copied(band, plain);
    }
    const plainGate = { ...gate, values };
    copied(gate, plainGate);
    return plainGate;
  });
}
