/** What the author wrote, as it is repeated in messages: in quotes, and not too long. */
const mostCharacters = 40;

export function quoted(text: string): string {
  const oneLine = text.replace(/\s+/g, ' ');
  const short = oneLine.length > mostCharacters ? `${oneLine.slice(0, mostCharacters - 1)}…` : oneLine;
  return `“${short}”`;
}

/** "Altitude" -> "altitude", but "IAS" stays. */
export const uncapitalised = (text: string): string =>
  /^[A-Z](?![A-Z])/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text;

/** A value found in the file: "nothing", “140 ft”, 140, a list of 3, a mapping. */
export function sayFound(value: unknown): string {
  if (value === null || value === undefined) return 'nothing';
  if (typeof value === 'string') return value === '' ? 'an empty text' : quoted(value);
  if (typeof value === 'number') return sayFigure(value);
  if (typeof value === 'boolean') return value ? '“true”' : '“false”';
  if (Array.isArray(value)) return `a list of ${value.length}`;
  return 'a mapping';
}

/** A number as an author writes it in the file: no grouping, a plain minus sign. */
export function sayFigure(value: number): string {
  if (Number.isNaN(value)) return 'no number (.nan)';
  if (!Number.isFinite(value)) return value > 0 ? 'infinity (.inf)' : 'minus infinity (-.inf)';
  return String(value);
}

export const sayInterval = ([from, to]: readonly [number, number]): string =>
  `[${sayFigure(from)}, ${sayFigure(to)}]`;
