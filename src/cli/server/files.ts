import { realpathSync, statSync } from 'node:fs';
import { join, sep } from 'node:path';

export interface FoundFile {
  readonly path: string;
  readonly bytes: number;
  readonly modifiedMs: number;
}

/**
 * The file that a request's path names inside a folder; null when there is none, when the path leads out
 * of the folder (dots, encoded dots, links), or when any part of it starts with a dot.
 * @param folder absolute path of the folder that is served.
 * @param urlPath the path as in the URL, percent-encoded, without the query; "/" is the page itself.
 */
export function fileAt(folder: string, urlPath: string): FoundFile | null {
  let decoded: string;
  try {
    decoded = decodeURIComponent(urlPath);
  } catch {
    return null;
  }
  if (!decoded.startsWith('/') || /[\0\\]/.test(decoded)) return null;
  const parts = decoded.split('/').slice(1);
  if (parts.some((part) => part.startsWith('.'))) return null;
  if (parts.at(-1) === '') parts[parts.length - 1] = 'index.html';
  try {
    const inside = realpathSync(folder);
    const path = realpathSync(join(inside, ...parts));
    if (!path.startsWith(inside + sep)) return null;
    const stat = statSync(path);
    return stat.isFile() ? { path, bytes: stat.size, modifiedMs: stat.mtimeMs } : null;
  } catch {
    return null;
  }
}
