import { relative, sep } from 'node:path';
import type { Plugin } from 'vite';

/** What the build put where: each script with the source files in it, and the scripts it loads at once. */
export interface BuiltScript {
  readonly file: string;
  readonly isEntry: boolean;
  /** Scripts that load together with this one. */
  readonly imports: readonly string[];
  /** Source files, from the repository's root. */
  readonly modules: readonly string[];
}

export const moduleList = '.vite/scripts.json';

/** Writes `BuiltScript[]` beside the build, for the check of what the first page loads. */
export function listModules(root: string): Plugin {
  const name = (id: string): string =>
    relative(root, id.replace(/^\0|\?.*$/g, ''))
      .split(sep)
      .join('/');
  return {
    name: 'gatecall-module-list',
    apply: 'build',
    generateBundle(_, bundle) {
      const scripts: BuiltScript[] = Object.values(bundle).flatMap((part) =>
        part.type === 'chunk'
          ? [
              {
                file: part.fileName,
                isEntry: part.isEntry,
                imports: part.imports,
                modules: part.moduleIds.map(name),
              },
            ]
          : [],
      );
      this.emitFile({ type: 'asset', fileName: moduleList, source: JSON.stringify(scripts, null, 1) });
    },
  };
}
