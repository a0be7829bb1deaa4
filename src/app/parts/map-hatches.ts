/** The hatches of a decision map: a tile each, of a ground and what is drawn on it. */
import type { MapLook } from './decision-map-looks.ts';

export interface HatchPattern {
  readonly look: MapLook;
  /** Of the tile, in pixels. */
  readonly width: number;
  readonly height: number;
  readonly ground: 'plain' | 'pale' | 'mid' | 'dark';
  /** A path; empty where the ground is all. */
  readonly drawn: string;
  readonly ink: 'line' | 'dot' | 'light';
}

const circle = (x: number, y: number, radius: number): string =>
  `M${x - radius} ${y}a${radius} ${radius} 0 1 0 ${2 * radius} 0a${radius} ${radius} 0 1 0 ${-2 * radius} 0Z`;

const tile = (
  look: MapLook,
  [width, height]: readonly [number, number],
  ground: HatchPattern['ground'],
  drawn: string,
  ink: HatchPattern['ink'] = 'line',
): HatchPattern => ({ look, width, height, ground, drawn, ink });

export const hatchPatterns: readonly HatchPattern[] = [
  tile('blank', [8, 8], 'plain', ''),
  tile('over', [7, 7], 'dark', 'M0 0L7 7M7 0L0 7', 'light'),
  tile('slant', [9, 9], 'pale', 'M-1 10L10 -1M-2 2L2 -2M7 11L11 7'),
  tile('back', [9, 9], 'mid', 'M-1 -1L10 10M-2 7L2 11M7 -2L11 2'),
  tile('dots', [8, 8], 'plain', circle(2, 2, 1.3) + circle(6, 6, 1.3), 'dot'),
  tile('level', [8, 6], 'mid', 'M0 3H8'),
  tile('upright', [6, 8], 'pale', 'M3 0V8'),
  tile('net', [10, 10], 'plain', 'M5 0V10M0 5H10'),
  tile('rings', [11, 11], 'pale', circle(5.5, 5.5, 2.5)),
  tile('dashes', [12, 8], 'plain', 'M1 2H6M7 6H12'),
];
