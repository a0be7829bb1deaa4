import type { Answer, Ask } from '../cards/types.ts';
import { unreadable, type AskOf, type FormResult } from './form-grade.ts';

const longestText = 2_000;

// Private-use characters, which nobody types, stand for the marks that stay.
const minus = '\ue000';
const point = '\ue001';
const otherMarks = /[^\p{L}\p{N}\p{M}\ue000\ue001]/gu;

/**
 * What is compared of a typed answer: letters and digits, without case, spaces, diacritics or
 * punctuation. Two marks stay because they change a number: a decimal point or comma ("1.5" is not 15)
 * and a minus before a number. Commas that group thousands go. A text of nothing but marks is
 * compared as it stands.
 */
export function comparable(text: string): string {
  const plain = text
    .slice(0, longestText)
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/g, '')
    .toLowerCase()
    .replace(/[\u2212\u2010-\u2015]/g, '-');
  const letters = plain
    .replace(/(^|[\s(])-(?=\.?\d)/g, `$1${minus}`)
    .replace(/(\d),(?=\d{3}(?!\d))/g, '$1')
    .replace(/(^|[\d\s])[.,](?=\d)/g, `$1${point}`)
    .replace(otherMarks, '');
  return letters === '' ? plain.trim() : letters;
}

/** Any of the accepted answers is desired; there is nothing between right and wrong. */
export function gradeText({ accept }: AskOf<'text', Ask>, answer: AskOf<'text', Answer>): FormResult {
  if (answer.text.trim() === '') return unreadable('empty', 'Type an answer.');
  const typed = comparable(answer.text);
  const right = accept.some((accepted) => comparable(accepted) === typed);
  return {
    ok: true,
    performance: right ? 'desired' : 'outside',
    headline: right ? 'right' : 'not that',
    detail: { form: 'text', text: answer.text },
  };
}
