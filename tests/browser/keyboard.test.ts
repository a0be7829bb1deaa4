import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { launchBrowser, newVisitor, open } from './harness.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(() => browser?.close());

/** What can be worked on the page, and what the Tab key reached, both in words; of radio buttons one a group. */
async function reachedByTab(page: Page): Promise<{ wanted: string[]; reached: Set<string> }> {
  const nameOf = `(e) => e.type === 'radio' ? 'radio ' + e.name : (e.getAttribute('aria-label') ?? e.textContent ?? '').replace(/\\s+/g, ' ').trim() + ' <' + e.tagName.toLowerCase() + '>'`;
  const wanted = (await page.evaluate(`(() => {
    const name = ${nameOf};
    const all = [...document.querySelectorAll('button, a[href], input, select, textarea, summary, [tabindex="0"]')];
    return all.filter((e) => !e.disabled && e.checkVisibility({ visibilityProperty: true })).map(name);
  })()`)) as string[];
  const reached = new Set<string>();
  for (let i = 0; i < wanted.length * 2 + 10; i++) {
    await page.keyboard.press('Tab');
    reached.add((await page.evaluate(`(${nameOf})(document.activeElement)`)) as string);
  }
  return { wanted, reached };
}

describe('the Tab key', () => {
  it.each(['recall', 'drill', 'pass', 'record', 'decks', 'brief'])(
    'reaches everything that can be worked on %s',
    async (place) => {
      const { page, close } = await newVisitor(browser);
      await page.addInitScript(() =>
        localStorage.setItem(
          'gatecall.settings',
          JSON.stringify({ cautionSeen: true, timing: 1, minutes: 10 }),
        ),
      );
      await open(page, `#/${place}`);
      await page.getByRole('heading', { level: 1 }).waitFor();
      if (place === 'decks')
        await page
          .getByRole('button', { name: /Use this deck/ })
          .first()
          .waitFor();
      const { wanted, reached } = await reachedByTab(page);
      expect(wanted.length).toBeGreaterThan(5);
      expect(wanted.filter((name) => !reached.has(name))).toEqual([]);
      await close();
    },
  );
});
