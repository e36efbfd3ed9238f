import { execFileSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';

const ALLOWED = [
  'README.md',
  'DEVELOPERS.md',
  'package.json',
  'package-lock.json',
  'tsconfig.json',
  'vite.config.ts',
  'vite.data.config.ts',
  'eslint.config.js',
  'src',
  'worksheets',
  'tests',
  'demo-data',
];

describe('the top of the repository', () => {
  const kept = execFileSync('git', ['ls-files'], { encoding: 'utf8' }).trim().split('\n');
  const top = new Set(kept.map((path) => path.split('/')[0] ?? ''));

  it('holds only what a reader needs to find there, and dot files', () => {
    const strays = [...top].filter((name) => !name.startsWith('.') && !ALLOWED.includes(name));
    expect(strays).toEqual([]);
  });

  it('holds the page that says how to start, and the code', () => {
    expect([...top]).toEqual(expect.arrayContaining(['README.md', 'package.json', 'src', 'tests']));
  });
});
