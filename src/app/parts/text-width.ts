/**
 * How wide a text will be, without asking the browser: pictures lay out their labels before they are
 * drawn, and the same in a test. The advances are those of B612, in thousandths of the type size; its
 * regular and bold cut share them, and all digits are equally wide.
 */
const groups: readonly (readonly [number, string])[] = [
  [200, "'|"],
  [250, ',;·'],
  [300, '.:Iij°'],
  [350, ' !l‘’\u00a0'],
  [400, '"frt'],
  [450, '()-[Js'],
  [500, '=]cz“”'],
  [525, 'a'],
  [550, '$*/?FLSekvxy\\_`−–'],
  [600, '+CEKPTYZbdghnopqu}±'],
  [650, '0123456789<>ABDGRVX'],
  [700, '&HU'],
  [750, 'Nw^~…½'],
  [800, 'OQ×'],
  [850, '#'],
  [900, '%Mm'],
  [950, 'W'],
  [1000, '@'],
  [1050, '—'],
];

const advances = new Map(
  groups.flatMap(([advance, letters]) => [...letters].map((c) => [c, advance] as const)),
);

/** A letter the table doesn't hold is taken as wide as a capital. */
const unknownAdvance = 700;

/** Width in px of one line of text set in B612 at a size in px. */
export function textWidthPx(text: string, sizePx: number): number {
  let thousandths = 0;
  for (const letter of text) thousandths += advances.get(letter) ?? unknownAdvance;
  return (thousandths * sizePx) / 1000;
}

/**
 * The largest of some type sizes at which a text fits a width.
 * @param sizesPx from large to small; the last is taken when none fits.
 */
export function fittingSizePx(
  availablePx: number,
  sizesPx: readonly number[],
  widthAt: (sizePx: number) => number,
): number {
  return sizesPx.find((sizePx) => widthAt(sizePx) <= availablePx) ?? sizesPx[sizesPx.length - 1] ?? 16;
}
