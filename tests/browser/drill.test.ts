import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { start, toDrill } from './drilling.ts';
import { launchBrowser, newVisitor, open, phone } from './harness.ts';
import { answerByKeyboard, answerByThumb, savedRecord, settled } from './pilot.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(() => browser?.close());

const runDone = (page: Page) => page.getByRole('heading', { name: 'Run done' });

describe('a run of the drill', () => {
  it('of twenty is flown by keyboard alone, and what was missed is drilled by one key', async () => {
    const { page, faults, close } = await toDrill(browser);
    await page.keyboard.press('Enter');
    for (let i = 0; i < 20; i++) {
      await page.locator('.question').waitFor();
      await settled(page);
      // Going around is called by its key alone; the rest is set, then called.
      for (const key of [['g'], ['ArrowUp', 'ArrowRight', 'Enter'], ['ArrowDown', 'a', 'Enter']][i % 3]!)
        await page.keyboard.press(key);
      await page.locator('.feedback').waitFor();
      expect(await page.locator('.why .rule p').first().innerText()).not.toBe('');
      expect(await page.locator('.why').innerText()).toMatch(/: /);
      expect(await page.getByRole('table', { name: /called for/i }).count()).toBe(1);
      expect(await page.getByRole('img', { name: /^Decision map/ }).count()).toBe(1);
      await settled(page);
      await page.keyboard.press('Enter');
    }
    await runDone(page).waitFor();
    expect(await page.getByRole('heading', { level: 3 }).count()).toBeGreaterThan(0);
    await settled(page);
    await page.keyboard.press('Enter');
    // Each of them twice, and nothing else.
    await page.getByRole('region', { name: /^Scenario 1 of / }).waitFor();
    const { text, events } = await savedRecord(page);
    expect(events.map(({ mode }) => mode)).toEqual(Array(20).fill('drill'));
    expect(events.every(({ card }) => card?.startsWith('rule/'))).toBe(true);
    const marks = (JSON.parse(text) as { events: { drill?: { phase: string } }[] }).events;
    expect(marks.every(({ drill }) => drill?.phase)).toBe(true);
    expect(faults).toEqual([]);
    await close();
  });

  it('of twenty is flown by thumb', async () => {
    const { page, faults, close } = await toDrill(browser, { size: phone });
    await start(page).tap();
    for (let i = 0; i < 20; i++) {
      await answerByThumb(page);
      await page.getByRole('button', { name: 'Next' }).tap();
    }
    await runDone(page).waitFor();
    expect((await savedRecord(page)).events).toHaveLength(20);
    expect(faults).toEqual([]);
    await close();
  });

  it('may be ended early without losing what was answered', async () => {
    const { page, close } = await toDrill(browser);
    await page.keyboard.press('Enter');
    await answerByKeyboard(page);
    await page.getByRole('button', { name: 'End the run' }).click();
    await runDone(page).waitFor();
    expect((await savedRecord(page)).events).toHaveLength(1);
    await close();
  });

  it('may be ended early by one key', async () => {
    const { page, close } = await toDrill(browser);
    await page.keyboard.press('Enter');
    await answerByKeyboard(page);
    await page.keyboard.press('e');
    await runDone(page).waitFor();
    await close();
  });

  it('shows after each answer the map and all of its key above the cut, beside the grade', async () => {
    const settings = { timing: null, drillLevel: 4, drillPinned: true };
    const { page, close } = await toDrill(browser, { settings });
    await page.keyboard.press('Enter');
    for (let i = 0; i < 6; i++) {
      await answerByKeyboard(page);
      const seen = await page.evaluate(() => {
        const box = (selector: string) => document.querySelector(selector)!.getBoundingClientRect();
        const key = [...document.querySelectorAll('.feedback figcaption li')];
        return {
          keyEnds: Math.max(...key.map((one) => one.getBoundingClientRect().bottom)),
          gradeEnds: box('.verdict').bottom,
          tableEnds: box('.told table').bottom,
          cut: box('.feedback .actions').top,
          lines: box('.told h1').height / 22.8,
          wide: document.documentElement.scrollWidth > innerWidth,
        };
      });
      expect(seen.keyEnds).toBeLessThanOrEqual(seen.cut);
      expect(seen.tableEnds).toBeLessThanOrEqual(seen.cut);
      expect(seen.lines).toBeLessThan(3);
      expect(seen.wide).toBe(false);
      await page.keyboard.press('Enter');
    }
    await close();
  });

  it('gives an answer back: asked again, and gone from the record', async () => {
    const { page, close } = await toDrill(browser);
    await page.keyboard.press('Enter');
    await answerByKeyboard(page);
    await page.keyboard.press('z');
    await page.getByRole('region', { name: 'Scenario 1 of 20' }).locator('.question').waitFor();
    const { events } = await savedRecord(page);
    expect(events.map(({ kind }) => kind)).toEqual(['answer', 'undo']);
    await close();
  });
});

describe('a first visit', () => {
  it('that was heading for the drill goes there by the first key', async () => {
    const { page, close } = await newVisitor(browser);
    await open(page, '#/drill');
    await page.getByRole('button', { name: 'Understood: to the drill' }).waitFor();
    await page.keyboard.press('Enter');
    await start(page).waitFor();
    expect(new URL(page.url()).hash).toBe('#/drill');
    await close();
  });
});

describe('the time to answer', () => {
  it('closes by itself when nobody answers, shows what was called for, and counts it as missed', async () => {
    const { page, close } = await toDrill(browser);
    await page.keyboard.press('Enter');
    await page.locator('.question').waitFor();
    // The longest window of the demo's phases is 6 s, half as long again at the first level; twice that ends it.
    await page.locator('.feedback').waitFor({ timeout: 25_000 });
    expect(await page.locator('.verdict').innerText()).toMatch(/Outside[\s\S]*no answer in time/);
    expect(await page.locator('td.required').count()).toBeGreaterThan(0);
    expect((await savedRecord(page)).events).toHaveLength(1);
    await close();
  });

  it('stands while the drill is paused, and the state is covered', async () => {
    const { page, close } = await toDrill(browser);
    await page.keyboard.press('Enter');
    await page.locator('.question').waitFor();
    await settled(page);
    const left = async () => Number.parseFloat(await page.locator('[role=timer]').innerText());
    await page.keyboard.press('Escape');
    await page.getByRole('heading', { name: 'Paused' }).waitFor();
    expect(await page.locator('.question').isVisible()).toBe(false);
    await page.waitForTimeout(1500);
    await page.keyboard.press('Enter');
    await page.locator('.question').waitFor();
    // 9 s at most: without the pause two of them would be gone by now.
    expect(await left()).toBeGreaterThan(4.5);
    await close();
  });

  it('is without a clock when untimed is chosen, beforehand or while the question stands', async () => {
    const chosen = await toDrill(browser, { settings: { timing: null } });
    await chosen.page.keyboard.press('Enter');
    await settled(chosen.page);
    expect(await chosen.page.getByRole('timer').innerText()).toBe('untimed');
    await chosen.close();

    const { page, close } = await toDrill(browser);
    await page.keyboard.press('Enter');
    await page.locator('.question').waitFor();
    const cue = await page.getByRole('heading', { level: 1 }).innerText();
    await page.keyboard.press('u');
    await expect.poll(() => page.getByRole('timer').innerText()).toBe('untimed');
    expect(await page.getByRole('heading', { level: 1 }).innerText()).toBe(cue);
    await close();
  });
});

describe('difficulty', () => {
  it('is said in words, can be put and held, and is kept for the next visit', async () => {
    const { page, close } = await toDrill(browser);
    const level = page.getByRole('combobox');
    await level.selectOption({ label: '6 of 7: on an edge' });
    await page.getByRole('checkbox', { name: 'Stay at this level' }).check();
    await page.reload();
    await start(page).waitFor();
    expect(await page.getByRole('checkbox', { name: 'Stay at this level' }).isChecked()).toBe(true);
    await page.keyboard.press('Enter');
    await page.getByText(/on an edge, the normal time, everything shown: \d s/i).waitFor();
    await answerByKeyboard(page);
    await page.getByText(/at the same level: on an edge/).waitFor();
    await page.keyboard.press('h');
    await page.getByRole('button', { name: 'Stay at this level' }).waitFor();
    await close();
  });
});
