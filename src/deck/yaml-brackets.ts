/** Slips inside brackets behind an error of the parser: never closed, parted by the wrong mark, a stray minus. */
import type { YAMLError } from 'yaml';
import type { Lines } from './lines.ts';
import { quoted } from './quoting.ts';
import type { Slip } from './yaml-slip.ts';

const closing: Readonly<Record<string, string>> = { '[': ']', '{': '}' };

interface Open {
  readonly mark: string;
  readonly at: number;
}

/** What a line leaves open or hides behind a remark. */
interface LineScan {
  /** The innermost bracket that a wrong one or the end of the line leaves open. */
  readonly open: Open | null;
  /** Where a remark begins that hides a closing bracket. */
  readonly hidingRemark: number | null;
}

function scan(line: string): LineScan {
  const stack: Open[] = [];
  let quote = '';
  for (let at = 0; at < line.length; at++) {
    const mark = line[at]!;
    if (quote) quote = mark === quote ? '' : quote;
    else if (/["']/.test(mark) && /[[{,:-]\s*$/.test(line.slice(0, at))) quote = mark;
    else if (mark in closing) stack.push({ mark, at });
    else if (mark === ']' || mark === '}') {
      const top = stack[stack.length - 1];
      // A “}” shows that a “[” inside its braces was forgotten; a lone closing mark shows nothing.
      if (top && closing[top.mark] !== mark && stack.some((one) => closing[one.mark] === mark))
        return { open: top, hidingRemark: null };
      if (top && closing[top.mark] === mark) stack.pop();
    } else if (mark === '#' && /\s/.test(line[at - 1] ?? '')) {
      const hides = stack.length > 0 && /[\]}]/.test(line.slice(at));
      return { open: stack[stack.length - 1] ?? null, hidingRemark: hides ? at : null };
    }
  }
  return { open: stack[stack.length - 1] ?? null, hidingRemark: null };
}

const ofBrackets = ['BAD_INDENT', 'MISSING_CHAR', 'BLOCK_IN_FLOW', 'UNEXPECTED_TOKEN'];
/** Lines looked at before the one in which the parser stumbles. */
const mostLines = 8;

export function slipInBrackets(error: YAMLError, offset: number, text: string, lines: Lines): Slip | null {
  const slip = (message: string, at: number): Slip => ({
    code: 'yaml-syntax',
    message,
    offset: at,
    near: at,
    isOfElement: false,
  });
  const ahead = text.slice(offset, offset + 200);
  const minus = /^-\s+(\d[\d.]*)/.exec(ahead)?.[1];
  if (minus !== undefined && /[[,{:]\s*$/.test(text.slice(Math.max(0, offset - 50), offset)))
    return slip(`A minus sign stands close to its number, here a space parts them; write -${minus}.`, offset);
  if (!ofBrackets.includes(error.code)) return null;
  if (error.code === 'BLOCK_IN_FLOW' && /^[^,[\]{}"'\n]*;\s*[\w-]+:/.test(ahead))
    return slip(
      `Entries in brackets are parted by commas, here by a semicolon; write “,” for “;”.`,
      offset + ahead.indexOf(';'),
    );
  const { line } = lines.placeAt(offset);
  const rows = Array.from({ length: Math.min(line, mostLines) }, (_, back) => line - back);
  const scans = rows.map((at) => {
    const start = lines.startOf(at);
    return { start, ...scan(text.slice(start, Math.min(lines.startOf(at + 1), start + 2000))) };
  });
  const hiding = scans.slice(0, 4).find(({ hidingRemark }) => hidingRemark !== null);
  if (hiding)
    return {
      ...slip(
        'A “#” behind a space begins a remark, here it hides the rest of the line with its closing bracket; put the text that holds “#” in quotes.',
        hiding.start + hiding.hidingRemark!,
      ),
      near: hiding.start + hiding.hidingRemark! - 1,
    };
  if (!/flow|end with/i.test(error.message)) return null;
  const unclosed = scans.find(({ open }) => open !== null);
  if (!unclosed?.open) return null;
  const { mark, at } = unclosed.open;
  return slip(
    `A bracket must be closed, ${quoted(mark)} here is not; write ${quoted(closing[mark]!)} where what it holds ends, or put a text with brackets in quotes.`,
    unclosed.start + at,
  );
}
