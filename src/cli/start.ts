/** `npm start`: builds the app when its sources changed, serves it, prints its address. */
import { fileURLToPath } from 'node:url';
import { buildApp, builtFolder, isFresh } from './build/built-app.ts';
import { start } from './start-app.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

const started = await start(process.argv.slice(2), process.env, {
  folder: builtFolder(root),
  isFresh: () => isFresh(root),
  build: () => buildApp(root),
  out: (line) => void process.stdout.write(`${line}\n`),
  err: (line) => void process.stderr.write(`${line}\n`),
});

if (started.served) {
  const { served } = started;
  const stop = (): void => void served.close().then(() => process.exit(0));
  process.once('SIGINT', stop);
  process.once('SIGTERM', stop);
} else process.exitCode = started.exitCode;
