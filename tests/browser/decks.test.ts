import { readFileSync } from 'node:fs';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { fixtureDeckText } from '../unit/deck/fixture.ts';
import { launchBrowser, newVisitor, open } from './harness.ts';
import { answerByKeyboard, savedRecord } from './pilot.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(() => browser?.close());

async function toDecks(page: Page): Promise<void> {
  await open(page, '#/decks');
  await page
    .getByRole('button', { name: /Use this deck|Go on with it/ })
    .first()
    .waitFor();
}

const give = (page: Page, name: string, text: string): Promise<void> =>
  page
    .getByLabel('Deck file')
    .setInputFiles({ name, mimeType: 'application/yaml', buffer: Buffer.from(text) });

const shipped = readFileSync(new URL('../../decks/marram-recovery.deck.yaml', import.meta.url), 'utf8');

describe('a deck file', () => {
  it('is read, kept and used, also after a reload and without the network', async () => {
    const { page, close } = await newVisitor(browser);
    await toDecks(page);
    await give(page, 'mine.deck.yaml', fixtureDeckText);
    await page.getByText(/is ready/).waitFor();
    await page.getByRole('status').getByRole('button', { name: 'Use this deck' }).click();
    await page.reload();
    await page.evaluate(() => (location.hash = '#/decks'));
    await page.getByText('Opened from a file').waitFor();
    expect(await page.getByText('in use').count()).toBe(1);
    await close();
  });

  it('with faults is not taken: each fault has its line and its mend, and nothing else changes', async () => {
    const { page, close } = await newVisitor(browser);
    await toDecks(page);
    const broken = shipped.replace(/unit: kt/, 'unit: knots').replace(/^format:.*$/m, 'format: something/9');
    await give(page, 'broken.deck.yaml', broken);
    await page
      .getByRole('heading', { name: /broken.deck.yaml was not taken: \d+ errors? to mend/ })
      .waitFor();
    expect(await page.locator('.findings li.error').count()).toBeGreaterThanOrEqual(2);
    expect(await page.locator('.findings').innerText()).toMatch(/line \d+, column \d+/);
    expect(await page.getByText('Opened from a file').count()).toBe(0);
    expect(await page.getByText('in use').count()).toBe(1);
    await close();
  });

  it('with the id of a shipped deck asks first; the pilot can go back to the shipped one', async () => {
    const { page, close } = await newVisitor(browser);
    await toDecks(page);
    const later = shipped.replace(/^version:.*$/m, 'version: 99.0.0');
    await give(page, 'later.deck.yaml', later);
    await page.getByRole('dialog', { name: /^Replace “/ }).waitFor();
    // Escape is no, and the focus is on the page again.
    await page.keyboard.press('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    expect(await page.evaluate(() => document.activeElement?.textContent)).toContain('Open a deck file');
    expect(await page.getByText('Opened from a file').count()).toBe(0);
    await give(page, 'later.deck.yaml', later);
    await page.getByRole('button', { name: 'Replace it' }).click();
    await page.getByText('version 99.0.0').waitFor();
    await page.getByRole('button', { name: /Go back…/ }).click();
    await page.getByRole('dialog').getByRole('button', { name: 'Go back' }).click();
    await page.getByText(/is again the one that comes with Gatecall/).waitFor();
    expect(await page.evaluate(() => document.activeElement?.textContent)).toContain('is again the one');
    expect(await page.getByText('version 99.0.0').count()).toBe(0);
    await close();
  });

  it.each([
    ['binary', Buffer.from([0, 1, 2, 255, 254, 0, 9]).toString('latin1')],
    ['empty', ''],
    [
      'an alias bomb',
      `a: &a [x,x,x,x,x,x,x,x,x]\n${'bcdefghi'
        .split('')
        .map((l, i) => `${l}: &${l} [${Array(9).fill(`*${'abcdefgh'[i]}`).join(',')}]`)
        .join('\n')}\n`,
    ],
    ['markup', 'title: <img src=x onerror=alert(1)>\nformat: gatecall-deck/1\n'],
    ['prototype keys', '__proto__: { polluted: yes }\nformat: gatecall-deck/1\n'],
  ])('of %s does no harm and says what is wrong', async (_, text) => {
    const { page, faults, close } = await newVisitor(browser);
    await toDecks(page);
    await give(page, 'odd.deck.yaml', text);
    await page.getByRole('heading', { name: /was not taken/ }).waitFor({ timeout: 15_000 });
    expect(
      await page.evaluate(() => ({}) as { polluted?: unknown }).then((object) => object.polluted),
    ).toBeUndefined();
    expect(faults).toEqual([]);
    await close();
  });

  it('over 2 MB is refused unread', async () => {
    const { page, close } = await newVisitor(browser);
    await toDecks(page);
    await give(page, 'huge.deck.yaml', `# ${'x'.repeat(2 * 1024 * 1024)}`);
    await page.getByText(/a deck may have 2 MB/).waitFor();
    await close();
  });
});

describe('a saved record', () => {
  const bring = (page: Page, text: string): Promise<void> =>
    page
      .getByLabel('Saved record')
      .setInputFiles({ name: 'record.json', mimeType: 'application/json', buffer: Buffer.from(text) });

  async function answered(): Promise<{ page: Page; close: () => Promise<void>; text: string }> {
    const { page, close } = await newVisitor(browser);
    await open(page);
    await page.keyboard.press('Enter');
    for (let i = 0; i < 2; i++) {
      await answerByKeyboard(page);
      await page.keyboard.press('Enter');
    }
    return { page, close, text: (await savedRecord(page)).text };
  }

  it('comes in on another device as a union, once however often', async () => {
    const one = await answered();
    const two = await answered();
    await bring(two.page, one.text);
    await two.page.getByText(/2 new/).waitFor();
    await bring(two.page, one.text);
    expect((await savedRecord(two.page)).events).toHaveLength(4);
    await one.close();
    await two.close();
  });

  it.each([
    ['text', 'not a record'],
    ['cut off', '{"format": "gatecall-record/1", "events": [{"kind":"ans'],
    ['another format', '{"format": "something-else/1", "events": []}'],
    ['a newer version', '{"format": "gatecall-record/99", "events": []}'],
    [
      'wrong types',
      '{"format": "gatecall-record/1", "exportedAt": 3, "events": [1, null, {"kind":"answer"}]}',
    ],
  ])('that is bad (%s) is met with a message, and what is there stays', async (_, text) => {
    const { page, close } = await answered();
    await bring(page, text);
    await page.locator('.keeping .notice').first().waitFor();
    expect((await page.locator('.keeping .notice').first().innerText()).length).toBeGreaterThan(20);
    expect((await savedRecord(page)).events).toHaveLength(2);
    await close();
  });
});
