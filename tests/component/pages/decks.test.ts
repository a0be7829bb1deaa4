import { render, screen, waitFor, within } from '@testing-library/svelte';
import userEvent from '@testing-library/user-event';
import { describe, expect, it, vi } from 'vitest';
import Decks from '../../../src/app/pages/decks/Decks.svelte';
import { Library } from '../../../src/app/state/library.svelte.ts';
import { loadDeck } from '../../../src/deck/load.ts';
import { readFormulas } from '../../../src/formulas/read-formulas.ts';
import { writeBackup } from '../../../src/record/backup.ts';
import { memoryStore } from '../../../src/record/store/memory-store.ts';
import { fixtureDeckText } from '../../unit/deck/fixture.ts';
import marramText from '../../../decks/marram-recovery.deck.yaml?raw';

/** Reads as the worker does, in place. */
const read = (text: string) => {
  const { deck, findings } = loadDeck(text, readFormulas);
  return Promise.resolve({ deck, findings });
};

const fileOf = (text: string) =>
  ({ name: 'mine.deck.yaml', size: text.length, text: () => Promise.resolve(text) }) as File;

const marram = loadDeck(marramText, readFormulas).deck!;
const [gate] = marram.gates;
const [band] = Object.values(gate!.values);
/** The shipped deck in a later version with another title. */
const edited = marramText
  .replace(/^version:.*$/m, 'version: 9.0.0')
  .replace(/^title:.*$/m, 'title: My own pattern');

async function page() {
  const store = memoryStore();
  const library = new Library(store, read);
  await library.list();
  const onchanged = vi.fn();
  render(Decks, { library, current: 'marram-recovery', onchoose: vi.fn(), onfile: vi.fn(), onchanged });
  return { store, library, onchanged, user: userEvent.setup() };
}

const texts = async (store: ReturnType<typeof memoryStore>) =>
  (await store.readDecks()).decks.map(({ text }) => text);

describe('a file with the id of a deck that is here', () => {
  it('replaces nothing before the pilot says so, and says what stays and what changes', async () => {
    const { store, library, onchanged, user } = await page();
    expect(await library.open(fileOf(edited))).toBeNull();
    const dialog = await screen.findByRole('dialog', { name: /Replace “.*”, which comes with Gatecall\?/ });
    expect(dialog.textContent).toContain(marram.version);
    expect(dialog.textContent).toContain('9.0.0');
    expect(dialog.textContent).toMatch(/Stays: every answer on record/);
    expect(await texts(store)).toEqual([]);
    await user.click(within(dialog).getByRole('button', { name: 'Replace it' }));
    await waitFor(() => expect(onchanged).toHaveBeenCalledWith('marram-recovery'));
    expect(await texts(store)).toEqual([edited]);
  });

  it('names the answers that are other ones in the new deck', async () => {
    const { library } = await page();
    const { target } = band!;
    const moved = marramText.replace(`target: ${target}`, `target: ${target + 1}`);
    expect(moved).not.toBe(marramText);
    await library.open(fileOf(moved));
    expect(library.replacement?.changes.changed.length).toBeGreaterThan(0);
    expect(library.replacement?.changes).toMatchObject({ added: 0, gone: 0 });
    const dialog = await screen.findByRole('dialog');
    expect(dialog.textContent).toContain('with another answer');
  });

  it('is left alone on “no”, which gives the focus back', async () => {
    const { store, library, onchanged, user } = await page();
    await library.open(fileOf(edited));
    await user.click(await screen.findByRole('button', { name: 'Leave it as it is' }));
    await waitFor(() => expect(screen.queryByRole('dialog')).toBeNull());
    expect(await texts(store)).toEqual([]);
    expect(onchanged).not.toHaveBeenCalled();
    await waitFor(() => expect(document.activeElement?.textContent).toContain('Open a deck file'));
  });

  it('is taken without a question when it says the same', async () => {
    const { library } = await page();
    await library.open(fileOf(fixtureDeckText));
    expect(library.replacement).toBeNull();
    await library.open(fileOf(fixtureDeckText));
    expect(library.replacement).toBeNull();
    await library.open(fileOf(marramText));
    expect(library.replacement).toBeNull();
    expect(library.report?.deck?.id).toBe('marram-recovery');
  });

  it('can be gone back from to the one that comes with Gatecall', async () => {
    const { store, library, onchanged, user } = await page();
    await library.open(fileOf(edited));
    await library.replace();
    await library.list();
    await user.click(await screen.findByRole('button', { name: /Go back/ }));
    const dialog = await screen.findByRole('dialog', { name: `Go back to version ${marram.version}?` });
    await user.click(within(dialog).getByRole('button', { name: 'Go back' }));
    await screen.findByText(/is again the one that comes with Gatecall/);
    expect(onchanged).toHaveBeenLastCalledWith('marram-recovery');
    expect(await texts(store)).toEqual([]);
    expect((await library.deck('marram-recovery'))?.version).toBe(marram.version);
  });
});

describe('a file that is no deck', () => {
  it('is named when it is a saved training record, without a list of faults', async () => {
    const { library } = await page();
    await library.open(fileOf(writeBackup({ events: [] }, Date.UTC(2026, 8, 1))));
    await screen.findByText(/This is a training record, not a deck\. Bring it in on the Record page\./);
    expect(library.report?.findings).toEqual([]);
  });

  it('says severity, place and path with room between them', async () => {
    const { library } = await page();
    await library.open(fileOf('format: gatecall-deck/1\nid: 7\n'));
    const list = await screen.findByRole('region', { name: /was not taken/ });
    expect(list.textContent).toMatch(/Error · line \d+, column \d+ · /);
  });

  it('is no longer spoken of after a deck was removed', async () => {
    const { library, user } = await page();
    await library.open(fileOf(fixtureDeckText));
    await library.list();
    await library.open(fileOf('nonsense'));
    await screen.findByText(/was not taken/);
    await user.click(await screen.findByRole('button', { name: /^Remove/ }));
    await user.click(await screen.findByRole('button', { name: 'Remove the deck' }));
    await screen.findByText(/was removed/);
    expect(screen.queryByText(/was not taken/)).toBeNull();
  });
});

describe('removing an opened deck', () => {
  it('asks first and says that the answers stay; the focus goes to what is said of it', async () => {
    const { store, library, user } = await page();
    await library.open(fileOf(fixtureDeckText));
    await library.list();
    await user.click(await screen.findByRole('button', { name: /^Remove/ }));
    const dialog = await screen.findByRole('dialog');
    expect(dialog.textContent).toContain('every answer on record');
    expect(await texts(store)).toEqual([fixtureDeckText]);
    await user.click(within(dialog).getByRole('button', { name: 'Remove the deck' }));
    await screen.findByText(/was removed\. Your answers to it stay on record\./);
    expect(await texts(store)).toEqual([]);
    await waitFor(() =>
      expect(document.activeElement).toBe(screen.getByRole('group', { name: 'What came of removing it' })),
    );
  });
});
