import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

const TEXT = /\.(ts|js|json|md|html|css|svg|csv|txt)$|^\.(ci|npmrc|gitignore)/;
const kept = execFileSync('git', ['ls-files', '-z'], { encoding: 'utf8' })
  .split('\0')
  .filter((path) => TEXT.test(path));

// Put together here so that this file does not hold the very words it looks for.
const slash = '/';
const MACHINE_PATHS = new RegExp(
  ['work', 'root', 'home', 'Users', 'tmp']
    .map((name) => `["'\`\\s(=]${slash}${name}${slash}`)
    .join('|'),
);
const LEAVING_OUT = ['only', 'skip', 'todo', 'fails', 'skipIf', 'runIf'];
const LEFT_OUT = new RegExp(
  `\\b(?:it|test|describe)(?:\\.\\w+)*\\.(?:${LEAVING_OUT.join('|')})\\b|\\bx(?:it|describe|test)\\(`,
);

describe('the files of the repository', () => {
  it('were read', () => {
    expect(kept).toEqual(expect.arrayContaining(['package.json', 'src/units/problem.ts']));
  });

  it('name no folder of one machine', () => {
    expect(linesWith(MACHINE_PATHS, (path) => path !== 'package-lock.json')).toEqual([]);
  });

  it('hold no test that is left out or alone', () => {
    expect(linesWith(LEFT_OUT, (path) => path.startsWith('tests/'))).toEqual([]);
  });

  it.each(['it', 'test', 'describe', 'it.concurrent', 'describe.each'])(
    'would be found out with %s left out or alone',
    (caller) => {
      for (const word of LEAVING_OUT) expect(`  ${caller}.${word}('…`).toMatch(LEFT_OUT);
    },
  );
});

describe('the lock file', () => {
  const lock = readFileSync('package-lock.json', 'utf8');
  const { packages } = JSON.parse(lock) as { packages: Record<string, { integrity?: string }> };

  it('leaves the choice of a registry to whoever installs', () => {
    expect(lock).not.toMatch(/"resolved"|https?:\/\/[^"]*registry/);
  });

  it('pins what every package holds', () => {
    const unpinned = Object.entries(packages)
      .filter(([path, { integrity }]) => path !== '' && integrity === undefined)
      .map(([path]) => path);
    expect(Object.keys(packages).length).toBeGreaterThan(50);
    expect(unpinned).toEqual([]);
  });
});

function linesWith(pattern: RegExp, among: (path: string) => boolean): string[] {
  return kept
    .filter(among)
    .flatMap((path) =>
      readFileSync(path, 'utf8')
        .split('\n')
        .map((line, index) => ({ where: `${path}:${String(index + 1)}`, line })),
    )
    .filter(({ line }) => pattern.test(line))
    .map(({ where, line }) => `${where} ${line.trim()}`);
}
