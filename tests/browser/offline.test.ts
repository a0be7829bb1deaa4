import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, inject, it } from 'vitest';
import { serve, type Served } from '../../src/cli/server/serve.ts';
import { launchBrowser, newVisitor, open, untilOffline } from './harness.ts';

let browser: Browser;
let folder: string;
let served: Served;

beforeAll(async () => {
  browser = await launchBrowser();
});

afterAll(() => browser?.close());

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'gatecall-offline-'));
  cpSync(inject('built'), folder, { recursive: true });
  const serving = await serve(folder, { host: '127.0.0.1', port: 0 });
  if (!serving.ok) throw new Error(serving.message);
  served = serving.served;
});

afterEach(async () => {
  await served.close();
  rmSync(folder, { recursive: true, force: true });
});

describe('without a network', () => {
  it('the app opens from the second visit on', async () => {
    const { page, faults, close } = await newVisitor(browser);
    await open(page, '', served.address);
    await untilOffline(page);
    await served.close();
    await page.goto('about:blank');

    await open(page, '', served.address);
    for (const place of ['brief', 'drill', 'record', 'decks', 'recall']) {
      await open(page, `#/${place}`, served.address);
      expect(await page.locator('#app').innerText()).not.toBe('');
    }
    // The browser itself reports that it could not look for a newer service worker.
    expect(faults.filter((fault) => !/service ?worker|sw\.js|ERR_CONNECTION_REFUSED/i.test(fault))).toEqual(
      [],
    );
    await close();
  });
});

describe('a new version', () => {
  /** What a release does: the page's text changes, and with it the list of files in the worker. */
  function release(): void {
    const page = join(folder, 'index.html');
    const worker = join(folder, 'sw.js');
    writeFileSync(page, readFileSync(page, 'utf8').replace('</title>', ' 2</title>'));
    const list = readFileSync(worker, 'utf8');
    const changed = list.replace(/(url:"index\.html",revision:")../, (_, before: string) => `${before}ff`);
    expect(changed).not.toBe(list);
    writeFileSync(worker, changed);
  }

  it('waits: a reload and a second visit still show the old one until the pilot lets it in', async () => {
    const { page, close } = await newVisitor(browser);
    await open(page, '', served.address);
    await untilOffline(page);
    release();
    await page.reload();
    await page.waitForFunction(async () => (await navigator.serviceWorker.ready).waiting !== null);
    await page.reload();
    expect(await page.title()).not.toMatch(/ 2$/);
    await close();
  });
});
