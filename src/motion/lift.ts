/**
 * Who carries a powered-lift aeroplane while it slows down. Model: at one angle of attack and one air density
 * a wing's lift goes with the square of the airspeed (L = ½ ρ V² S C_L), so below the speed at which it carries
 * the whole weight it carries the square of their ratio; thrust pointing down must carry the rest.
 */

/**
 * The wing's share of the weight, 0 to 1.
 * @param wingborneKt the airspeed at which the wing alone carries it at that angle of attack, > 0.
 */
export const wingShare = (airspeedKt: number, wingborneKt: number): number =>
  Math.min(1, Math.max(0, airspeedKt / wingborneKt) ** 2);

/** The share of the weight that the wing gives up each second: 2 V a / V1². @param decelerationKtS from 0 on. */
export const shareLostPerSecond = (
  airspeedKt: number,
  wingborneKt: number,
  decelerationKtS: number,
): number => (airspeedKt > wingborneKt ? 0 : (2 * airspeedKt * decelerationKtS) / wingborneKt ** 2);
