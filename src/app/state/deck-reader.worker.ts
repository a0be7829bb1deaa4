import { analyse } from '../../rules/analyse.ts';
import { readProcedure } from '../../rules/read.ts';
import type { DeckReading } from './deck-reading.ts';

self.onmessage = ({ data }: MessageEvent<string>) => {
  const { procedure, findings } = readProcedure(data);
  const reading: DeckReading = {
    deck: procedure?.deck ?? null,
    findings: procedure ? [...findings, ...analyse(procedure)] : findings,
  };
  self.postMessage(reading);
};
