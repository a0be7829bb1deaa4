/** Where a text stops being JSON (RFC 8259). Engines word this each in its own way, and some don't say it at all. */

/** 1-based, as text editors count. */
export interface TextPlace {
  readonly line: number;
  readonly column: number;
  /** The text is sound as far as it goes, and ends too early. */
  readonly atEnd: boolean;
}

/** The first place at which the text can't be read on; null when it is sound. */
export function jsonFault(text: string): TextPlace | null {
  const at = faultOffset(text);
  if (at === null) return null;
  const before = text.slice(0, at);
  const line = before.split('\n').length;
  return { line, column: at - before.lastIndexOf('\n'), atEnd: at >= text.length };
}

type Expected = 'value' | 'item-or-end' | 'name' | 'name-or-end' | 'colon' | 'comma-or-end' | 'nothing';

const scalar = /true|false|null|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const space = /[ \t\n\r]*/y;

/** One pass with a stack of its own, so that no depth of nesting can overflow it. */
function faultOffset(text: string): number | null {
  const open: ('{' | '[')[] = [];
  let expected: Expected = 'value';
  let at = 0;
  const afterValue = (): Expected => (open.length === 0 ? 'nothing' : 'comma-or-end');
  for (;;) {
    at = endOf(space, text, at) ?? at;
    const char = text[at];
    if (char === undefined) return expected === 'nothing' ? null : at;
    if (expected === 'colon') {
      if (char !== ':') return at;
      expected = 'value';
      at++;
    } else if (expected === 'comma-or-end' && char === ',') {
      expected = open[open.length - 1] === '{' ? 'name' : 'value';
      at++;
    } else if (closes(char, open[open.length - 1], expected)) {
      open.pop();
      expected = afterValue();
      at++;
    } else if (expected === 'name' || expected === 'name-or-end') {
      const string = stringAt(text, at);
      if (string.fault !== null) return string.fault;
      expected = 'colon';
      at = string.end;
    } else if (expected === 'value' || expected === 'item-or-end') {
      if (char === '{' || char === '[') {
        open.push(char);
        expected = char === '{' ? 'name-or-end' : 'item-or-end';
        at++;
      } else {
        const string = char === '"' ? stringAt(text, at) : null;
        if (string !== null && string.fault !== null) return string.fault;
        const end = string?.end ?? endOf(scalar, text, at);
        if (end === null) return at;
        expected = afterValue();
        at = end;
      }
    } else return at;
  }
}

function closes(char: string, opened: '{' | '[' | undefined, expected: Expected): boolean {
  if (char === '}') return opened === '{' && (expected === 'comma-or-end' || expected === 'name-or-end');
  return char === ']' && opened === '[' && (expected === 'comma-or-end' || expected === 'item-or-end');
}

function endOf(pattern: RegExp, text: string, at: number): number | null {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : null;
}

type ScannedString = { readonly end: number; readonly fault: null } | { readonly fault: number };

function stringAt(text: string, start: number): ScannedString {
  if (text[start] !== '"') return { fault: start };
  for (let at = start + 1; at < text.length; at++) {
    const char = text[at]!;
    if (char === '"') return { end: at + 1, fault: null };
    if (char < ' ') return { fault: at };
    if (char !== '\\') continue;
    const escaped = text[at + 1] ?? '';
    if (escaped === 'u' && /^[0-9a-fA-F]{4}$/.test(text.slice(at + 2, at + 6))) at += 5;
    else if (escaped !== '' && '"\\/bfnrt'.includes(escaped)) at += 1;
    else return { fault: at };
  }
  return { fault: text.length };
}
