/** Whole passes on the Marram deck: what they cost, and how those end that follow the rules, or don't. */
import { asDecided, fly, flyPass, nothing, opposite, seedsTo } from '../reference/passes.ts';
import type { Procedure } from '../../src/rules/types.ts';
import { measure } from './measure.ts';

export interface PassFigure {
  readonly name: string;
  readonly value: number;
  readonly unit: string;
  readonly spread?: number;
}

/** @param seeds how many passes each policy flies. */
export function passFigures(procedure: Procedure, seeds: number): PassFigure[] {
  const time = measure((call) => flyPass(procedure, { fromGate: 'abeam', seed: call }, asDecided), 3, 20);
  const policies = {
    'as the rules ask': asDecided,
    'nothing done': nothing,
    'opposite corrections': opposite,
  };
  return [
    { name: 'a pass from abeam to touchdown', value: time.seconds * 1e3, unit: 'ms', spread: time.spread },
    ...Object.entries(policies).flatMap(([name, policy]): PassFigure[] => {
      const { adequate, demanded, gatesHeld } = fly(procedure, 'abeam', seedsTo(seeds), policy);
      const what = `of ${seeds} passes, ${name}`;
      return [
        { name: `${what}: adequate at every gate`, value: adequate, unit: 'share' },
        { name: `${what}: ended by a go-around that was due`, value: demanded, unit: 'share' },
        { name: `${what}: gates held, mean`, value: gatesHeld, unit: 'gates' },
      ];
    }),
  ];
}
