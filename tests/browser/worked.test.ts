import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { workedDeckText } from '../unit/cards/worked-deck-text.ts';
import { violations } from './axe.ts';
import { desktop, launchBrowser, newVisitor, open, phone } from './harness.ts';
import { answerByKeyboard, answerByThumb, savedRecord, settled } from './pilot.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(() => browser?.close());

/** The deck from a file, in use, and its first card asked. */
async function toFirstCard(page: Page): Promise<void> {
  await open(page, '#/decks');
  await page
    .getByRole('button', { name: /Use this deck|Go on with it/ })
    .first()
    .waitFor();
  const buffer = Buffer.from(workedDeckText);
  await page
    .getByLabel('Deck file')
    .setInputFiles({ name: 'barge.deck.yaml', mimeType: 'application/yaml', buffer });
  await page.getByRole('status').getByRole('button', { name: 'Use this deck' }).click();
  // Choosing it leads to the first screen, once it is loaded.
  await page.getByLabel('Deck file').waitFor({ state: 'detached' });
  await page.locator('main .button.primary').first().waitFor();
  await page.keyboard.press('Enter');
  await page.getByRole('region', { name: 'Prompt' }).waitFor();
}

/** On through the cards that enter before it, answered somehow, to the worked value with a chart. */
async function toHoverMargin(page: Page, answer: (page: Page) => Promise<void>): Promise<void> {
  const asked = page.getByRole('heading', { level: 1, name: 'How much lift' });
  for (let i = 0; i < 30; i++) {
    await page.locator('.question, .look').waitFor();
    if (await asked.isVisible()) return;
    if (await page.locator('.question').isVisible()) await answer(page);
    await settled(page);
    await page.keyboard.press('Enter');
  }
  throw new Error('The worked value was not asked.');
}

const sizes: readonly (readonly [string, BrowserContextOptions, (page: Page) => Promise<void>])[] = [
  ['with keys on a desk', desktop, answerByKeyboard],
  ['by thumb on a phone', phone, answerByThumb],
  ['with keys at night', { ...desktop, colorScheme: 'dark' }, answerByKeyboard],
];

describe('a worked value', () => {
  it.each(sizes)('is read off its chart and worked out %s', async (_, options, answer) => {
    const { page, faults, close } = await newVisitor(browser, options);
    await toFirstCard(page);
    await toHoverMargin(page, answer);
    expect(await page.getByRole('heading', { level: 1 }).innerText()).toContain('How much lift');
    const given = await page.locator('dl[aria-label="Given"] dd').allInnerTexts();
    expect(given).toHaveLength(3);
    const chart = page.getByRole('img', { name: /^Chart: Vertical lift/ });
    expect(await chart.locator('[data-part="lead"]').count()).toBe(0);
    expect(await violations(page)).toEqual([]);

    await answer(page);
    const working = page.getByRole('region', { name: 'The working' });
    expect(await working.getByRole('listitem').count()).toBe(2);
    expect(await working.innerText()).toContain(given[1]!.replace(' ', '\u00a0'));
    expect(await chart.locator('[data-part="lead"]').count()).toBe(1);
    expect(await violations(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(
      0,
    );

    const { events } = await savedRecord(page);
    expect(events.at(-1)?.card).toBe('worked/hover-margin');
    expect(faults).toEqual([]);
    await close();
  });
});
