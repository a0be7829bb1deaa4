/** What the first page makes a browser load before anything is drawn. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { moduleList, type BuiltScript } from '../src/cli/build/module-list-plugin.ts';

export interface FirstScripts {
  readonly files: readonly string[];
  readonly gzippedBytes: number;
  /** The source files in them, from the repository's root. */
  readonly modules: readonly string[];
}

/** The entry script and everything it imports at once. Later parts (`import()`) don't count. */
export function firstScripts(built: string): FirstScripts {
  const scripts = JSON.parse(readFileSync(join(built, moduleList), 'utf8')) as BuiltScript[];
  const byFile = new Map(scripts.map((script) => [script.file, script]));
  const first = new Set<string>();
  const add = (file: string): void => {
    if (first.has(file)) return;
    first.add(file);
    byFile.get(file)?.imports.forEach(add);
  };
  scripts.filter((script) => script.isEntry).forEach((script) => add(script.file));
  const files = [...first];
  return {
    files,
    gzippedBytes: files.reduce((sum, file) => sum + gzipSync(readFileSync(join(built, file))).length, 0),
    modules: files.flatMap((file) => byFile.get(file)?.modules ?? []),
  };
}
