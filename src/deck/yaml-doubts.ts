/** Texts without quotes that are read in another way than they look. */
import type { Scalar } from 'yaml';
import type { DeckCode } from './codes.ts';
import type { DocumentPath } from './findings.ts';
import { quoted } from './quoting.ts';
import { numberIn } from './words-for-number.ts';

interface Doubt {
  readonly code: DeckCode;
  readonly message: string;
  readonly offset: number;
}

export function doubtAbout(node: Scalar, path: DocumentPath, text: string): Doubt | null {
  const { type, value, range } = node;
  if (type !== 'PLAIN' || typeof value !== 'string' || !range) return null;
  const remark = /^[ \t]+#([^\s#!=-].{0,40})/.exec(text.slice(range[1], range[1] + 60));
  if (remark)
    return {
      code: 'doubtful-remark',
      message: `A “#” behind a space begins a remark, so the text ends before ${quoted(`#${remark[1]}`)}; put the whole text in quotes, or a space behind the “#” of a remark.`,
      offset: range[1] + remark[0].indexOf('#'),
    };
  const inside = /^[“„‘«](.+)[”“’»]$/.exec(value)?.[1];
  // Numbers and conditions with such marks are errors of their own.
  if (inside === undefined || numberIn(inside) !== null || path.includes('when')) return null;
  return {
    code: 'typographic-quotes',
    message: `Quotes around a text are straight, ${quoted(inside)} has typographic ones that will be shown; write "${inside.length > 60 ? '…' : inside}", or put straight ones around them.`,
    offset: range[0],
  };
}
