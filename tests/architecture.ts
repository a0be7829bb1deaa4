/** The rules of the house as functions over source texts: what imports what, and what the core may touch. */
import ts from 'typescript';

export interface SourceFile {
  /** From the repository's root, with forward slashes: `src/rules/decide.ts`. */
  readonly path: string;
  readonly text: string;
}

/** Low to high: a folder may import from itself and from lower layers. */
export const layers: readonly (readonly string[])[] = [
  ['deck'],
  ['day'],
  ['formulas'],
  ['rules'],
  ['motion', 'cards', 'grading'],
  ['memory', 'drill', 'debrief', 'reference'],
  ['plan', 'fit'],
  ['record'],
  ['app', 'cli'],
];

/** Arrows inside a layer. */
const sideways: readonly (readonly [from: string, to: string])[] = [['grading', 'cards']];

/** Packages that only these files may import. */
const packageHomes: readonly (readonly [name: string, home: RegExp])[] = [
  ['ts-fsrs', /^src\/memory\/scheduler\.ts$/],
  ['idb-keyval', /^src\/record\/store/],
  ['yaml', /^src\/(deck|cli)\//],
  ['mathjs', /^src\/formulas\//],
  ['svelte', /^src\/app\//],
  ['vite', /^src\/cli\/(build\/|deck-plugin\.ts$)/],
];

/** Outside of these, src is core: no clock, chance, storage, page or network. */
const shell = /^src\/(app|cli)\/|^src\/record\/store/;

const folderOf = (path: string): string | undefined => /^src\/([^/]+)\//.exec(path)?.[1];
const layerOf = (folder: string): number => layers.findIndex((layer) => layer.includes(folder));

/** Every module a file imports, as written: static, dynamic, re-exported, and for types. */
export function importsOf({ path, text }: SourceFile): string[] {
  const source = parse(path, text);
  const found: string[] = [];
  visit(source, (node) => {
    if ((ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) && node.moduleSpecifier)
      found.push(textOf(node.moduleSpecifier));
    else if (ts.isCallExpression(node) && node.expression.kind === ts.SyntaxKind.ImportKeyword)
      found.push(textOf(node.arguments[0]));
    else if (ts.isImportTypeNode(node) && ts.isLiteralTypeNode(node.argument))
      found.push(textOf(node.argument.literal));
  });
  return found;
}

/** Imports that go against the arrows, into another folder's inside, or to a package kept elsewhere. */
export function wrongImports(file: SourceFile): string[] {
  const from = folderOf(file.path);
  if (from === undefined) return [];
  return importsOf(file).flatMap((name) => {
    if (!name.startsWith('.')) return wrongPackage(file.path, name);
    const target = new URL(name, `file:///${file.path}`).pathname.slice(1);
    const to = folderOf(target);
    if (to === undefined || to === from) return [];
    const lower = layerOf(to) < layerOf(from);
    const allowed = lower || sideways.some(([one, other]) => one === from && other === to);
    return allowed ? [] : [`${file.path} imports ${target}: ${from} may not know ${to}`];
  });
}

function wrongPackage(path: string, name: string): string[] {
  if (name.startsWith('node:'))
    return path.startsWith('src/cli/') ? [] : [`${path} imports ${name}: only the command line runs in Node`];
  const [home, pattern] =
    packageHomes.find(([known]) => name === known || name.startsWith(`${known}/`)) ?? [];
  return !pattern || pattern.test(path) ? [] : [`${path} imports ${home}, which has its home elsewhere`];
}

const forbiddenCalls: ReadonlySet<string> = new Set(['Date.now', 'Math.random', 'performance.now']);
const forbiddenNames: ReadonlySet<string> = new Set([
  'window',
  'document',
  'navigator',
  'localStorage',
  'sessionStorage',
  'indexedDB',
  'crypto',
  'fetch',
  'setTimeout',
  'setInterval',
  'process',
]);

/** Uses of the clock, chance, storage, page or network in a core file; none for a file of the shell. */
export function impurities({ path, text }: SourceFile): string[] {
  if (folderOf(path) === undefined || shell.test(path)) return [];
  const source = parse(path, text);
  const own = namesDeclaredIn(source);
  const found: string[] = [];
  const report = (node: ts.Node, what: string): void => {
    const { line } = source.getLineAndCharacterOfPosition(node.getStart(source));
    found.push(`${path}:${line + 1} uses ${what}`);
  };
  visit(source, (node) => {
    if (ts.isPropertyAccessExpression(node) && forbiddenCalls.has(node.getText(source)))
      report(node, node.getText(source));
    else if (isDateOfNow(node)) report(node, 'the present date');
    else if (ts.isIdentifier(node) && forbiddenNames.has(node.text) && !own.has(node.text) && isValue(node))
      report(node, node.text);
  });
  return found;
}

function isDateOfNow(node: ts.Node): boolean {
  const made = ts.isNewExpression(node) || ts.isCallExpression(node);
  if (!made || !ts.isIdentifier(node.expression) || node.expression.text !== 'Date') return false;
  // `Date(x)` ignores what it is given and tells the present.
  return ts.isCallExpression(node) || (node.arguments?.length ?? 0) === 0;
}

/** False for the name of a property, of a member, or in a type. */
function isValue(node: ts.Identifier): boolean {
  const { parent } = node;
  if (ts.isPropertyAccessExpression(parent)) return parent.expression === node;
  if (ts.isPropertyAssignment(parent)) return parent.initializer === node;
  if (ts.isBindingElement(parent)) return parent.propertyName !== node;
  return !(
    ts.isTypeNode(parent) ||
    ts.isTypeElement(parent) ||
    ts.isClassElement(parent) ||
    ts.isQualifiedName(parent) ||
    ts.isEnumMember(parent)
  );
}

function namesDeclaredIn(source: ts.SourceFile): Set<string> {
  const names = new Set<string>();
  visit(source, (node) => {
    const declares =
      ts.isVariableDeclaration(node) ||
      ts.isParameter(node) ||
      ts.isBindingElement(node) ||
      ts.isFunctionDeclaration(node) ||
      ts.isImportSpecifier(node);
    if (declares && node.name && ts.isIdentifier(node.name)) names.add(node.name.text);
  });
  return names;
}

/** Files that hold more than one subject can hold: past this they want splitting. */
export const mostLines = 300;
export const lineCount = (text: string): number => text.replace(/\n$/, '').split('\n').length;

export function tooLong({ path, text }: SourceFile): string[] {
  const lines = lineCount(text);
  return lines > mostLines ? [`${path} has ${lines} lines, over ${mostLines}: split it by subject`] : [];
}

function parse(path: string, text: string): ts.SourceFile {
  const script = path.endsWith('.svelte') ? scriptsOf(text) : text;
  return ts.createSourceFile(path, script, ts.ScriptTarget.Latest, true, ts.ScriptKind.TS);
}

/** A component's scripts, one after the other. */
const scriptsOf = (text: string): string =>
  [...text.matchAll(/<script[^>]*>([\s\S]*?)<\/script>/g)].map((match) => match[1]).join('\n');

function visit(node: ts.Node, look: (node: ts.Node) => void): void {
  look(node);
  ts.forEachChild(node, (child) => visit(child, look));
}

const textOf = (node: ts.Node | undefined): string => (node && ts.isStringLiteralLike(node) ? node.text : '');
