import { judge } from '../../motion/judge.ts';
import { inOrder, placed, readProcedure } from '../../rules/read.ts';
import type { DeckReading } from './deck-reading.ts';

self.onmessage = ({ data }: MessageEvent<string>) => {
  const { loaded, procedure, findings } = readProcedure(data);
  const analysed = procedure === null ? [] : placed(loaded, judge(procedure));
  const all = inOrder([...findings, ...analysed]);
  // A deck whose tables contradict themselves must not be learnt from.
  const sound = !all.some(({ severity }) => severity === 'error');
  const reading: DeckReading = { deck: sound ? (procedure?.deck ?? null) : null, findings: all };
  self.postMessage(reading);
};
