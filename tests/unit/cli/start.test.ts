import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer, type AddressInfo, type Server } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { start, type Started, type StartSurroundings } from '../../../src/cli/start-app.ts';
import { defaultPort, readStartOptions } from '../../../src/cli/start-options.ts';

describe('what start is asked for', () => {
  it('is this machine only, on the default port, unless told', () => {
    expect(readStartOptions([], {})).toEqual({
      ask: 'start',
      options: { host: '127.0.0.1', port: defaultPort, portIsFixed: false },
    });
  });

  it('is the port of the option, before that of the variable', () => {
    const request = readStartOptions(['--port', '5000'], { PORT: '6000' });
    expect(request).toMatchObject({ options: { port: 5000, portIsFixed: true } });
  });

  it('is the port of the variable, when there is no option', () => {
    expect(readStartOptions([], { PORT: '6000' })).toMatchObject({ options: { port: 6000 } });
  });

  it('is the default port, when the variable is empty', () => {
    expect(readStartOptions([], { PORT: '' })).toMatchObject({ options: { port: defaultPort } });
  });

  it.each(['0', '65536', '-1', '80x', '1e3', ' ', '4180.5', ''])('is wrong for the port “%s”', (port) => {
    expect(readStartOptions([`--port=${port}`], {})).toMatchObject({ ask: 'wrong' });
  });

  it.each([['--prot', '5000'], ['here'], ['--port']])('is wrong for %s %s', (...argv) => {
    expect(readStartOptions(argv, {})).toMatchObject({ ask: 'wrong' });
  });
});

describe('start', () => {
  let folder: string;
  let taken: Server;
  let takenPort: number;
  const running: Started[] = [];

  beforeAll(async () => {
    folder = mkdtempSync(join(tmpdir(), 'gatecall-start-'));
    writeFileSync(join(folder, 'index.html'), 'the app');
    taken = createServer();
    await new Promise<void>((done) => taken.listen(0, '127.0.0.1', done));
    takenPort = (taken.address() as AddressInfo).port;
  });

  afterEach(async () => {
    for (const { served } of running.splice(0)) await served?.close();
  });

  afterAll(() => {
    taken.close();
    rmSync(folder, { recursive: true, force: true });
  });

  async function startWith(argv: string[], around: Partial<StartSurroundings> = {}) {
    const said: string[] = [];
    const mends: string[] = [];
    let builds = 0;
    const started = await start(
      argv,
      {},
      {
        folder,
        isFresh: () => false,
        build: () => {
          builds++;
          return Promise.resolve(null);
        },
        out: (line) => said.push(line),
        err: (line) => mends.push(line),
        ...around,
      },
    );
    running.push(started);
    return { ...started, said: said.join('\n'), mends: mends.join('\n'), builds };
  }

  it('builds, serves, and prints the address at which the app answers', async () => {
    const { served, said, builds } = await startWith([]);
    expect(builds).toBe(1);
    expect(said).toContain(served!.address);
    expect(await (await fetch(served!.address)).text()).toBe('the app');
  });

  it('does not build again what is up to date', async () => {
    expect((await startWith([], { isFresh: () => true })).builds).toBe(0);
  });

  it('says what the build said when that failed, and serves nothing', async () => {
    const { served, mends, exitCode } = await startWith([], {
      build: () => Promise.resolve('App.svelte:3: unexpected token'),
    });
    expect([served, exitCode]).toEqual([null, 1]);
    expect(mends).toContain('App.svelte:3');
  });

  it('takes the next free port when the default one is taken, and says so', async () => {
    const first = await startWith([]);
    const second = await startWith([]);
    expect(second.served!.port).toBeGreaterThan(first.served!.port);
    expect(second.said).toContain(`Port ${defaultPort} is in use`);
  });

  it('does not move from a port that was asked for: it says that it is taken, and the mend', async () => {
    const { served, exitCode, mends } = await startWith(['--port', String(takenPort)]);
    expect([served, exitCode]).toEqual([null, 1]);
    expect(mends).toMatch(new RegExp(`Port ${takenPort} is in use.*--port \\d+`));
  });

  it('answers a wrong option with the usage and exit code 2', async () => {
    const { exitCode, mends, builds } = await startWith(['--prot', '1']);
    expect([exitCode, builds]).toEqual([2, 0]);
    expect(mends).toContain('--port N');
  });

  it('gives help without building', async () => {
    const { exitCode, said, builds } = await startWith(['--help']);
    expect([exitCode, builds]).toEqual([0, 0]);
    expect(said).toContain('--port N');
  });
});
