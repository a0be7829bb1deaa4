/** The parser's errors in words for someone who doesn't know YAML by heart. */
import type { YAMLError } from 'yaml';
import type { DeckCode } from './codes.ts';
import { quoted, uncapitalised } from './quoting.ts';

interface Words {
  readonly code: DeckCode;
  readonly message: string;
}

export function wordsForYamlError(error: YAMLError, text: string): Words {
  const syntax = (message: string): Words => ({ code: 'yaml-syntax', message });
  const found = text.slice(error.pos[0], error.pos[0] + 1);
  switch (error.code) {
    case 'TAB_AS_INDENT':
      return {
        code: 'tab-indentation',
        message: 'Lines are indented with spaces, here stands a tab; replace it by spaces.',
      };
    case 'MULTIPLE_DOCS':
      return {
        code: 'several-documents',
        message: 'A file holds one deck, here “---” begins a second one; move it to a file of its own.',
      };
    case 'TAG_RESOLVE_FAILED':
      return {
        code: 'bad-tag',
        message: `Values carry no type marks, here stands ${quoted(tagAt(text, error.pos[0]))}; take it away, or put a text with “!” in quotes.`,
      };
    case 'NON_STRING_KEY':
      return {
        code: 'bad-key',
        message: 'A key must be a word, here it is a list or a mapping; write one word before the colon.',
      };
    case 'BAD_ALIAS':
      return {
        code: 'bad-alias',
        message:
          'A “*” at the start of a value makes it an alias, this one has no proper name; put the text in quotes.',
      };
    case 'BAD_SCALAR_START':
      return syntax(`A text can’t begin with ${quoted(found)}; put the whole text in quotes.`);
    case 'BAD_DQ_ESCAPE':
      return syntax(
        'In double quotes a backslash begins a special mark and this is none; double the backslash or use single quotes.',
      );
    case 'BAD_INDENT':
      return syntax(
        /flow/i.test(error.message)
          ? 'A bracket opened before must close and its lines be indented more than the key; close it, or indent.'
          : misaligned,
      );
    case 'MISSING_CHAR':
      return syntax(wordsForMissing(error.message));
    case 'BLOCK_AS_IMPLICIT_KEY':
      if (!/:(\s|$)/.test(restOfLine(text, error.pos[0])))
        return syntax(
          'Below a value no key may be indented more than the value’s own, the next line is; indent it like its neighbours.',
        );
      return syntax(
        /sequence/i.test(error.message)
          ? 'The dashes of a list must stand in one column, this one does not; indent it like its neighbours.'
          : 'A value may hold no “: ” of its own, this one does; put the text in quotes, or give the key a line of its own.',
      );
    case 'MULTILINE_IMPLICIT_KEY':
      return syntax(
        'A line must be a key, a colon, a space and a value, here the colon or the space after it is missing; add it, or indent a line that carries on the text above.',
      );
    case 'BLOCK_IN_FLOW':
      return syntax(
        'Inside brackets entries are parted by commas and nothing is indented, here a key or a dash follows at once; add the comma, or put a text that holds “: ” in quotes.',
      );
    case 'BAD_DIRECTIVE':
      return syntax(
        'A line that begins with “%” is an order to the parser and none is needed; take it away.',
      );
    case 'KEY_OVER_1024_CHARS':
      return syntax('A key may have 1,024 characters, this one has more; shorten it.');
    case 'UNEXPECTED_TOKEN':
      return syntax(wordsForUnexpected(error.message, found));
    default:
      return syntax(
        `The text is not YAML here (${uncapitalised(error.message)}); compare it with the lines around it.`,
      );
  }
}

function wordsForMissing(message: string): string {
  const quote = /Missing closing (\S)/.exec(message)?.[1];
  if (quote)
    return `A text opened with ${quote} must be closed with ${quote}, this one is not; add the closing mark.`;
  const bracket = /end with an? (\S)/.exec(message)?.[1];
  if (bracket) return `A bracket opened before must close with ${bracket}, it does not; add it.`;
  if (/without - indicator/.test(message)) return misaligned;
  if (/map values/.test(message))
    return 'A key must be followed by a colon and a space, this one is not; add them, or put the text in quotes.';
  if (/Missing ,/.test(message))
    return 'Entries in brackets are parted by commas, one is missing here; add it.';
  if (/space/i.test(message))
    return 'A space must stand before a “#” and after a comma, a colon or a closing quote, here it is missing; add it.';
  return 'A mark is missing here, as the lines around show; compare them, and add it.';
}

const misaligned =
  'All keys of one mapping, and all dashes of one list, must begin in the same column, this line does not; indent it like its neighbours.';

function wordsForUnexpected(message: string, found: string): string {
  if (/block scalar header|^Not a YAML token/i.test(message))
    return 'A “>” or “|” at the start of a value begins a text of several lines; put a value that begins with one, like a condition, in quotes.';
  if (/same line/.test(message))
    return 'A list begins on a line of its own below its key; move the dash there, or put a text that begins with “- ” in quotes.';
  if (found === ',')
    return 'A comma stands here with nothing before it; take it away, or put a text that holds commas in quotes.';
  if (found === ']' || found === '}')
    return `A closing ${quoted(found)} stands here without its opening one; take it away or open it.`;
  if (/node end/.test(message))
    return 'A value ends before this and something follows on the same line; put a comma between entries in brackets, put the whole text in quotes, or take away what follows.';
  return `${found.trim() ? quoted(found) : 'A mark'} stands where none is expected; put a text with special marks in quotes.`;
}

const tagAt = (text: string, offset: number): string =>
  /^\S{1,40}/.exec(text.slice(offset, offset + 40))?.[0] ?? '!';

const restOfLine = (text: string, offset: number): string =>
  /.*/.exec(text.slice(offset, offset + 2000))?.[0] ?? '';
