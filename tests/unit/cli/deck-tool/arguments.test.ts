import { describe, expect, it } from 'vitest';
import { deckTool } from './in-memory.ts';

describe('the deck tool', () => {
  it.each(['--help', '-h', 'help', 'check --help'])('gives help for “%s”', async (argv) => {
    const { exitCode, out, err } = await deckTool(argv);
    expect([exitCode, err]).toEqual([0, []]);
    expect(out.join('\n')).toMatch(/check FILE.*cards FILE.*decide FILE --phase.*scenarios FILE/s);
  });

  it.each([
    ['', 'Say what to do'],
    ['chek good.deck.yaml', 'No command “chek”'],
    ['constructor good.deck.yaml', 'No command “constructor”'],
    ['check', 'check needs a deck file'],
    ['check good.deck.yaml --jsn', '--jsn'],
    ['check good.deck.yaml --phase approach', 'check takes no --phase'],
    ['cards good.deck.yaml other.deck.yaml', 'one deck file, not 2'],
    ['cards good.deck.yaml --seed x', '--seed is “x”'],
    ['cards good.deck.yaml --json', 'cards takes no --json'],
    ['decide good.deck.yaml', 'decide needs --phase'],
    ['decide --phase approach', 'decide needs a deck file'],
    ['decide good.deck.yaml --phase', '--phase'],
    ['scenarios', 'scenarios needs a deck file'],
    ['scenarios good.deck.yaml --count 0', '--count is “0”'],
    ['scenarios good.deck.yaml --count many', '--count is “many”'],
    ['scenarios good.deck.yaml --seed x', '--seed is “x”'],
    ['scenarios good.deck.yaml --closeness far', 'give wide, near or edge'],
    ['scenarios good.deck.yaml --twins --closeness near', 'leave out --closeness'],
  ])('answers “%s” with what is wrong, the usage, and exit code 2', async (argv, words) => {
    const { exitCode, out, err } = await deckTool(argv);
    expect([exitCode, out]).toEqual([2, []]);
    expect(err.join('\n')).toContain(words);
    expect(err.join('\n')).toContain('npm run deck -- check FILE');
  });
});
