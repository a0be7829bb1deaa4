/** The parsed tree of a YAML file -> plain data without shared parts, dangerous keys or duplicates. */
import { isAlias, isMap, isScalar, isSeq, type Alias, type Document, type Node, type YAMLMap } from 'yaml';
import type { Draft } from './draft.ts';
import type { DocumentPath } from './findings.ts';
import { mostAliases, mostElements, mostKeys, mostNesting } from './limits.ts';
import { reservedNames, type Plain } from './plain-data.ts';
import { quoted } from './quoting.ts';
import { slipInList, slipsInBraces } from './yaml-commas.ts';
import { doubtAbout } from './yaml-doubts.ts';
import { wordsForMissingDash } from './yaml-slips.ts';

export interface MadeData {
  readonly data: Plain;
  readonly drafts: readonly Draft[];
  /** Where a value was left out, so that nobody complains that it is missing. */
  readonly left: readonly DocumentPath[];
}

/** Leaves out what it complains about: later checks go on with the rest. */
export function plainDataOf(document: Document.Parsed, text: string): MadeData {
  const drafts: Draft[] = [];
  const left: DocumentPath[] = [];
  const anchors = new Map<string, Node>();
  /** Anchors whose content is being made: an alias to one of them would never end. */
  const open = new Set<string>();
  const unused = new Map<string, DocumentPath>();
  let aliases = 0;

  function make(node: unknown, path: DocumentPath): Plain {
    const made = isAlias(node) ? makeAliased(node, path) : makeAnchored(node, path);
    if (made === undefined) left.push(path);
    return made ?? null;
  }

  function makeAnchored(node: unknown, path: DocumentPath): Plain | undefined {
    const anchor = (node as Node | null)?.anchor;
    if (anchor !== undefined) {
      anchors.set(anchor, node as Node);
      unused.set(anchor, path);
    }
    if (anchor !== undefined) open.add(anchor);
    const made = makePlain(node, path);
    if (anchor !== undefined) open.delete(anchor);
    return made;
  }

  function makePlain(node: unknown, path: DocumentPath): Plain | undefined {
    if (path.length > mostNesting) {
      if (!drafts.some(({ code }) => code === 'too-deep'))
        complain(
          'too-deep',
          `Lists and mappings may lie ${mostNesting} deep in each other, with the aliases filled in they lie deeper; write the values out.`,
          path,
          node,
        );
      return undefined;
    }
    if (isMap(node)) return makeMapping(node, path);
    if (isSeq(node)) {
      if (node.items.length > mostElements) {
        complain(
          'too-many',
          `A list may have ${mostElements.toLocaleString('en-US')} elements, this one has ${node.items.length.toLocaleString('en-US')}; split the deck.`,
          path,
          node,
        );
        return undefined;
      }
      const slip = slipInList(node, text);
      if (slip) {
        drafts.push({ ...slip, path });
        return undefined;
      }
      return node.items.map((item, index) => make(item, [...path, index]));
    }
    if (isScalar(node)) {
      const doubt = doubtAbout(node, path, text);
      if (doubt) drafts.push({ ...doubt, severity: 'warning', path });
      // A mark of type without a value has been told of.
      if (node.tag?.startsWith('!') && node.value === '') return undefined;
      return makeScalar(node.value);
    }
    return null;
  }

  function makeMapping(node: YAMLMap, path: DocumentPath): Plain | undefined {
    if (node.items.length > mostKeys) {
      complain(
        'too-many',
        `A mapping may have ${mostKeys} keys, this one has ${node.items.length.toLocaleString('en-US')}; split the deck.`,
        path,
        node,
      );
      return undefined;
    }
    const made: Record<string, Plain> = {};
    const slips = slipsInBraces(node, text);
    const rests = new Set(slips.flatMap((slip) => [...slip.rests]));
    for (const { code, message, offset, key } of slips)
      drafts.push({ code, message, offset, path: key === null ? path : [...path, key] });
    if (node.items.length > 0 && rests.size === node.items.length) return undefined;
    const spoiled = new Set(slips.flatMap((slip) => slip.spoiled));
    for (const key of spoiled) left.push([...path, key]);
    for (const pair of node.items) {
      const { key: keyNode, value } = pair;
      if (rests.has(pair)) continue;
      const key = isScalar(keyNode) ? keyNode.value : undefined;
      if (typeof key !== 'string' || key === '') {
        // The parser has told of lists and mappings as keys already.
        if (key === '' || isAlias(keyNode) || keyNode === null)
          complain(
            'bad-key',
            'A key must be a word and none stands here; write one before the colon, and put a text that holds “: ” in quotes.',
            path,
            keyNode ?? value ?? node,
          );
        continue;
      }
      if (spoiled.has(key)) continue;
      const here = [...path, key];
      if (reservedNames.has(key))
        complain(
          'reserved-name',
          `No key may be called ${quoted(key)}, a name that the program itself needs; choose another.`,
          here,
          keyNode,
        );
      else if (Object.hasOwn(made, key)) {
        if (beginsAnother(key, node, path)) {
          const rest = isScalar(value) ? ` ${String(value.value)}` : '';
          complain('missing-dash', wordsForMissingDash(`${key}:${rest}`), path, keyNode);
          // Whose names these are can't be told: neither is said to be unknown.
          delete made['id'];
          left.push([...path, 'id']);
          break;
        }
        complain(
          'duplicate-key',
          `A key may stand once in a mapping, ${quoted(key)} stands here again; ${path.includes('when') ? 'join the two into one condition, like [600..800]' : 'take one of the two out'}.`,
          here,
          keyNode,
        );
      } else made[key] = make(value, here);
    }
    return made;
  }

  function makeAliased(alias: Alias, path: DocumentPath): Plain | undefined {
    const target = anchors.get(alias.source);
    unused.delete(alias.source);
    if (++aliases > mostAliases) {
      if (aliases === mostAliases + 1)
        complain(
          'too-many-aliases',
          `A file may use ${mostAliases} aliases, counted again inside what each stands for; here are more: write the values out.`,
          path,
          alias,
        );
      return undefined;
    }
    if (!target || open.has(alias.source)) {
      // The parser has told of an alias without a name.
      if (alias.source === '') return undefined;
      const fault = target ? 'stands inside itself' : 'stands for nothing before it';
      complain(
        'bad-alias',
        `An alias must stand for a value marked earlier with “&”, ${quoted(`*${alias.source}`)} ${fault}; write the value out, or put a text with “*” in quotes.`,
        path,
        alias,
      );
      return undefined;
    }
    open.add(alias.source);
    const made = makePlain(target, path);
    open.delete(alias.source);
    return made;
  }

  function complain(code: Draft['code'], message: string, path: DocumentPath, node: unknown): void {
    const offset = (node as Node | null)?.range?.[0];
    drafts.push({ code, message, path, ...(offset === undefined ? {} : { offset }) });
  }

  const data = make(document.contents, []);
  for (const [anchor, path] of unused)
    drafts.push({
      code: 'bad-alias',
      severity: 'warning',
      message: `A “&” at the start of a value names it for an alias, ${quoted(`&${anchor}`)} has none; take it away, or put a text with “&” in quotes.`,
      path,
    });
  return { data, drafts, left };
}

/** The first key of a list's element stands in it again: the dash before the next element is missing. */
const beginsAnother = (key: string, node: YAMLMap, path: DocumentPath): boolean =>
  node.flow !== true &&
  typeof path[path.length - 1] === 'number' &&
  isScalar(node.items[0]?.key) &&
  node.items[0].key.value === key;

function makeScalar(value: unknown): Plain {
  // −0 is 0 to everybody but Object.is.
  if (typeof value === 'number') return value === 0 ? 0 : value;
  if (typeof value === 'string' || typeof value === 'boolean') return value;
  return null;
}
