import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { launchBrowser, newVisitor, open } from './harness.ts';

let browser: Browser;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(() => browser?.close());

it('the briefing sheet prints on few A5 pages, each with its number and that it is not for flight', async () => {
  const { page, close } = await newVisitor(browser);
  await open(page, '#/brief');
  await page.getByRole('table', { name: 'Values at each gate' }).waitFor();
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  const pages = pdf.match(/\/Type\s*\/Page\b(?!s)/g) ?? [];
  // 148 by 210 mm in points of 1/72 inch.
  expect(pdf).toMatch(/\/MediaBox\s*\[\s*0 0 (419|420)\S* 59[45]/);
  expect(pages.length).toBeGreaterThan(2);
  // Four for all but the rules; thirty rules fit on one.
  const rules = await page.locator('.when').count();
  expect(pages.length).toBeLessThanOrEqual(4 + rules / 30);
  await page.emulateMedia({ media: 'print' });
  expect(await page.getByRole('complementary', { name: 'Cautions' }).isVisible()).toBe(true);
  await close();
});
