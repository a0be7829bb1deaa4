import { parseArgs } from 'node:util';

export const defaultPort = 4180;
export const loopback = '127.0.0.1';

export interface StartOptions {
  readonly host: string;
  readonly port: number;
  /** Asked for by the user, so another one will not do. */
  readonly portIsFixed: boolean;
}

export type StartRequest =
  | { readonly ask: 'start'; readonly options: StartOptions }
  | { readonly ask: 'help' }
  | { readonly ask: 'wrong'; readonly message: string };

export const startUsage = `Builds the app when needed and serves it on this machine.

  npm start
  npm start -- --port 5000

  --port N        the port to serve on, 1 to 65535 (or the variable PORT); without it ${defaultPort}, or the
                  next free one
  --host ADDRESS  the address to listen on, ${loopback} unless told; 0.0.0.0 lets other devices in
  --help          this text
`;

/**
 * What the command line and the environment ask for. The option beats the variable.
 * @returns for a wrong option or value: what is wrong and what to write.
 */
export function readStartOptions(
  argv: readonly string[],
  env: Readonly<Record<string, string | undefined>>,
): StartRequest {
  let values: { port?: string; host?: string; help?: boolean };
  try {
    ({ values } = parseArgs({
      args: [...argv],
      options: { port: { type: 'string' }, host: { type: 'string' }, help: { type: 'boolean', short: 'h' } },
    }));
  } catch (error) {
    return { ask: 'wrong', message: error instanceof Error ? error.message : String(error) };
  }
  if (values.help) return { ask: 'help' };
  // A variable that is set to nothing is as good as not set.
  const [written, from] =
    values.port === undefined ? [env['PORT'] || undefined, 'PORT'] : [values.port, '--port'];
  const host = values.host ?? loopback;
  if (written === undefined)
    return { ask: 'start', options: { host, port: defaultPort, portIsFixed: false } };
  const port = /^\d{1,5}$/.test(written) ? Number(written) : NaN;
  if (!(port >= 1 && port <= 65535))
    return { ask: 'wrong', message: `${from} is “${written}”; a port is a whole number from 1 to 65535.` };
  return { ask: 'start', options: { host, port, portIsFixed: true } };
}
