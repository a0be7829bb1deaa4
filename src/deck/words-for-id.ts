/** Texts that must have a form and have none: ids above all, and the id that was meant. */
import type { Draft } from './draft.ts';
import type { DocumentPath } from './findings.ts';
import { isList, isMapping, valueAt, type Plain } from './plain-data.ts';
import { nearestOf } from './nearest.ts';
import { quoted, sayFound } from './quoting.ts';
import { sayList } from './say.ts';

export function wrongForm(value: Plain | undefined, path: DocumentPath, data: Plain): Draft {
  const found = sayFound(value);
  if (isVersion(path))
    return {
      code: 'bad-version',
      message: `A version is three whole numbers with dots, found ${found}; write one like “1.0.0”.`,
      path,
    };
  if (path.length === 1 && path[0] === 'language')
    return {
      code: 'bad-language',
      message: `A language is written as a BCP 47 tag, found ${found}; write one like “en” or “de-AT”.`,
      path,
    };
  return {
    code: 'bad-id',
    message: `An id has small letters, digits and single hyphens and begins with a letter, found ${found}; ${mendForId(String(value), path, data)}.`,
    path,
  };
}

const isVersion = (path: DocumentPath): boolean => path.length === 1 && path[0] === 'version';

/** Which list of the deck a key names an element of. */
const listOfKey: Readonly<Record<string, string>> = {
  source: 'sources',
  defaultSource: 'sources',
  quantity: 'quantities',
  height: 'quantities',
  inputs: 'quantities',
  gate: 'gates',
  from: 'gates',
  to: 'gates',
  completeBy: 'gates',
  control: 'controls',
  controls: 'controls',
  phases: 'phases',
  then: 'actions',
  opposes: 'actions',
  priority: 'actions',
};

interface Named {
  readonly id: string;
  readonly label: string;
}

/** What each list of a deck names, gathered once however many ids are wrong. */
const gathered = new WeakMap<object, Map<string, readonly Named[]>>();

function namedIn(data: Plain, list: string): readonly Named[] {
  if (!isMapping(data)) return [];
  const lists = gathered.get(data) ?? new Map<string, readonly Named[]>();
  gathered.set(data, lists);
  const named = lists.get(list) ?? gather(data, list);
  lists.set(list, named);
  return named;
}

function gather(data: Plain, list: string): readonly Named[] {
  const elements = (holder: Plain | undefined, key: string): readonly Plain[] => {
    const found = valueAt(holder, [key]);
    return isList(found) ? found : [];
  };
  const all =
    list === 'actions'
      ? elements(data, 'controls').flatMap((control) => elements(control, 'actions'))
      : elements(data, list);
  return all.flatMap((element) => {
    const [id, label] = [
      valueAt(element, ['id']),
      valueAt(element, ['label']) ?? valueAt(element, ['title']),
    ];
    return typeof id === 'string' ? [{ id, label: typeof label === 'string' ? label : '' }] : [];
  });
}

/** Names among which a near one is sought, for every id that is none. */
const mostSought = 200;

/** Names shown as a choice when none is near. */
const mostNames = 6;

function mendForId(text: string, path: DocumentPath, data: Plain): string {
  const like = idLike(text);
  const key = path.findLast((step) => typeof step === 'string') ?? '';
  const list = path[path.length - 1] === 'id' || !Object.hasOwn(listOfKey, key) ? null : listOfKey[key]!;
  if (list === null) return `write ${like ? quoted(like) : 'one like “short-final”'}`;
  const named = namedIn(data, list);
  const ids = named.map(({ id }) => id).slice(0, mostSought);
  const wanted = text.trim().toLowerCase();
  const labelled = named.find(({ label }) => label.trim().toLowerCase() === wanted)?.id;
  const near = labelled ?? (like && (ids.includes(like) ? like : nearestOf(like, ids)));
  if (near) return `write ${quoted(near)}`;
  const several = text.split(/\s+/);
  if (
    typeof path[path.length - 1] === 'number' &&
    several.length > 1 &&
    several.every((one) => ids.includes(one))
  )
    return `put commas between them: ${several.join(', ')}`;
  if (ids.length === 0) return `write ${like ? quoted(like) : 'one like “short-final”'}`;
  const shown = ids.slice(0, mostNames);
  return `write the id of one of the ${list}: ${ids.length > mostNames ? `${shown.join(', ')}, …` : sayList(shown, 'or')}`;
}

/** An id that resembles the text, or null when it has no letters to make one from. */
export function idLike(text: string): string | null {
  const id = text
    .slice(0, 100)
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .replace(/([a-z0-9])([A-Z])/g, '$1-$2')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^[-0-9]+|-+$/g, '');
  return id === '' ? null : id.slice(0, 60).replace(/-+$/, '');
}
