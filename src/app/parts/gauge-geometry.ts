/** The scale of a strip gauge: round numbers at the major ticks, and where the pointer stands. */

export interface Tick {
  readonly value: number;
  /** Along the strip, 0 at the low end, 1 at the high end. */
  readonly share: number;
  readonly major: boolean;
}

/** 1, 2 or 5 times a power of ten, the next at or above. */
export function roundStep(atLeast: number): number {
  if (!(atLeast > 0)) return 1;
  const magnitude = 10 ** Math.floor(Math.log10(atLeast) + 1e-9);
  const factor = [1, 2, 5, 10].find((candidate) => candidate * magnitude >= atLeast * (1 - 1e-9)) ?? 10;
  return factor * magnitude;
}

/** Share of the span at which a value stands, held inside the strip. */
export function shareOf(value: number, lo: number, hi: number): number {
  return hi > lo ? Math.min(1, Math.max(0, (value - lo) / (hi - lo))) : 0.5;
}

/**
 * Ticks over a span. Major ones stand at multiples of a round step and are far enough apart for their
 * labels; minor ones halve (or fifth) the step between.
 * @param lengthPx length of the strip.
 * @param leastPx least distance between two major ticks.
 */
export function ticksFor(lo: number, hi: number, lengthPx: number, leastPx: number): readonly Tick[] {
  if (!(hi > lo)) return [{ value: lo, share: 0.5, major: true }];
  const major = roundStep(((hi - lo) * leastPx) / lengthPx);
  const lead = Math.round(major / 10 ** Math.floor(Math.log10(major) + 1e-9));
  const fine = lead === 2 ? major / 4 : major / 5;
  const minor = ((fine / (hi - lo)) * lengthPx >= 4 ? fine : major / 2) || major;
  const perMajor = Math.round(major / minor);
  const [first, last] = [Math.ceil(lo / minor - 1e-9), Math.floor(hi / minor + 1e-9)];
  return Array.from({ length: last - first + 1 }, (_, i) => {
    const count = first + i;
    // Rounded to keep 0.30000000000000004 off the scale.
    const value = Number((count * minor).toPrecision(12));
    return { value, share: shareOf(value, lo, hi), major: count % perMajor === 0 };
  });
}

export interface Figure {
  readonly value: number;
  /** Of its tick, and of the middle of its digits: at an end they are moved inwards to stay on the strip. */
  readonly atPx: number;
  readonly textPx: number;
}

/** Between two figures of a level strip. */
const figureGapPx = 5;

/**
 * The figures of a level strip: round values, as many as can be read beside each other; where fewer than two
 * can, its two ends, or what alone has room.
 * @param insetPx what is free beyond either end of the strip.
 * @param widthOf how wide a figure is written.
 */
export function levelFigures(
  lo: number,
  hi: number,
  lengthPx: number,
  insetPx: number,
  widthOf: (value: number) => number,
): readonly Figure[] {
  const place = (value: number): Figure => {
    const atPx = shareOf(value, lo, hi) * lengthPx;
    const half = widthOf(value) / 2;
    const textPx = Math.min(lengthPx + insetPx - half, Math.max(half - insetPx, atPx));
    return { value, atPx, textPx };
  };
  const areApart = (figures: readonly Figure[]): boolean =>
    figures.every(({ value, textPx }, i) => {
      const before = figures[i - 1];
      const room = before && (widthOf(before.value) + widthOf(value)) / 2 + figureGapPx;
      return !before || textPx - before.textPx >= room!;
    });
  const round = (leastPx: number): Figure[] =>
    ticksFor(lo, hi, lengthPx, leastPx).flatMap(({ value, major }) => (major ? [place(value)] : []));
  for (let leastPx = 12; leastPx < 2 * lengthPx; leastPx *= 1.25) {
    const figures = round(leastPx);
    if (figures.length < 2) break;
    if (areApart(figures)) return figures;
  }
  const ends = [lo, hi].map(place);
  if (areApart(ends)) return ends;
  // As far out as they may stand.
  const outermost = ends.map((figure, i) => ({
    ...figure,
    textPx: i === 0 ? widthOf(lo) / 2 - insetPx : lengthPx + insetPx - widthOf(hi) / 2,
  }));
  return areApart(outermost) ? outermost : round(lengthPx).slice(0, 1);
}
