import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launchBrowser, newVisitor, open, phone } from './harness.ts';
import { answerByKeyboard, answerByThumb, savedRecord, settled } from './pilot.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(() => browser?.close());

const experienced = JSON.stringify({ theme: 'day', timing: 1, minutes: 10, deck: null, cautionSeen: true });

async function toDrill(size?: typeof phone, kept = experienced) {
  const visitor = await newVisitor(browser, size);
  await visitor.page.addInitScript((text) => {
    if (localStorage.getItem('gatecall.settings') === null) localStorage.setItem('gatecall.settings', text);
  }, kept);
  await open(visitor.page, '#/drill');
  await visitor.page.getByRole('button', { name: /^Start 10/ }).waitFor();
  return visitor;
}

describe('a drill', () => {
  it('is flown by keyboard alone: ten scenarios, each with its rule and why, all on record', async () => {
    const { page, faults, close } = await toDrill();
    await page.keyboard.press('Enter');
    for (let i = 0; i < 10; i++) {
      await answerByKeyboard(page);
      expect(await page.locator('.why .rule p').first().innerText()).not.toBe('');
      expect(await page.locator('.why').innerText()).toMatch(/: /);
      expect(await page.locator('.choice.required').count()).toBeGreaterThan(0);
      await page.keyboard.press('Enter');
    }
    await page.getByRole('heading', { name: 'Run done' }).waitFor();
    expect(await page.locator('.results li').count()).toBe(10);
    const { events } = await savedRecord(page);
    expect(events.map(({ mode }) => mode)).toEqual(Array(10).fill('drill'));
    expect(events.every(({ card }) => card?.startsWith('rule/'))).toBe(true);
    expect(faults).toEqual([]);
    await close();
  });

  it('is flown by thumb, and can be ended early without losing what was answered', async () => {
    const { page, close } = await toDrill(phone);
    await page.getByRole('button', { name: /^Start 10/ }).tap();
    for (let i = 0; i < 3; i++) {
      await answerByThumb(page);
      if (i < 2) await page.getByRole('button', { name: 'Next' }).tap();
    }
    await page.getByRole('button', { name: 'End the run' }).tap();
    await page.getByRole('heading', { name: 'Run done' }).waitFor();
    expect(await page.locator('.results li').count()).toBe(3);
    expect((await savedRecord(page)).events).toHaveLength(3);
    await close();
  });

  it('closes by itself when nobody answers, shows what was called for, and counts it as missed', async () => {
    const { page, close } = await toDrill();
    await page.keyboard.press('Enter');
    await page.locator('.question').waitFor();
    // The window of the demo's phases is 8 s at most, and twice that ends it.
    await page.locator('.feedback').waitFor({ timeout: 25_000 });
    expect(await page.locator('.verdict').innerText()).toMatch(/Outside[\s\S]*no answer in time/);
    expect(await page.locator('.choice.required').count()).toBeGreaterThan(0);
    expect((await savedRecord(page)).events).toHaveLength(1);
    await close();
  });

  it('runs without a clock when untimed is chosen', async () => {
    const { page, close } = await toDrill(undefined, experienced.replace('"timing":1', '"timing":null'));
    await page.keyboard.press('Enter');
    await settled(page);
    expect(await page.getByRole('timer').innerText()).toBe('untimed');
    await close();
  });
});
