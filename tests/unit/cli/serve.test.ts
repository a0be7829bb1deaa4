import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { serve, type Served } from '../../../src/cli/server/serve.ts';

let folder: string;
let served: Served;
const get = (path: string, init: RequestInit = {}) => fetch(new URL(path, served.address), init);

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'gatecall-serve-'));
  mkdirSync(join(folder, 'assets'));
  writeFileSync(join(folder, 'index.html'), '<!doctype html>');
  writeFileSync(join(folder, 'assets', 'index-B4x_9-aZ.js'), 'let a');
  writeFileSync(join(folder, 'manifest.webmanifest'), '{}');
  const serving = await serve(folder, { host: '127.0.0.1', port: 0 });
  if (!serving.ok) throw new Error(serving.message);
  served = serving.served;
});

afterAll(async () => {
  await served.close();
  rmSync(folder, { recursive: true, force: true });
});

describe('the server of the built app', () => {
  it('sends the page at its address, to be asked for anew each time', async () => {
    const response = await get('/?x=1');
    expect(await response.text()).toBe('<!doctype html>');
    expect(response.headers.get('content-type')).toBe('text/html; charset=utf-8');
    expect(response.headers.get('cache-control')).toBe('no-cache');
  });

  it('lets hashed files be kept for good', async () => {
    const response = await get('/assets/index-B4x_9-aZ.js');
    expect(response.headers.get('content-type')).toContain('text/javascript');
    expect(response.headers.get('cache-control')).toContain('immutable');
  });

  it('gives the manifest its own type', async () => {
    const response = await get('/manifest.webmanifest');
    expect(response.headers.get('content-type')).toContain('application/manifest+json');
  });

  it.each(['/', '/nothing'])('sends the policy and nosniff with %s', async (path) => {
    const { headers } = await get(path);
    expect(headers.get('content-security-policy')).toContain("default-src 'none'");
    expect(headers.get('content-security-policy')).toContain("frame-ancestors 'none'");
    expect(headers.get('content-security-policy')).not.toContain('unsafe');
    expect(headers.get('x-content-type-options')).toBe('nosniff');
  });

  it('answers an unchanged file with 304', async () => {
    const tag = (await get('/')).headers.get('etag')!;
    expect((await get('/', { headers: { 'if-none-match': tag } })).status).toBe(304);
    expect((await get('/', { headers: { 'if-none-match': '"other"' } })).status).toBe(200);
  });

  it('answers HEAD with the length and no body', async () => {
    const response = await get('/', { method: 'HEAD' });
    expect(response.headers.get('content-length')).toBe('15');
    expect(await response.text()).toBe('');
  });

  it('refuses anything but reading', async () => {
    const response = await get('/', { method: 'POST', body: 'x' });
    expect([response.status, response.headers.get('allow')]).toEqual([405, 'GET, HEAD']);
  });

  it('says so when its port is taken', async () => {
    const second = await serve(folder, { host: '127.0.0.1', port: served.port });
    expect(second).toMatchObject({ ok: false, problem: 'port-taken' });
  });

  it('says so when the machine has no such address', async () => {
    // 192.0.2.0/24 is reserved for documentation (RFC 5737): no machine has it.
    const second = await serve(folder, { host: '192.0.2.1', port: 0 });
    expect(second).toMatchObject({ ok: false, problem: 'host-unknown' });
  });
});
