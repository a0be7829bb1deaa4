/** The pilot's answer at a decision point. */
import { actionOf, controlOf, neutralOf } from '../deck/lookup.ts';
import type { PhaseRules } from '../rules/types.ts';
import type { HeldAction, Pass } from './types.ts';

/**
 * Answers the open decision point; a pass without one is given back as it is. What was held until now is
 * let go, what is chosen works after the control's lag. An action that beats all others (a go-around)
 * ends the pass, called for or not.
 * @param chosen control -> action; controls left out, and names the phase doesn't know, are neutral.
 */
export function correct(pass: Pass, chosen: Readonly<Record<string, string>>): Pass {
  const { open, procedure, nowMs } = pass;
  if (!open) return pass;
  const rules = procedure.phases.get(open.phase)!;
  const { overriding } = open.decision;
  const choices: Record<string, string> = {};
  const called: HeldAction[] = [];
  const lags = new Map<string, number>();
  for (const id of rules.phase.controls) {
    const control = controlOf(procedure.deck, id);
    const neutral = neutralOf(control).id;
    const wanted = chosen[id];
    const isKnown = wanted !== undefined && control.actions.some((action) => action.id === wanted);
    const action = isKnown ? actionOf(control, wanted).id : neutral;
    choices[id] = action;
    const lagMs = 1000 * (control.lagS ?? 0);
    lags.set(id, lagMs);
    const fromMs = nowMs + lagMs;
    const toMs = control.holdS === undefined ? Infinity : fromMs + 1000 * control.holdS;
    if (action !== neutral) called.push({ control: id, action, fromMs, toMs });
  }
  const letGo = pass.held.map((held) =>
    held.toMs === Infinity ? { ...held, toMs: nowMs + (lags.get(held.control) ?? 0) } : held,
  );
  const answered = { ...open, chosen: choices };
  const beating = beatingCall(rules, choices);
  const demanded = overriding !== null && choices[overriding.control] === overriding.action;
  return {
    ...pass,
    decisions: [...pass.decisions.slice(0, -1), answered],
    open: null,
    held: [...letGo, ...called],
    ended: beating ? { kind: 'go-around', tMs: nowMs, demanded } : null,
    legs: beating ? pass.legs.map((leg) => (leg.toMs === null ? { ...leg, toMs: nowMs } : leg)) : pass.legs,
    inner: { ...pass.inner, isMissed: pass.inner.isMissed || (overriding !== null && !demanded) },
  };
}

/** True when an action is chosen that beats all others somewhere in the phase. */
function beatingCall({ overriding, neutral }: PhaseRules, chosen: Readonly<Record<string, string>>): boolean {
  return overriding.some(
    ({ control, rules }) =>
      chosen[control] !== neutral.get(control) && rules.some((rule) => rule.then === chosen[control]),
  );
}
