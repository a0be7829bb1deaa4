import { describe, expect, it } from 'vitest';
import { findBrowser, usualPaths, type CommandResult, type Machine } from '../browser-path.ts';

const playwrightBrowser = '/home/pilot/.cache/playwright/chrome';

interface Fake {
  readonly working?: readonly string[];
  /** There, but end with an error when asked for their version. */
  readonly broken?: readonly string[];
  readonly aptBrings?: string;
  readonly playwrightBrings?: boolean;
  readonly env?: Record<string, string>;
  readonly platform?: NodeJS.Platform;
  readonly isRoot?: boolean;
  readonly hasApt?: boolean;
}

function machineWith(fake: Fake) {
  const working = new Set(fake.working);
  const broken = new Set(fake.broken);
  const commands: string[] = [];
  const said: string[] = [];
  const machine: Machine = {
    env: fake.env ?? { PATH: '/opt/bin' },
    platform: fake.platform ?? 'linux',
    isRoot: fake.isRoot ?? false,
    hasApt: fake.hasApt ?? false,
    playwrightBrowser,
    isExecutable: (path) => working.has(path) || broken.has(path),
    run: (command, args): Promise<CommandResult> => {
      const answer = (code: number | null, output = '') => Promise.resolve({ code, output });
      if (args[0] === '--version') return answer(working.has(command) ? 0 : 1);
      commands.push([command === process.execPath ? 'node' : command, ...args.slice(-2)].join(' '));
      if (command === 'apt-get' && args[0] === 'update') return answer(0);
      if (command === 'apt-get') {
        if (!fake.aptBrings) return answer(100, 'E: Unable to locate package chromium\n');
        working.add(fake.aptBrings);
        return answer(0);
      }
      if (!fake.playwrightBrings) return answer(null, 'Error: getaddrinfo ENOTFOUND\n');
      working.add(playwrightBrowser);
      return answer(0);
    },
    say: (line) => said.push(line),
  };
  return { machine, commands, said };
}

describe('the browser for the browser tests', () => {
  it('is the one named in GATECALL_BROWSER, before any other', async () => {
    const { machine } = machineWith({
      env: { GATECALL_BROWSER: '/mine', CHROME_PATH: '/theirs', PATH: '' },
      working: ['/mine', '/theirs', '/usr/bin/chromium'],
    });
    expect(await findBrowser(machine)).toBe('/mine');
  });

  it('is refused with the mend when GATECALL_BROWSER names one that does not start', async () => {
    const { machine, commands } = machineWith({
      env: { GATECALL_BROWSER: '/gone' },
      working: ['/usr/bin/chromium'],
    });
    await expect(findBrowser(machine)).rejects.toThrow(/“\/gone”.*does not start.*Install Chromium/);
    expect(commands).toEqual([]);
  });

  it('is the one in CHROME_PATH when that starts', async () => {
    const { machine } = machineWith({ env: { CHROME_PATH: '/c' }, working: ['/c', '/usr/bin/chromium'] });
    expect(await findBrowser(machine)).toBe('/c');
  });

  it('is looked for elsewhere, and it is said, when CHROME_PATH is stale', async () => {
    const { machine, said } = machineWith({ env: { CHROME_PATH: '/c' }, working: ['/usr/bin/chromium'] });
    expect(await findBrowser(machine)).toBe('/usr/bin/chromium');
    expect(said.join()).toContain('/c');
  });

  it('is found on the PATH before the usual folders', async () => {
    const { machine } = machineWith({ working: ['/opt/bin/chromium', '/usr/bin/chromium'] });
    expect(await findBrowser(machine)).toBe('/opt/bin/chromium');
  });

  it('passes over a stub that is there but does not start', async () => {
    const { machine } = machineWith({
      broken: ['/usr/bin/chromium-browser'],
      working: ['/usr/bin/google-chrome'],
    });
    expect(await findBrowser(machine)).toBe('/usr/bin/google-chrome');
  });

  it("is playwright's own when that was installed before", async () => {
    const { machine, commands } = machineWith({ working: [playwrightBrowser] });
    expect(await findBrowser(machine)).toBe(playwrightBrowser);
    expect(commands).toEqual([]);
  });

  it('is installed by apt-get on Debian as root', async () => {
    const { machine, commands } = machineWith({
      isRoot: true,
      hasApt: true,
      aptBrings: '/usr/bin/chromium',
    });
    expect(await findBrowser(machine)).toBe('/usr/bin/chromium');
    expect(commands).toEqual(['apt-get update', 'apt-get -y chromium']);
  });

  it("is playwright's own where apt-get brings nothing that starts", async () => {
    const { machine, commands } = machineWith({ isRoot: true, hasApt: true, playwrightBrings: true });
    expect(await findBrowser(machine)).toBe(playwrightBrowser);
    expect(commands.at(-1)).toBe('node install chromium');
  });

  it('is never installed by apt-get for an ordinary user', async () => {
    const { machine, commands } = machineWith({ hasApt: true, playwrightBrings: true });
    expect(await findBrowser(machine)).toBe(playwrightBrowser);
    expect(commands).toEqual(['node install chromium']);
  });

  it('is missing with everything that was tried and the mend, when nothing works', async () => {
    const { machine } = machineWith({ isRoot: true, hasApt: true });
    const error = await findBrowser(machine).catch((thrown: unknown) => thrown);
    expect(String(error)).toContain('apt-get install chromium: ended with 100 (E: Unable to locate package');
    expect(String(error)).toContain('playwright-core install chromium: did not finish (Error: getaddrinfo');
    expect(String(error)).toContain('GATECALL_BROWSER');
  });
});

describe('the usual places', () => {
  it('are the application folders on macOS', () => {
    expect(usualPaths({ platform: 'darwin', env: { HOME: '/Users/pilot' } })).toContain(
      '/Users/pilot/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
    );
  });

  it('are the program folders on Windows, where asking for the version would open a window', async () => {
    const chrome = 'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe';
    const { machine } = machineWith({
      platform: 'win32',
      env: { PROGRAMFILES: 'C:\\Program Files' },
      broken: [chrome],
    });
    expect(await findBrowser(machine)).toBe(chrome);
  });

  it('leave out relative folders of the PATH', () => {
    expect(usualPaths({ platform: 'linux', env: { PATH: 'bin::/opt/bin' } })[0]).toBe('/opt/bin/chromium');
  });
});
