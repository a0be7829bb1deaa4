/** How far an observed share may be from the true one. */

export interface Interval {
  readonly from: number;
  readonly to: number;
}

/** Of the normal distribution, for 95 %. */
const Z = 1.959964;

/**
 * The interval of 95 % for a share, from `hits` out of `count`; all of 0 to 1 without any. E. B. Wilson,
 * "Probable Inference, the Law of Succession, and Statistical Inference", J. American Statistical
 * Association 22 (1927): it stays within 0 to 1, and is of use for a handful too.
 */
export function wilsonInterval(hits: number, count: number): Interval {
  if (count === 0) return { from: 0, to: 1 };
  const share = hits / count;
  const centre = share + (Z * Z) / (2 * count);
  const reach = Z * Math.sqrt((share * (1 - share)) / count + (Z * Z) / (4 * count * count));
  const scale = 1 + (Z * Z) / count;
  return {
    from: hits === 0 ? 0 : (centre - reach) / scale,
    to: hits === count ? 1 : (centre + reach) / scale,
  };
}
