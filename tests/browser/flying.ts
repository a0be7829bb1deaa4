/** A pilot who flies a pass by what the page shows: reads the instruments, decides by the rules, calls. */
import type { Page } from 'playwright-core';
import { keysFor } from '../../src/app/state/control-keys.ts';
import { controlOf, neutralOf, quantityOf } from '../../src/deck/lookup.ts';
import { compileRules } from '../../src/rules/compile.ts';
import { decide } from '../../src/rules/decide.ts';
import type { Phase } from '../../src/deck/types.ts';
import { shippedDeck } from '../reference/shipped-deck.ts';

const deck = shippedDeck('marram-recovery');
const procedure = compileRules(deck).procedure!;
const keys = keysFor(deck.controls ?? []);

/** Waits until the page stands at a decision point, or the pass is over: null then. */
export async function nextPoint(page: Page): Promise<Phase | null> {
  await page.locator('[data-stage=asking], .verdict').first().waitFor();
  if ((await page.locator('.verdict').count()) > 0) return null;
  const label = await page.locator('.flying h1').innerText();
  return deck.phases!.find((phase) => phase.label === label)!;
}

/** What the rules ask for in the state that the instruments show: control -> action, of those to be moved. */
export async function wanted(page: Page, phase: Phase): Promise<Readonly<Record<string, string>>> {
  const words = await page
    .locator('.gauges [role=img]')
    .evaluateAll((gauges) => gauges.map((gauge) => gauge.getAttribute('aria-label') ?? ''));
  const state: Record<string, number> = {};
  for (const id of Object.keys(phase.state)) {
    const { label } = quantityOf(deck, id);
    const read = words.find((said) => said.startsWith(`${label} `))!;
    state[id] = Number.parseFloat(read.slice(label.length + 1));
  }
  const { actions } = decide(procedure, phase.id, state);
  return Object.fromEntries(
    Object.entries(actions).filter(([id, action]) => neutralOf(controlOf(deck, id)).id !== action),
  );
}

/** Sets what is wanted with keys and calls it; a call at once needs no more than its key. */
export async function callByKeyboard(page: Page, actions: Readonly<Record<string, string>>): Promise<void> {
  for (const [id, action] of Object.entries(actions)) {
    const control = controlOf(deck, id);
    const rowKeys = keys.get(id)!;
    const direct = rowKeys.direct?.get(action);
    if (direct) return page.keyboard.press(direct);
    const at = (of: string): number => control.actions.findIndex((one) => one.id === of);
    const steps = at(action) - at(neutralOf(control).id);
    const key = steps > 0 ? rowKeys.on : rowKeys.back!;
    for (let i = 0; i < Math.abs(steps); i++) await page.keyboard.press(nameOf(key));
  }
  await page.keyboard.press('Enter');
}

/** The same by thumb. */
export async function callByThumb(page: Page, actions: Readonly<Record<string, string>>): Promise<void> {
  for (const [id, action] of Object.entries(actions)) {
    const control = controlOf(deck, id);
    const { label } = control.actions.find((one) => one.id === action)!;
    if (id === 'call') return page.getByRole('button', { name: label }).tap();
    const row = page.getByRole('group', { name: control.label });
    await row.getByRole('button', { name: label, exact: true }).tap();
  }
  await page.getByRole('button', { name: 'Call it' }).tap();
}

const nameOf = (key: string): string =>
  ({ arrowup: 'ArrowUp', arrowdown: 'ArrowDown', arrowleft: 'ArrowLeft', arrowright: 'ArrowRight' })[key] ??
  key;
