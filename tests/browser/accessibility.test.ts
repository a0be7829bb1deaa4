/**
 * axe-core, an independent checker of the WCAG rules, on every page in both themes and
 * at both sizes.
 */
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { violations } from './axe.ts';
import { desktop, launchBrowser, newVisitor, open, phone } from './harness.ts';
import { answerByKeyboard, formOf, settled } from './pilot.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(() => browser?.close());

const settings = (theme: string, more: object = {}): string =>
  JSON.stringify({ theme, timing: null, minutes: 30, cautionSeen: true, deck: null, ...more });

describe.each([
  ['desktop', 'day', desktop],
  ['desktop', 'night', desktop],
  ['phone', 'day', phone],
  ['phone', 'night', phone],
])('axe finds nothing on a %s by %s', (_, theme, size) => {
  async function visit(kept: string) {
    const visitor = await newVisitor(browser, size);
    await visitor.page.addInitScript((text) => {
      if (localStorage.getItem('gatecall.settings') === null) localStorage.setItem('gatecall.settings', text);
    }, kept);
    await open(visitor.page);
    await visitor.page.getByRole('heading', { level: 1 }).waitFor();
    return visitor;
  }

  it('at the first start', async () => {
    const { page, close } = await visit(settings(theme, { cautionSeen: false }));
    expect(await violations(page)).toEqual([]);
    await close();
  });

  it('on every page, empty and with answers', async () => {
    const { page, close } = await visit(settings(theme));
    for (const round of ['empty', 'answered']) {
      for (const place of ['recall', 'drill', 'pass', 'brief', 'record', 'decks']) {
        await page.evaluate((hash) => (location.hash = hash), `#/${place}`);
        await page.getByRole('heading', { level: 1 }).waitFor();
        if (place === 'decks')
          await page
            .getByRole('button', { name: /Use this deck/ })
            .first()
            .waitFor();
        expect(await violations(page), `${place}, ${round}`).toEqual([]);
      }
      await page.evaluate(() => (location.hash = '#/recall'));
      await page.getByRole('button', { name: /^Start/ }).waitFor();
      await page.keyboard.press('Enter');
      for (let i = 0; i < 2; i++) {
        await answerByKeyboard(page);
        await page.keyboard.press('Enter');
      }
      await page.reload();
      await page.getByRole('heading', { level: 1 }).waitFor();
    }
    await close();
  });

  it('in a session: each form of prompt that comes up, its feedback, and the pause', async () => {
    const { page, close } = await visit(settings(theme));
    await page.keyboard.press('Enter');
    const seen = new Set<string>();
    let looked = false;
    for (let i = 0; i < 30 && (seen.size < 3 || !looked); i++) {
      await page.locator('.question, .look').waitFor();
      // What was shown twice and not answered is looked at before it is asked again.
      if (await page.locator('.look').isVisible()) {
        if (!looked) expect(await violations(page), 'looked at').toEqual([]);
        looked = true;
        await page.keyboard.press('Enter');
        continue;
      }
      const form = await formOf(page);
      const fresh = !seen.has(form);
      seen.add(form);
      if (fresh) expect(await violations(page), `${form} asked`).toEqual([]);
      await settled(page);
      await page.keyboard.press('?');
      await page.locator('.feedback').waitFor();
      if (fresh) expect(await violations(page), `${form} graded`).toEqual([]);
      await settled(page);
      await page.keyboard.press('Enter');
    }
    expect(seen.size).toBeGreaterThanOrEqual(2);
    expect(looked).toBe(true);
    await page.locator('.question, .look').waitFor();
    while (await page.locator('.look').isVisible()) await page.keyboard.press('Enter');
    await page.locator('.question').waitFor();
    await page.keyboard.press('Escape');
    expect(await violations(page), 'paused').toEqual([]);
    await close();
  });

  it('in a drill: what to drill, asked, paused, graded with its map, and after the run', async () => {
    const { page, close } = await visit(settings(theme, { drillLength: 10 }));
    await page.evaluate(() => (location.hash = '#/drill'));
    await page.getByRole('button', { name: /^Start/ }).waitFor();
    expect(await violations(page), 'what to drill').toEqual([]);
    await page.keyboard.press('Enter');
    await page.locator('.question').waitFor();
    expect(await violations(page), 'asked').toEqual([]);
    await page.keyboard.press('Escape');
    await page.getByRole('heading', { name: 'Paused' }).waitFor();
    expect(await violations(page), 'paused').toEqual([]);
    await page.keyboard.press('Escape');
    for (let i = 0; i < 10; i++) {
      await page.locator('.question').waitFor();
      await settled(page);
      await page.keyboard.press(i % 2 === 0 ? 'Enter' : '?');
      await page.locator('.feedback').waitFor();
      if (i === 0) await page.getByText('The map in words').click();
      if (i < 2) expect(await violations(page), `graded ${i}`).toEqual([]);
      await settled(page);
      await page.getByRole('button', { name: 'Next' }).click();
    }
    await page.getByRole('heading', { name: 'Run done' }).waitFor();
    expect(await violations(page), 'after the run').toEqual([]);
    await close();
  });
});
