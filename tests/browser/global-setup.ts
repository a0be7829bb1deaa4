/** Before the browser tests: the app as built for production, served as `npm start` serves it. */
import { fileURLToPath } from 'node:url';
import type { TestProject } from 'vitest/node';
import { buildApp, builtFolder, isFresh } from '../../src/cli/build/built-app.ts';
import { serve } from '../../src/cli/server/serve.ts';
import { findBrowser } from '../browser-path.ts';

declare module 'vitest' {
  export interface ProvidedContext {
    /** Where the app is served, with a slash at the end. */
    address: string;
    /** The folder it is served from. */
    built: string;
    /** The browser to start. */
    browserPath: string;
  }
}

export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const problem = isFresh(root) ? null : await buildApp(root);
  if (problem !== null) throw new Error(problem);
  const built = builtFolder(root);
  const serving = await serve(built, { host: '127.0.0.1', port: 0 });
  if (!serving.ok) throw new Error(serving.message);
  project.provide('address', serving.served.address);
  project.provide('built', built);
  project.provide('browserPath', await findBrowser());
  return serving.served.close;
}
