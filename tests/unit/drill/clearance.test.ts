import { expect, it } from 'vitest';
import { clearShare, clearanceOf, closenessOf } from '../../../src/drill/clearance.ts';
import { drawScenario } from '../../../src/drill/scenario.ts';
import { targetsOf } from '../../../src/drill/targets.ts';
import { seeded } from '../../../src/rules/random.ts';
import { shipped } from '../cards/procedures.ts';

it.each(shipped)('a scenario said to be well clear is clear of every edge, in %s', (_, procedure) => {
  const said = new Set<string>();
  for (const target of targetsOf(procedure).rules.slice(0, 60)) {
    const scenario = drawScenario(procedure, target, 'wide', seeded(4))!;
    const closeness = closenessOf(procedure, scenario);
    said.add(closeness);
    const isClear = clearanceOf(procedure, scenario.phase, scenario.state) >= clearShare;
    expect(closeness).toBe(isClear ? 'wide' : 'narrow');
  }
  expect(said).toContain('wide');
});
