/** What a pilot does on the pages, in words that tests can use. */
import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';

/** What came on the screen takes no answer at once, so that a double press does no harm: a person needs longer. */
export const settled = (page: Page): Promise<void> => page.waitForTimeout(350);

/** First start to the first prompt. */
export async function beginByKeyboard(page: Page): Promise<void> {
  await page.getByRole('heading', { level: 1 }).waitFor();
  await page.keyboard.press('Enter');
  await page.getByRole('region', { name: 'Prompt' }).waitFor();
}

export type Form = 'number' | 'sequence' | 'choice' | 'controls' | 'point' | 'text';

/** Which way of answering the open prompt asks for. */
export async function formOf(page: Page): Promise<Form> {
  const found = await page.evaluate(() => {
    const marks: [string, string][] = [
      ['.pool', 'sequence'],
      ['.gauges', 'controls'],
      ['ul.choices', 'choice'],
      ['input.number', 'number'],
      ['.question form input', 'text'],
      ['.question svg', 'point'],
    ];
    return (
      marks.find(([selector]) => document.querySelector(`.question ${selector}, ${selector}`))?.[1] ?? null
    );
  });
  if (!found) throw new Error('No prompt is open.');
  return found as Form;
}

/** Answers the open prompt somehow, with keys alone, and waits for the grade. */
export async function answerByKeyboard(page: Page): Promise<void> {
  await page.locator('.question').waitFor();
  await settled(page);
  const form = await formOf(page);
  if (form === 'number') await page.keyboard.type('150');
  if (form === 'text') await page.keyboard.type('I think so');
  if (form === 'sequence') await page.keyboard.type('123');
  if (form === 'point') for (const key of ['ArrowUp', 'ArrowRight']) await page.keyboard.press(key);
  if (form === 'controls') await page.keyboard.press('ArrowUp');
  if (form === 'choice') await page.keyboard.press('2');
  else await page.keyboard.press('Enter');
  if (
    form === 'number' &&
    (await page
      .locator('.question [role=alert]')
      .innerText({ timeout: 200 })
      .catch(() => '')) !== ''
  ) {
    // 150 is outside what this quantity can be: 5 is within all of them.
    await page.locator('input.number').fill('5');
    await page.keyboard.press('Enter');
  }
  await page.locator('.feedback').waitFor();
  await settled(page);
}

/** The same by thumb. */
export async function answerByThumb(page: Page): Promise<void> {
  await page.locator('.question').waitFor();
  await settled(page);
  const form = await formOf(page);
  const callIt = page.getByRole('button', { name: 'Call it' });
  if (form === 'number')
    for (const digit of '15') await page.getByRole('button', { name: digit, exact: true }).tap();
  if (form === 'sequence') for (const nth of [0, 1, 2]) await page.locator('.pool button').nth(nth).tap();
  if (form === 'controls') await page.locator('.choice').first().tap();
  if (form === 'point')
    await page
      .locator('.question svg')
      .last()
      .tap({ position: { x: 60, y: 60 } });
  if (form === 'text') await page.getByRole('textbox').fill('I think so');
  if (form === 'choice') await page.locator('ul.choices button').nth(1).tap();
  else await callIt.tap();
  if (form === 'number' && (await page.locator('.feedback').count()) === 0) {
    await page.locator('input.number').fill('');
    await page.getByRole('button', { name: '5', exact: true }).tap();
    await callIt.tap();
  }
  await page.locator('.feedback').waitFor();
  await settled(page);
}

export interface SavedRecord {
  readonly text: string;
  readonly events: readonly {
    readonly kind: string;
    readonly id: string;
    readonly card?: string;
    readonly mode?: string;
  }[];
}

/** The record as the pilot can take it away: the file that the Record page hands out. */
export async function savedRecord(page: Page): Promise<SavedRecord> {
  await page.evaluate(() => (location.hash = '#/record'));
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Save the record as a file' }).click();
  const text = readFileSync(await (await download).path(), 'utf8');
  return { text, events: (JSON.parse(text) as SavedRecord).events };
}
