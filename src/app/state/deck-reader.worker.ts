import { judge } from '../../motion/judge.ts';
import { inOrder, placed, readWholeProcedure } from '../../rules/read.ts';
import type { DeckReading } from './deck-reading.ts';

self.onmessage = ({ data }: MessageEvent<string>) => void read(data);

async function read(text: string): Promise<void> {
  const { loaded, procedure, findings } = await readWholeProcedure(text);
  const analysed = procedure === null ? [] : placed(loaded, judge(procedure));
  const all = inOrder([...findings, ...analysed]);
  // A deck whose tables contradict themselves must not be learnt from.
  const sound = !all.some(({ severity }) => severity === 'error');
  const reading: DeckReading = { deck: sound ? (procedure?.deck ?? null) : null, findings: all };
  self.postMessage(reading);
}
