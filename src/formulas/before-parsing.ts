/** What is looked at before a formula is parsed, so that no text can keep the parser busy. */
import { mostFormulaCharacters, mostFormulaNesting } from '../deck/limits.ts';
import { quoted } from '../deck/quoting.ts';

export interface Refusal {
  readonly why: string;
  readonly mend: string;
  /** How far into the text. */
  readonly into: number;
}

const foreign = /[^A-Za-z0-9_ \t\r\n.+\-*/^(),<>=!?:]/;

/** Marks of other languages, and what to write instead. */
const mends: ReadonlyMap<string, string> = new Map([
  ['%', 'write “percent” behind a number'],
  ['°', 'write “deg” behind a number'],
  ['×', 'write “*”'],
  ['·', 'write “*”'],
  ['÷', 'write “/”'],
  ['−', 'write “-”'],
  ['–', 'write “-”'],
  ['≤', 'write “<=”'],
  ['≥', 'write “>=”'],
  ['≠', 'write “!=”'],
  ['²', 'write “^2”'],
  ['³', 'write “^3”'],
  ['√', 'write “sqrt(…)”'],
  ['[', 'use ( and )'],
  ['{', 'use ( and )'],
]);

/** Null when the text may be parsed. Takes a time in proportion to the text, which is cut first. */
export function whyNotParsed(text: string): Refusal | null {
  if (text.length > mostFormulaCharacters)
    return {
      why: `A formula may have ${mostFormulaCharacters} characters, this one has ${text.length}`,
      mend: 'break it up into quantities with formulas of their own',
      into: mostFormulaCharacters,
    };
  const mark = foreign.exec(text);
  if (mark)
    return {
      why: `A formula is written in plain letters, digits and marks, found ${quoted(String.fromCodePoint(text.codePointAt(mark.index)!))}`,
      mend: mends.get(mark[0]) ?? 'take it out',
      into: mark.index,
    };
  return whyTooDeep(text);
}

function whyTooDeep(text: string): Refusal | null {
  let open = 0;
  let nested = 0;
  for (const [at, mark] of [...text].entries()) {
    if (mark === '(') open++;
    if (mark === ')') open--;
    if (mark === '?' || mark === '^') nested++;
    if (open + nested > mostFormulaNesting || /^[-+!](?:\s*[-+!]){3}/.test(text.slice(at, at + 40)))
      return {
        why: `Parts of a formula may lie ${mostFormulaNesting} deep in each other, these lie deeper`,
        mend: 'break it up into quantities with formulas of their own',
        into: at,
      };
  }
  return null;
}
