import { serve, type Served, type Serving } from './server/serve.ts';
import { defaultPort, loopback, readStartOptions, startUsage, type StartOptions } from './start-options.ts';

export interface StartSurroundings {
  /** Where the built app lies. */
  readonly folder: string;
  isFresh(): boolean;
  /** null when built, else what went wrong and the mend. */
  build(): Promise<string | null>;
  out(line: string): void;
  err(line: string): void;
}

export interface Started {
  /** 0 served or help given, 1 could not build or serve, 2 wrong options. */
  readonly exitCode: 0 | 1 | 2;
  readonly served: Served | null;
}

/** How many ports after the default one are tried. */
const portsTried = 20;

/** Builds when needed, serves, and says where; every way it can fail is said with its mend. */
export async function start(
  argv: readonly string[],
  env: Readonly<Record<string, string | undefined>>,
  around: StartSurroundings,
): Promise<Started> {
  const request = readStartOptions(argv, env);
  if (request.ask === 'help') {
    around.out(startUsage);
    return { exitCode: 0, served: null };
  }
  if (request.ask === 'wrong') {
    around.err(`${request.message}\n\n${startUsage}`);
    return { exitCode: 2, served: null };
  }
  if (!around.isFresh()) {
    around.out('Building the app…');
    const problem = await around.build();
    if (problem !== null) {
      around.err(problem);
      return { exitCode: 1, served: null };
    }
  }
  const { options } = request;
  const serving = await serveOnFreePort(around.folder, options);
  if (!serving.ok) {
    around.err(mendFor(serving, options));
    return { exitCode: 1, served: null };
  }
  const { served } = serving;
  around.out(`\nGatecall is at ${served.address}\nStop it with Ctrl-C.`);
  if (served.port !== options.port)
    around.out(
      `Port ${options.port} is in use, so it is on ${served.port}. A browser keeps a training record for each address: one made at port ${options.port} is not shown here.`,
    );
  if (options.host !== loopback)
    around.out(`Other devices can open it at this machine's own address, port ${served.port}.`);
  return { exitCode: 0, served };
}

async function serveOnFreePort(folder: string, options: StartOptions): Promise<Serving> {
  const { host, port, portIsFixed } = options;
  let serving = await serve(folder, { host, port });
  for (let more = 1; more <= portsTried; more++) {
    if (serving.ok || portIsFixed || serving.problem !== 'port-taken') break;
    serving = await serve(folder, { host, port: port + more });
  }
  return serving;
}

function mendFor(serving: Serving & { ok: false }, { host, port, portIsFixed }: StartOptions): string {
  switch (serving.problem) {
    case 'port-taken':
      return portIsFixed
        ? `Port ${port} is in use. Stop what runs there, or choose another: npm start -- --port ${port < 65535 ? port + 1 : defaultPort}`
        : `Ports ${port} to ${port + portsTried} are all in use. Choose one: npm start -- --port N`;
    case 'port-forbidden':
      return `This user may not open port ${port}. Choose one above 1023: npm start -- --port ${defaultPort}`;
    case 'host-unknown':
      return `This machine has no address “${host}”. Leave --host out, or give one of its own.`;
    case 'failed':
      return `Could not serve on ${host}, port ${port}: ${serving.message}`;
  }
}
