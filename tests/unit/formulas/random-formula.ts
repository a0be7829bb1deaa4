/** Formulas drawn from a tape of numbers: most fit together, some have a slip in them. */

export type Kind = 'speed' | 'length' | 'time' | 'mass' | 'angle' | 'pressure' | 'plain';
const kinds: readonly Kind[] = ['speed', 'length', 'time', 'mass', 'angle', 'pressure', 'plain'];

/** Quantities with their units and a value each. */
export const quantities: Readonly<Record<string, readonly [value: number, unit: string]>> = {
  wind: [17, 'kt'],
  sink: [450, 'ft/min'],
  height: [310, 'ft'],
  spacing: [1.2, 'nm'],
  duration: [49, 's'],
  fuel: [900, 'kg'],
  weight: [17200, 'lb'],
  bank: [25, 'deg'],
  qnh: [1013.25, 'hPa'],
  share: [12, 'count'],
};

const leaves: Readonly<Record<Kind, readonly string[]>> = {
  speed: ['wind', 'sink', '15 kt', '200 ft/min', '3 m/s'],
  length: ['height', 'spacing', '40 ft', '0.5 nm', '12 m'],
  time: ['duration', '3 s', '2 min', '0.1 h'],
  mass: ['fuel', 'weight', '100 lb', '7 kg'],
  angle: ['bank', '30 deg', '0.2 rad'],
  pressure: ['qnh', '29.92 inHg', '1000 hPa'],
  plain: ['share', '2', '0.25', '7'],
};

export class Tape {
  readonly #numbers: readonly number[];
  #at = 0;

  constructor(numbers: readonly number[]) {
    this.#numbers = numbers;
  }

  below(count: number): number {
    return (this.#numbers[this.#at++ % this.#numbers.length] ?? 0) % count;
  }

  of<T>(list: readonly T[]): T {
    return list[this.below(list.length)]!;
  }
}

/** @param slips one in so many parts is of any kind; none when 0. */
export function formula(kind: Kind, tape: Tape, depth: number, slips: number): string {
  const wanted = slips > 0 && tape.below(slips) === 1 ? tape.of(kinds) : kind;
  if (depth === 0) return tape.of(leaves[wanted]);
  const part = (of: Kind): string => formula(of, tape, depth - 1, slips);
  const forms: (() => string)[] = [
    () => tape.of(leaves[wanted]),
    () => `(${part(wanted)} + ${part(wanted)})`,
    () => `(${part(wanted)} - ${part(wanted)})`,
    () => `-(${part(wanted)})`,
    () => `${part('plain')} * (${part(wanted)})`,
    () => `(${part(wanted)}) / (${part('plain')})`,
    () => `abs(${part(wanted)})`,
    () => `max(${part(wanted)}, ${part(wanted)})`,
    () => `min(${part(wanted)}, ${part(wanted)}, ${part(wanted)})`,
    // Never near zero, where a root makes much of the last bits.
    () => `sqrt((${part(wanted)}) ^ 2 + (${tape.of(leaves[wanted])}) ^ 2)`,
    () => `(${part(wanted)}) ^ 3 / (${part(wanted)}) ^ 2`,
    () =>
      `(${part('length')} ${tape.of(['<', '>', '<=', '>='])} ${part('length')} ? ${part(wanted)} : ${part(wanted)})`,
    ...special(wanted, part),
  ];
  return tape.of(forms)();
}

function special(kind: Kind, part: (of: Kind) => string): (() => string)[] {
  switch (kind) {
    case 'speed':
      return [() => `(${part('length')}) / (${part('time')})`];
    case 'length':
      return [
        () => `(${part('speed')}) * (${part('time')})`,
        () => `(${part('speed')}) ^ 2 / (9 m/s^2 * tan(25 deg))`,
      ];
    case 'time':
      return [() => `(${part('length')}) / (${part('speed')})`];
    case 'angle':
      return [() => `atan(${part('plain')})`, () => `atan2(${part('mass')}, ${part('mass')})`];
    case 'plain':
      return [
        () => `sin(${part('angle')})`,
        () => `cos(${part('angle')})`,
        () => `(${part('mass')}) / (${part('mass')})`,
        // Off the halves: there the last bit of a sine decides, in either library.
        () => `round(${part('plain')} + 0.0137)`,
        () => `floor(${part('plain')})`,
        () => `ceil(${part('plain')})`,
      ];
    default:
      return [];
  }
}
