/** The day in a real browser: set on Brief, marked, kept, said on Recall, on paper. */
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { formulaDeckText } from '../unit/formulas/formula-deck.ts';
import { violations } from './axe.ts';
import { desktop, launchBrowser, newVisitor, open, phone, type Visitor } from './harness.ts';
import { settled } from './pilot.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(() => browser?.close());

/** A pilot who has opened a deck with formulas, on its briefing sheet. */
async function onBrief(size = desktop, theme = 'day'): Promise<Visitor> {
  const visitor = await newVisitor(browser, size);
  const { page } = visitor;
  await page.addInitScript(
    (text) => {
      if (localStorage.getItem('gatecall.settings') === null) localStorage.setItem('gatecall.settings', text);
    },
    JSON.stringify({ theme, timing: null, cautionSeen: true }),
  );
  await open(page, '#/decks');
  await page.getByLabel('Deck file').setInputFiles({
    name: 'with-formulas.deck.yaml',
    mimeType: 'application/yaml',
    buffer: Buffer.from(formulaDeckText),
  });
  await page.getByRole('status').getByRole('button', { name: 'Use this deck' }).click();
  await page.getByRole('button', { name: /^Start/ }).waitFor();
  await page.evaluate(() => (location.hash = '#/brief'));
  await page.getByRole('heading', { name: 'The day' }).waitFor();
  return visitor;
}

const wind = (page: Page) => page.getByRole('spinbutton', { name: 'Wind', exact: true });
const card = (page: Page) => page.getByRole('region', { name: 'The day' });
const values = (page: Page) => page.getByRole('table', { name: 'Values at each gate' });

async function setWind(page: Page, kt: string): Promise<void> {
  await wind(page).fill(kt);
  await page.keyboard.press('Enter');
  await card(page).getByText('1 value moves').waitFor();
}

describe('a day set on the briefing sheet', () => {
  it('marks what moves, stays after a reload, and is said on Recall', async () => {
    const { page, faults, close } = await onBrief();
    await setWind(page, '18');
    expect(await values(page).innerText()).toMatch(/was 60/);
    expect(await page.getByRole('button', { name: /^Gate 1 .*60 → 52/ }).count()).toBe(1);
    await page.reload();
    await card(page).getByText('1 value moves').waitFor();
    expect(await wind(page).inputValue()).toBe('18');

    await page.keyboard.press('r');
    await page.getByText('For today: wind 18 kt').waitFor();
    await page.keyboard.press('Enter');
    // Shown one after the other, until the value that moved comes up.
    for (let i = 0; i < 12; i++) {
      await page.locator('.question, .feedback').first().waitFor();
      await settled(page);
      await page.keyboard.press('?');
      await page.locator('.feedback').waitFor();
      if (/Closure/.test(await page.locator('.feedback').innerText())) break;
      await settled(page);
      await page.keyboard.press('Enter');
    }
    const answer = await page.getByRole('region', { name: 'Prompt' }).innerText();
    expect(answer).toContain('For today: wind 18');
    expect(answer).toMatch(/Target: 52\s+kt/);
    expect(answer).toMatch(/Today 8\s+kt more wind: 52 instead of 60/);
    expect(faults).toEqual([]);
    await close();
  });

  it('goes with keys alone: steps up, a refusal, and back to the deck’s day', async () => {
    const { page, close } = await onBrief();
    await wind(page).focus();
    for (const key of ['ArrowUp', 'ArrowUp', 'PageUp']) await page.keyboard.press(key);
    expect(await wind(page).inputValue()).toBe('17');
    await page.keyboard.press('Control+a');
    await page.keyboard.type('99');
    await page.keyboard.press('Enter');
    await card(page).getByRole('alert').waitFor();
    await page.keyboard.press('Escape');
    expect(await wind(page).inputValue()).toBe('17');
    await card(page).getByRole('button', { name: 'Back to the deck’s day' }).press('Enter');
    await card(page).getByRole('button', { name: 'Back to the deck’s day' }).waitFor({ state: 'detached' });
    expect(await wind(page).inputValue()).toBe('10');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('brief-day');
    await close();
  });

  it('is on paper, with the cautions', async () => {
    const { page, close } = await onBrief();
    await setWind(page, '18');
    await page.emulateMedia({ media: 'print' });
    const cautions = page.getByRole('complementary', { name: 'Cautions' });
    expect(await cautions.isVisible()).toBe(true);
    expect(await wind(page).isVisible()).toBe(false);
    expect(await card(page).innerText()).toMatch(/Wind\s+18\s+kt\s*deck 10\s+kt/);
    expect(await values(page).innerText()).toMatch(/was 60/);
    expect(await page.getByRole('heading', { name: 'Charts' }).isVisible()).toBe(true);
    await close();
  });
});

describe.each([
  ['desktop', 'day', desktop],
  ['desktop', 'night', desktop],
  ['phone', 'day', phone],
  ['phone', 'night', phone],
])('on a %s by %s', (_, theme, size) => {
  it('axe finds nothing on a day that was set, refused and explained, nor on the sources', async () => {
    const { page, close } = await onBrief(size, theme);
    await setWind(page, '18');
    await page.getByText('How they come about').click();
    const gust = page.getByRole('spinbutton', { name: 'Gust' });
    await gust.fill('99');
    await page.keyboard.press('Enter');
    await card(page).getByRole('alert').waitFor();
    expect(await violations(page), 'brief').toEqual([]);
    await page.getByRole('link', { name: 'Where the numbers come from' }).last().click();
    await page.getByRole('table', { name: /Published values/ }).waitFor();
    expect(await page.evaluate(() => document.documentElement.scrollWidth <= innerWidth)).toBe(true);
    expect(await violations(page), 'sources').toEqual([]);
    await close();
  });
});
