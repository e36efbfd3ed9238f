import { execFileSync } from 'node:child_process';
import { copyFile, mkdir, mkdtemp, rm, symlink, utimes, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

// A clone in small: sources and the one file that say which of them ran.
let home = '';
const bundle = (): string => join(home, 'node_modules/.cache/backplumb/cli.mjs');
const source = (): string => join(home, 'src/units/tape.ts');
const EARLIER = new Date('2026-05-04T10:00:00Z');
const LATER = new Date('2026-05-04T11:00:00Z');

beforeAll(async () => {
  home = await mkdtemp(join(tmpdir(), 'backplumb-'));
  for (const folder of ['src/units', 'worksheets', 'node_modules/.cache/backplumb'])
    await mkdir(join(home, folder), { recursive: true });
  await symlink(resolve('node_modules/tsx'), join(home, 'node_modules/tsx'));
  await copyFile('src/start-cli.mjs', join(home, 'src/start-cli.mjs'));
  await writeFile(join(home, 'package.json'), '{ "type": "module" }');
  await writeFile(join(home, 'package-lock.json'), '{}');
  await writeFile(join(home, 'vite.config.ts'), '');
  await writeFile(source(), "export const said: string = 'the sources';");
  const cli = "import { said } from './units/tape.ts'; console.log(said, process.argv[2]);";
  await writeFile(join(home, 'src/cli.ts'), cli);
});
afterAll(async () => {
  await rm(home, { recursive: true });
});

async function said(made: 'before the sources' | 'after them' | 'never'): Promise<string> {
  await rm(bundle(), { force: true });
  if (made !== 'never') await writeFile(bundle(), "console.log('one file', process.argv[2]);");
  const names = ['src/start-cli.mjs', 'src/cli.ts', 'src/units', 'src', 'worksheets'];
  for (const name of [...names, 'package-lock.json', 'vite.config.ts'])
    await utimes(join(home, name), EARLIER, EARLIER);
  await utimes(source(), LATER, LATER);
  const shift = made === 'after them' ? 60_000 : -60_000;
  const time = new Date(LATER.getTime() + shift);
  if (made !== 'never') await utimes(bundle(), time, time);
  const command = [join(home, 'src/start-cli.mjs'), 'takeoff'];
  return execFileSync(process.execPath, command, { cwd: home, encoding: 'utf8' }).trim();
}

describe('the start of the command line', () => {
  it('runs the one file where that is newer than every source', async () => {
    expect(await said('after them')).toBe('one file takeoff');
  });

  it('runs the sources where one of them is newer, so that nobody runs what is stale', async () => {
    expect(await said('before the sources')).toBe('the sources takeoff');
  });

  it('runs the sources where there is no such file', async () => {
    expect(await said('never')).toBe('the sources takeoff');
  });
});
