import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { typingKey, walkingKey, type KeyPress } from '../../src/ui/grid-keys.ts';

const TESTS = 'tests/browser/ui';
const names = new Set(
  readdirSync(TESTS)
    .filter((file) => file.endsWith('.test.ts'))
    .flatMap((file) => [...readFileSync(join(TESTS, file), 'utf8').matchAll(/\bit\('([^']+)'/g)])
    .map(([, name]) => name ?? ''),
);
const [walking = [], typing = []] = tables(readFileSync('DEVELOPERS.md', 'utf8'));

describe('the table of keys', () => {
  it('was found', () => {
    expect(walking.length).toBeGreaterThan(25);
    expect(typing.length).toBeGreaterThan(5);
  });

  it('names a test of a real browser in every row', () => {
    expect([...walking, ...typing].filter(({ test }) => !names.has(test))).toEqual([]);
  });

  it('names no test twice', () => {
    const all = [...walking, ...typing].map(({ test }) => test);
    expect(all.filter((test, at) => all.indexOf(test) !== at)).toEqual([]);
  });

  it.each(every(walking))('has %s do something while the grid is walked', (keys) => {
    // The browser itself leaves the grid with Tab, and tells of the clipboard.
    const isBrowsers = /Tab$|^Ctrl\+[CXV]$/.test(keys);
    expect(walkingKey(pressOf(keys)) === undefined).toBe(isBrowsers);
  });

  it.each(every(typing))('has %s do something while a cell is typed into', (keys) => {
    const isFields = ['Home', 'End'].includes(keys);
    expect(typingKey(pressOf(keys)) === undefined).toBe(isFields);
  });

  it('leaves out no key that the grid takes', () => {
    const source = readFileSync('src/ui/grid-keys.ts', 'utf8');
    const taken = [...source.matchAll(/^ {2}'?([\w+]+)'?: '(?!\w+'\s*\|)/gm)].map(
      ([, keys]) => keys ?? '',
    );
    expect(taken.length).toBeGreaterThan(20);
    const told = every(walking);
    expect(taken.map(faced).filter((keys) => !told.includes(keys))).toEqual([]);
  });
});

interface KeyRow {
  readonly keys: readonly string[];
  readonly test: string;
}

function tables(text: string): KeyRow[][] {
  const part = text.slice(text.indexOf('## Keys of the grid'), text.indexOf('## Adding a trade'));
  return part.split(/\n\n/).flatMap((block) => {
    if (!block.startsWith('| Keys')) return [];
    return [
      block
        .trim()
        .split('\n')
        .slice(2)
        .map((line): KeyRow => {
          const [, keys = '', , test = ''] = line.split('|').map((cell) => cell.trim());
          return { keys: [...keys.matchAll(/`([^`]+)`/g)].map(([, each]) => each ?? ''), test };
        }),
    ];
  });
}

/** Every key of a table that is pressed by itself. */
function every(rows: readonly KeyRow[]): string[] {
  return rows
    .filter(({ test }) => !/input method|touched with Shift|chooses more cells/.test(test))
    .flatMap(({ keys }) => keys);
}

const ARROWS: Readonly<Record<string, string>> = {
  '→': 'ArrowRight',
  '←': 'ArrowLeft',
  '↓': 'ArrowDown',
  '↑': 'ArrowUp',
};

function pressOf(keys: string): KeyPress {
  const parts = keys.split('+');
  const last = parts.pop() ?? '';
  const key =
    ARROWS[last] ?? (last === 'Space' ? ' ' : last.length === 1 ? last.toLowerCase() : last);
  return {
    key,
    ctrlKey: parts.includes('Ctrl'),
    altKey: parts.includes('Alt'),
    shiftKey: parts.includes('Shift'),
    metaKey: false,
    isComposing: false,
    // eslint-disable-next-line @typescript-eslint/no-deprecated
    keyCode: 0,
  };
}

/** A key of the source as the table writes it. */
function faced(keys: string): string {
  const arrow = Object.entries(ARROWS).find(([, name]) => keys.endsWith(name));
  if (arrow) return keys.replace(arrow[1], arrow[0]);
  return keys.replace(/\+([a-z])$/, (_, letter: string) => `+${letter.toUpperCase()}`);
}
