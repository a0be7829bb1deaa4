/** What is wrong with a text that is no unary test, and what its author most likely meant. */

export interface UnaryProblem {
  /** 1-based, in the condition's own text. */
  readonly column: number;
  /** What a condition must be, what was found, and what to write instead, in one sentence. */
  readonly message: string;
}

const rule = 'A condition is a number, a comparison, an interval, a list of these, or not(…) around them';

/** A number as people write it; signs and commas of other tongues are put right in the mend. */
const number = String.raw`([-−+]?\s?\d+(?:[.,]\d+)?)`;
const begins = (pattern: string): RegExp => new RegExp(`^${pattern}`, 'iu');
const whole = (pattern: string): RegExp => new RegExp(`^${pattern}\\s*$`, 'iu');
const plain = (text: string): string =>
  text
    .replace(/\s|^\+/g, '')
    .replace('−', '-')
    .replace(',', '.');

/** Reads an operator word or a misspelt operator; null when it is neither. */
function operatorMeant(text: string): string | null {
  const meanings: readonly (readonly [RegExp, string])[] = [
    [/^(=<|≤|⩽|<\s+=|at most|up to|no more than|max(imum)?)$/i, '<='],
    [/^(=>|≥|⩾|>\s+=|at least|no less than|min(imum)?)$/i, '>='],
    [/^(over|above|more than|greater than|exceeds|>>)$/i, '>'],
    [/^(under|below|less than|lower than|<<)$/i, '<'],
    [/^(==+|is|equals?|:)$/i, '='],
    [/^(<>|≠|!==?|!|is not)$/i, '!='],
  ];
  return meanings.find(([pattern]) => pattern.test(text))?.[1] ?? null;
}

interface Complaint {
  /** What the text must look like to be meant. */
  readonly pattern: RegExp;
  /** Found and mend; null when it doesn't apply after all. */
  readonly say: (found: RegExpExecArray) => string | null;
}

/** Tried in turn on the text from the start of the test that failed. */
const complaints: readonly Complaint[] = [
  { pattern: /^$/, say: () => 'there is nothing here: write a test such as < 140' },
  {
    pattern: begins(String.raw`(?:between|from)\s*${number}\s*(?:and|to|-|–)\s*${number}`),
    say: ([found, lo, hi]) =>
      `“${found}” is in words: write ${ends(lo!, hi!)} with both ends, or ( for an end left out`,
  },
  {
    pattern: begins(String.raw`([><]=?)\s*${number}\s*(?:and|but|&&?|,?\s*und|\s)\s*([><]=?)\s*${number}`),
    say: ([found, first, a, second, b]) => {
      const [low, high] = first!.startsWith('>')
        ? [
            [first!, a!],
            [second!, b!],
          ]
        : [
            [second!, b!],
            [first!, a!],
          ];
      if (!low![0]!.startsWith('>') || !high![0]!.startsWith('<')) return null;
      const open = low![0] === '>=' ? '[' : '(';
      const close = high![0] === '<=' ? ']' : ')';
      return `“${found}” joins two tests with something else than a comma: write ${open}${plain(low![1]!)}..${plain(high![1]!)}${close}`;
    },
  },
  {
    pattern: begins(String.raw`${number}\s*(<=?)\s*\p{L}[\p{L}\d -]*\s*(<=?)\s*${number}`),
    say: ([found, lo, first, second, hi]) =>
      `“${found}” names what is tested: write ${first === '<=' ? '[' : '('}${plain(lo!)}..${plain(hi!)}${second === '<=' ? ']' : ')'}`,
  },
  {
    pattern: begins(
      String.raw`(at most|up to|no more than|max(?:imum)?|at least|no less than|min(?:imum)?|over|above|more than|greater than|exceeds|under|below|less than|lower than|is not|is|equals?|=<|=>|[<>]\s+=|<>|==+|!==?|>>|<<|[≤⩽≥⩾≠!:])\s*${number}`,
    ),
    say: ([found, operator, value]) => {
      const meant = operatorMeant(operator!);
      return meant === null || meant === operator
        ? null
        : `“${found}” is no comparison: write ${meant} ${plain(value!)}`;
    },
  },
  {
    pattern: whole(String.raw`([\[(\]])\s*${number}\s*(?:[-–—,;:/…]|\.|\.{3,}|to)\s*${number}\s*([\])\[])`),
    say: ([found, open, lo, hi, close]) =>
      lo!.includes(',') || hi!.includes(',')
        ? null
        : `“${found}” has no “..” between its ends: write ${open}${plain(lo!)}..${plain(hi!)}${close}`,
  },
  {
    pattern: begins(String.raw`[\[(\]]?\s*${number}\s*\.\.+\s*${number}`),
    say: ([found, lo, hi]) =>
      /\d,\d/.test(found!) ? `“${found}” has a decimal comma: write ${ends(lo!, hi!)}` : null,
  },
  {
    pattern: begins(String.raw`([\[(\]])\s*${number}\s*\.\.\s*${number}\s*([\])\[])`),
    say: ([found, open, lo, hi, close]) => {
      const [low, high] = [Number(plain(lo!)), Number(plain(hi!))];
      if (low > high)
        return `“${found}” has its lower end last: write ${open}${plain(hi!)}..${plain(lo!)}${close}`;
      return low === high
        ? `“${found}” leaves out the only value it has: write ${plain(lo!)} for that value alone`
        : null;
    },
  },
  {
    pattern: begins(String.raw`([\[(\]])\s*${number}\s*\.\.\s*${number}\s*$`),
    say: ([found, open, lo, hi]) =>
      `“${found}” isn't closed: write ${open}${plain(lo!)}..${plain(hi!)}] with the last value, or ) without it`,
  },
  {
    pattern: begins(String.raw`${number}\s*(?:\.\.+|…|[-–—]|to\b)\s*${number}`),
    say: ([found, lo, hi]) =>
      `“${found}” is an interval without brackets: write ${ends(lo!, hi!)}, or ( and ) for ends left out`,
  },
  {
    pattern: begins(String.raw`[\[(\]]\s*\.\.\s*${number}`),
    say: ([found, hi]) => `“${found}” has only one end: write <= ${plain(hi!)}`,
  },
  {
    pattern: begins(String.raw`[\[(\]]\s*${number}\s*\.\.\s*[\])\[]`),
    say: ([found, lo]) => `“${found}” has only one end: write >= ${plain(lo!)}`,
  },
  {
    pattern: begins(String.raw`[\[(]\s*((?:[<>]=?)?)\s*${number}\s*[\])]`),
    say: ([found, operator, value]) =>
      `“${found}” needs no brackets: write ${`${operator} ${plain(value!)}`.trim()}`,
  },
  {
    pattern: begins(String.raw`not\s*\(`),
    say: () => 'not(…) stands inside a list or another not(…): it must enclose the whole condition',
  },
  {
    pattern: begins(String.raw`not\b\s*([^(\s].*)?`),
    say: ([, rest]) => `“not” has no brackets: write not(${rest?.trim() || '…'})`,
  },
  {
    pattern: whole(String.raw`(any(?:thing)?|all|\*|true|x|n\/?a|[–—])`),
    say: ([found]) => `“${found!.trim()}” is none of these: write - for any value`,
  },
  {
    pattern: begins(String.raw`-\s*(?:,|\)|$)`),
    say: () => '“-” means any value and stands alone: leave the other tests out',
  },
  {
    pattern: begins(String.raw`((?:[<>]=?|!?=)?)\s*(?:(\+)|([-−])\s*)(\.?\d[\d.]*)`),
    say: ([found, operator, plus, minus, digits]) => {
      const meant = `${operator} ${plus ? '' : '-'}${digits}`.trim();
      return found === meant || (minus === '-' && /-[\d.]/.test(found!))
        ? null
        : `“${found}” has a sign that can't be read: write ${meant}`;
    },
  },
  {
    pattern: begins(String.raw`(?:[<>]=?|!?=)?\s*-?\d+\.(?!\d|\.)`),
    say: ([found]) => `“${found}” ends in a point: write ${found!.slice(0, -1)}`,
  },
  {
    pattern: begins(String.raw`(?:[<>]=?|!?=)\s*$`),
    say: ([found]) => `“${found!.trim()}” has no number after it: write ${found!.trim()} 140, for instance`,
  },
  {
    pattern: begins(String.raw`([\[(\]]?)\s*−\s*\.?\d`),
    say: () => 'there is a long minus sign: write a plain -',
  },
  {
    pattern: begins(String.raw`[\[(\]]\s*\p{L}`),
    say: () => 'an end of the interval is no number: write plain numbers such as [100..140]',
  },
  {
    pattern: begins(String.raw`(\p{L}[\p{L}\d -]*?)\s*(?:[<>=]|!=)`),
    say: ([, name]) =>
      `“${name}” names what is tested: leave it out, a condition stands at its input already`,
  },
  { pattern: /^\s*,/, say: () => 'there is nothing between two commas: take one out' },
  {
    pattern: begins(String.raw`(?:[<>]=?|!?=)?\s*(-?[\d.]+e[-+]?\d{3,})`),
    say: ([, value]) => `${value} is out of all bounds: write a number within the quantity's range`,
  },
  {
    pattern: begins(String.raw`["'“”„‘’«»]\s*([^"'“”„‘’«»]*)`),
    say: ([, inside]) =>
      `there is a quotation mark that belongs to the test: write ${inside!.trim() ? `"${inside!.trim()}"` : 'it'} with straight quotes around the whole`,
  },
];

const ends = (lo: string, hi: string): string => {
  const [one, other] = [plain(lo), plain(hi)];
  return Number(one) <= Number(other) ? `[${one}..${other}]` : `[${other}..${one}]`;
};

/** Complaints about what stands after a test that is right in itself. */
const afterTest: readonly Complaint[] = [
  {
    pattern: /^\s*(;|\||\bor\b)/i,
    say: ([, found]) => `“${found}” stands between two tests: write a comma`,
  },
  {
    pattern: /^\s*(and|&&?)(?![\p{L}])/iu,
    say: ([, found]) =>
      `“${found}” can't join two tests: write an interval such as (100..140), or a comma where either may fit`,
  },
  {
    pattern: /^\s*\)/,
    say: () =>
      'there is a closing bracket without its opening one: take it out, or write not( before the tests',
  },
  {
    pattern: /^\s*([\p{L}°%'"′″µ][\p{L}\d/°%'"]*)/u,
    say: ([, found]) => `“${found}” follows the number: leave the unit out, it is always the quantity's own`,
  },
  {
    pattern: /^\s*[-−–+*/^]/,
    say: ([found]) => `“${found!.trim()}” follows the number: write the result, sums are not worked out here`,
  },
  { pattern: /^\s*[\d.<>=[(!]/, say: () => 'two tests stand side by side: write a comma between them' },
];

/**
 * The complaint about a text that could not be read.
 * @param at where reading stopped.
 * @param itemStart where the test begins in which it stopped.
 */
export function complaintAbout(text: string, at: number, itemStart: number): UnaryProblem {
  const item = text.slice(itemStart);
  if (text.trim() === '') return problem(1, 'it is empty: write a test such as < 140, or - for any value');
  const said = firstThatApplies(complaints, item);
  if (said !== null) return problem(itemStart + 1, said);
  const read = text.slice(itemStart, at);
  if (/[\d\])]\s*$/.test(read)) {
    const rest = text.slice(at);
    const after = firstThatApplies(afterTest, rest);
    if (after !== null) return problem(at + 1 + (/^\s*/.exec(rest)?.[0].length ?? 0), after);
    if (rest.trim() === '') return problem(at + 1, 'it ends too early: write the bracket that closes it');
  }
  const found = text.slice(at).trim().split(/\s/)[0] ?? '';
  return problem(
    at + 1,
    `“${found.slice(0, 20)}” can't be read: write, for instance, 140, < 140, >= 140 or [100..140]`,
  );
}

function firstThatApplies(list: readonly Complaint[], text: string): string | null {
  for (const { pattern, say } of list) {
    const found = pattern.exec(text);
    const said = found && say(found);
    if (said) return said;
  }
  return null;
}

const problem = (column: number, foundAndMend: string): UnaryProblem => ({
  column,
  message: `${rule}, but at character ${column} ${foundAndMend}.`,
});
