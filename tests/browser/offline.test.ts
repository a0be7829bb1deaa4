import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, inject, it } from 'vitest';
import { serve, type Served } from '../../src/cli/server/serve.ts';
import { launchBrowser, newVisitor, open, untilOffline, type Visitor } from './harness.ts';

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
  /** What a release does: the page changes, and with it the list of files in the worker. */
  function release(): void {
    const page = join(folder, 'index.html');
    const worker = join(folder, 'sw.js');
    writeFileSync(page, readFileSync(page, 'utf8').replace('<html ', '<html data-release="2" '));
    const list = readFileSync(worker, 'utf8');
    const changed = list.replace(/(url:"index\.html",revision:")../, (_, before: string) => `${before}ff`);
    expect(changed).not.toBe(list);
    writeFileSync(worker, changed);
  }

  const releaseOf = (page: Page) => page.locator('html').getAttribute('data-release');
  const untilWaiting = (page: Page) =>
    page.waitForFunction(async () => (await navigator.serviceWorker.ready).waiting !== null);

  async function afterRelease(): Promise<Visitor> {
    const visitor = await newVisitor(browser);
    await open(visitor.page, '', served.address);
    await untilOffline(visitor.page);
    release();
    await visitor.page.reload();
    await untilWaiting(visitor.page);
    return visitor;
  }

  it('waits: a reload and a second visit still show the old one', async () => {
    const { page, close } = await afterRelease();
    await page.reload();
    await open(page, '#/brief', served.address);
    expect(await releaseOf(page)).toBeNull();
    await close();
  });

  it('is offered, and comes when the pilot takes it', async () => {
    const { page, close } = await afterRelease();
    await page.getByText('A new version of Gatecall is ready.').waitFor();
    await Promise.all([
      page.waitForEvent('load'),
      page.getByRole('button', { name: /load it now/i }).click(),
    ]);
    expect(await releaseOf(page)).toBe('2');
    await close();
  });

  it('that was taken in one tab does not reload another', async () => {
    const { page, close } = await afterRelease();
    const other = await page.context().newPage();
    await open(other, '#/brief', served.address);
    let reloads = 0;
    other.on('load', () => reloads++);
    await Promise.all([
      page.waitForEvent('load'),
      page.getByRole('button', { name: /load it now/i }).click(),
    ]);
    expect(await releaseOf(page)).toBe('2');
    await other.getByText('A new version of Gatecall is ready.').waitFor();
    expect([reloads, await releaseOf(other)]).toEqual([0, null]);
    await close();
  });
});
