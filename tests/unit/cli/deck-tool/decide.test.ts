import { describe, expect, it } from 'vitest';
import { deckTool } from './in-memory.ts';

const command = 'decide good.deck.yaml --phase arrival';
/** Half way down, on speed, sinking gently: nothing to correct. */
const fair = { altitude: 200, closure: 20, sink: 100 };
const line = (change: Record<string, unknown> = {}): string => JSON.stringify({ ...fair, ...change });
const fairAnswer = {
  actions: { pitch: 'hold-nose', power: 'hold-power', call: 'continue' },
  overriding: null,
  rules: ['near-speed/near-fair', 'near-height/leave'],
};

describe('decide', () => {
  it('answers a situation with the action of each control and the rules they come from', async () => {
    const { exitCode, out, err } = await deckTool(command, [line()]);
    expect([exitCode, err]).toEqual([0, []]);
    expect(out.map((text) => JSON.parse(text) as unknown)).toEqual([fairAnswer]);
    expect(Object.keys(JSON.parse(out[0]!) as object)).toEqual(['actions', 'overriding', 'rules']);
  });

  it('answers with the overriding action alone where there is one', async () => {
    const { out } = await deckTool(command, [line({ altitude: 45 })]);
    expect(JSON.parse(out[0]!)).toEqual({
      actions: { call: 'go-around' },
      overriding: 'go-around',
      rules: ['abandon/too-low'],
    });
  });

  it('answers one line for each line, in order, and passes over empty ones', async () => {
    const { exitCode, out } = await deckTool(command, [line(), '', line({ closure: 40 }), '  ', line()]);
    expect(exitCode).toBe(0);
    expect(out.map((text) => (JSON.parse(text) as typeof fairAnswer).actions.pitch)).toEqual([
      'hold-nose',
      'nose-up',
      'hold-nose',
    ]);
  });

  it.each([
    ['no JSON', '{"altitude": 200,', 'not JSON'],
    ['a list', '[200, 20, 100]', 'object of quantities'],
    ['nothing', 'null', 'object of quantities'],
    ['a bare number', '200', 'object of quantities'],
    ['a text for a number', line({ closure: '20' }), '“closure” is "20", not a number'],
    ['a truth for a number', line({ closure: true }), 'not a number'],
    ['a list for a number', line({ closure: [20] }), 'not a number'],
    ['an object for a number', line({ closure: { valueOf: 20 } }), 'not a number'],
    ['nothing for a number', line({ closure: null }), 'not a number'],
    ['a number past all numbers', '{"altitude":200,"closure":1e999,"sink":100}', 'not a number'],
    ['a missing quantity', '{"altitude":200,"closure":20}', '“sink” is missing'],
    ['an unknown quantity', line({ bank: 3 }), '“bank”'],
    ['a quantity of another phase', line({ 'to-go': 3000 }), '“to-go”'],
    ['the prototype', '{"__proto__":{"sink":1},"altitude":200,"closure":20}', '“__proto__”'],
    ['the constructor', line({ constructor: 1 }), '“constructor”'],
    ['a value that can not occur', line({ altitude: 4000 }), '“altitude” is 4000'],
    ['an endless line', `{"altitude":${'1'.repeat(200_000)}}`, 'too many'],
  ])(
    'says with its number, in its place, that a line is %s, and still answers the others',
    async (_, bad, words) => {
      const { exitCode, out, err } = await deckTool(command, [line(), bad, line()]);
      expect(exitCode).toBe(1);
      const [first, second, third] = out.map((text) => JSON.parse(text) as unknown);
      expect([out.length, first, third]).toEqual([3, fairAnswer, fairAnswer]);
      expect(second).toEqual({ error: err[0]!.slice('line 2: '.length), line: 2 });
      expect(err).toHaveLength(1);
      expect(err[0]).toMatch(/^line 2: /);
      expect(err[0]).toContain(words);
    },
  );

  it('lets a byte order mark before the first line pass', async () => {
    expect((await deckTool(command, [`\uFEFF${line()}`])).exitCode).toBe(0);
  });

  it('counts empty lines when it numbers a bad one', async () => {
    const { out, err } = await deckTool(command, ['', '', 'x']);
    expect(err[0]).toMatch(/^line 3: /);
    expect(out.map((text) => JSON.parse(text) as unknown)).toMatchObject([{ line: 3 }]);
  });

  it.each(['arival', 'constructor', '__proto__'])('names the phases when there is no “%s”', async (phase) => {
    const { exitCode, out, err } = await deckTool(`decide good.deck.yaml --phase ${phase}`, [line()]);
    expect([exitCode, out]).toEqual([2, []]);
    expect(err.join()).toContain('approach, arrival');
  });

  it('answers nothing for a deck with errors, and says them', async () => {
    const ran = await deckTool('decide wrong-unit.deck.yaml --phase arrival', [line()]);
    expect([ran.exitCode, ran.out]).toEqual([1, []]);
    expect(ran.err.join()).toContain('unknown-unit');
  });
});
