import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { desktop, launchBrowser, newVisitor, open, phone } from './harness.ts';
import { answerByKeyboard, answerByThumb, beginByKeyboard, savedRecord, settled } from './pilot.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(() => browser?.close());

describe('the first session', () => {
  it('shows the caution, then one key brings the first card', async () => {
    const { page, close } = await newVisitor(browser);
    await open(page);
    expect(await page.getByRole('heading', { name: 'A memory aid, not for flight' }).count()).toBe(1);
    await page.keyboard.press('Enter');
    expect(await page.locator('.question h1').innerText()).toBe('Altitude');
    await close();
  });

  it('is answered by keyboard alone: ten cards, all on record', async () => {
    const { page, faults, close } = await newVisitor(browser);
    await open(page);
    await beginByKeyboard(page);
    for (let i = 0; i < 10; i++) {
      await answerByKeyboard(page);
      await page.keyboard.press('Enter');
    }
    const { events } = await savedRecord(page);
    expect(events.map(({ kind, mode }) => `${kind} ${mode}`)).toEqual(Array(10).fill('answer recall'));
    expect(faults).toEqual([]);
    await close();
  });

  it('is answered by thumb alone on a phone: ten cards, all on record', async () => {
    const { page, faults, close } = await newVisitor(browser, phone);
    await open(page);
    await page.getByRole('button', { name: /Understood/ }).tap();
    for (let i = 0; i < 10; i++) {
      await answerByThumb(page);
      await page.getByRole('button', { name: 'Next' }).tap();
    }
    expect((await savedRecord(page)).events).toHaveLength(10);
    expect(faults).toEqual([]);
    await close();
  });
});

describe('an answer that cannot be graded', () => {
  it.each([
    ['', /number|type/i],
    ['high', /number/i],
    ['900 kt', /ft/],
    ['1e9', /outside|between|can be/],
  ])('%j gets a message, stays open and leaves no trace', async (typed, message) => {
    const { page, close } = await newVisitor(browser);
    await open(page);
    await beginByKeyboard(page);
    await settled(page);
    const field = page.getByRole('textbox');
    await field.fill(typed);
    await page.keyboard.press('Enter');
    const refusal = await page.locator('.question [role=alert]').innerText();
    expect(refusal).toMatch(message);
    expect(refusal).toMatch(/have the answer shown: \?$/);
    expect(await field.inputValue()).toBe(typed);
    await field.fill('900');
    await page.keyboard.press('Enter');
    await page.locator('.feedback').waitFor();
    expect((await savedRecord(page)).events).toHaveLength(1);
    await close();
  });
});

describe('what has been answered', () => {
  it('is there after a reload, and the next session goes on from it', async () => {
    const { page, close } = await newVisitor(browser);
    await open(page);
    const countNew = async (): Promise<number> =>
      Number(/(\d+) of (\d+) cards/.exec(await page.locator('.next').innerText())?.[1]);
    await beginByKeyboard(page);
    for (let i = 0; i < 3; i++) {
      await answerByKeyboard(page);
      await page.keyboard.press('Enter');
    }
    await page.reload();
    await page.getByRole('button', { name: /^Start/ }).waitFor();
    expect(await countNew()).toBe(3);
    await page.keyboard.press('Enter');
    // What was answered wrong today comes back; the order of the new ones goes on.
    await page.locator('.question').waitFor();
    expect((await savedRecord(page)).events).toHaveLength(3);
    await close();
  });

  it('can be taken back with one key, and its card is asked again', async () => {
    const { page, close } = await newVisitor(browser);
    await open(page);
    await beginByKeyboard(page);
    const title = await page.locator('.question h1').innerText();
    await answerByKeyboard(page);
    await page.keyboard.press('z');
    await page.locator('.question').waitFor();
    expect(await page.locator('.question h1').innerText()).toBe(title);
    const { events } = await savedRecord(page);
    expect(events.map(({ kind }) => kind)).toEqual(['answer', 'undo']);
    await page.getByRole('heading', { name: 'No answers yet' }).waitFor();
    await close();
  });

  it('is not lost when two tabs answer at once', async () => {
    const { page, close } = await newVisitor(browser);
    await open(page);
    await beginByKeyboard(page);
    const other = await page.context().newPage();
    await open(other);
    await other.getByRole('button', { name: /^Start/ }).waitFor();
    await other.keyboard.press('Enter');
    for (let i = 0; i < 4; i++) {
      await Promise.all(
        [page, other].map((tab) =>
          tab.evaluate(() => document.querySelector<HTMLElement>('.paused .button')?.click()),
        ),
      );
      await answerByKeyboard(page);
      await page.keyboard.press('Enter');
      await other.evaluate(() => document.querySelector<HTMLElement>('.paused .button')?.click());
      await answerByKeyboard(other);
      await other.keyboard.press('Enter');
    }
    expect((await savedRecord(page)).events).toHaveLength(8);
    await close();
  });
});

describe('pausing', () => {
  it('covers the prompt, stops the clock, and Enter goes on', async () => {
    const { page, close } = await newVisitor(browser, desktop);
    await open(page);
    await beginByKeyboard(page);
    await page.keyboard.press('Escape');
    await page.getByRole('heading', { name: 'Paused' }).waitFor();
    expect(await page.locator('.question').isVisible()).toBe(false);
    await page.keyboard.press('Enter');
    await page.locator('.question').waitFor();
    await close();
  });
});

describe('a key held down or pressed twice', () => {
  it('books one answer, and leaves its grade on the screen', async () => {
    const { page, close } = await newVisitor(browser);
    await open(page, '#/drill');
    await page.keyboard.press('Enter');
    await page.evaluate(() => (location.hash = '#/drill'));
    await page.getByRole('button', { name: /^Start \d+ scenarios/ }).click();
    await page.locator('.question').waitFor();
    await settled(page);
    // A held key: Chromium repeats the event while `down` is called again.
    for (let i = 0; i < 12; i++) {
      await page.keyboard.down('Enter');
      await page.waitForTimeout(80);
    }
    await page.keyboard.up('Enter');
    await page.locator('.feedback').waitFor();
    expect((await savedRecord(page)).events).toHaveLength(1);
    await close();
  });
});

describe('a new card', () => {
  it('that is shown before it was tried is not graded, and is asked again', async () => {
    const { page, close } = await newVisitor(browser);
    await open(page);
    await beginByKeyboard(page);
    await settled(page);
    await page.keyboard.press('?');
    await page.locator('.feedback').getByText('Read it once').waitFor();
    expect((await savedRecord(page)).events).toHaveLength(0);
    await close();
  });
});
