import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const css = readFileSync(new URL('../../../src/app/theme/tokens.css', import.meta.url), 'utf8');

type Theme = 'day' | 'night' | 'print';

function coloursOf(theme: Theme): Map<string, string> {
  const colours = new Map<string, string>();
  const hex = '#[0-9a-f]{6}';
  for (const [, name, day, night] of css.matchAll(
    new RegExp(`--([\\w-]+): light-dark\\((${hex}), (${hex})\\)`, 'g'),
  ))
    colours.set(name!, theme === 'night' ? night! : day!);
  if (theme === 'print')
    for (const [, name, value] of css.matchAll(new RegExp(`--([\\w-]+): (${hex});`, 'g')))
      colours.set(name!, value!);
  return colours;
}

/** Relative luminance of an sRGB colour, WCAG 2.2 (section "relative luminance"). */
function luminance(colour: string): number {
  const [red, green, blue] = [1, 3, 5].map((start) => {
    const channel = parseInt(colour.slice(start, start + 2), 16) / 255;
    return channel <= 0.04045 ? channel / 12.92 : ((channel + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
}

/** Contrast ratio, WCAG 2.2 (section "contrast ratio"): 1 to 21. */
function contrast(one: string, other: string): number {
  const [lighter, darker] = [luminance(one), luminance(other)].sort((a, b) => b - a);
  return (lighter! + 0.05) / (darker! + 0.05);
}

const grounds = ['paper', 'card', 'well', 'wash'];

/** WCAG 2.2 success criterion 1.4.3: text under 24 px needs 4.5. */
const text: readonly (readonly [string, readonly string[]])[] = [
  ['ink', grounds],
  ['soft', grounds],
  ['accent', grounds],
  ['limit-text', grounds],
  ['desired', ['paper', 'card']],
  ['on-ink', ['ink']],
  ['on-accent', ['accent']],
  ['on-desired', ['desired']],
  ['ink', ['adequate']],
];

/** WCAG 2.2 success criterion 1.4.11: what must be seen to understand or to work a thing needs 3. */
const graphics: readonly (readonly [string, readonly string[]])[] = [
  ['edge', grounds],
  ['desired', grounds],
  ['adequate-edge', grounds],
  ['limit', grounds],
  ['accent', ['adequate']],
  ['desired', ['adequate']],
];

describe.each<Theme>(['day', 'night', 'print'])('the %s colours', (theme) => {
  const colours = coloursOf(theme);
  const ratio = (one: string, other: string): number => contrast(colours.get(one)!, colours.get(other)!);

  it.each(text.flatMap(([ink, on]) => on.map((ground) => [ink, ground])))(
    'show %s text on %s',
    (ink, ground) => {
      expect(ratio(ink!, ground!)).toBeGreaterThanOrEqual(4.5);
    },
  );

  it.each(graphics.flatMap(([mark, on]) => on.map((ground) => [mark, ground])))(
    'show %s marks on %s',
    (mark, ground) => {
      expect(ratio(mark!, ground!)).toBeGreaterThanOrEqual(3);
    },
  );
});

describe('the contrast formula', () => {
  it('gives 21 for black on white and 1 for a colour on itself', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 5);
    expect(contrast('#7a2e4d', '#7a2e4d')).toBe(1);
  });
});

describe('the type scale', () => {
  it('holds no size under 13 px', () => {
    const sizes = [...css.matchAll(/--text-[\w-]+: ([\d.]+)rem/g)].map(([, rem]) => Number(rem) * 16);
    expect(sizes.length).toBeGreaterThan(5);
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(13);
  });
});
