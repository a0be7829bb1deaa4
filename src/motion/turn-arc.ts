/**
 * The path of a level turn at constant bank in the air's own frame, while the airspeed changes evenly with
 * time. From dψ/dt = κ / V, κ = g tan(bank) (FAA-H-8083-25, chapter 5, rate of turn), and V = V0 + a t follows
 * V(ψ) = V0 exp(c ψ), c = a / κ: a logarithmic spiral, a circle where the speed holds. SI units.
 */
export interface TurnArc {
  /** Along the heading at the beginning, m. */
  readonly along: number;
  /** Towards the inside of the turn, m. */
  readonly inside: number;
  readonly seconds: number;
}

/**
 * ∫ V² (cos ψ, sin ψ) dψ / κ and ∫ V dψ / κ.
 * @param speeds true airspeed at the beginning and the end, m/s, > 0.
 * @param through radians turned, from 0 on.
 * @param kappa g tan(bank), m/s², > 0.
 */
export function turnArc(speeds: readonly [number, number], through: number, kappa: number): TurnArc {
  const [first, last] = speeds;
  const growth = through === 0 ? 0 : (2 * Math.log(last / first)) / through;
  const grown = Math.exp(growth * through);
  const scale = first ** 2 / (kappa * (1 + growth ** 2));
  const [cos, sin] = [Math.cos(through), Math.sin(through)];
  return {
    along: scale * (grown * (growth * cos + sin) - growth),
    inside: scale * (grown * (growth * sin - cos) + 1),
    seconds: (through * logarithmicMean(first, last)) / kappa,
  };
}

/** (b - a) / ln(b / a), which is both where they are the same: the mean of the speed over the heading. */
export function logarithmicMean(a: number, b: number): number {
  const ratio = Math.log(b / a);
  return Math.abs(ratio) < 1e-9 ? (a + b) / 2 : (b - a) / ratio;
}
