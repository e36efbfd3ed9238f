import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inTime, told, type Findings } from '../figure.ts';
import { processTimes } from '../processes.ts';
import { siteFile } from '../site-file.ts';

const ROUNDS = 3;

/** A take-off of a 40-post file from the command line, the whole process. */
export function commandLine(): Findings {
  const folder = mkdtempSync(join(tmpdir(), 'backplumb-'));
  const site = join(folder, 'site.csv');
  writeFileSync(site, siteFile(40));
  const times = processTimes(
    {
      nothing: [process.execPath, ['-e', '0']],
      takeoff: [process.execPath, ['src/start-cli.mjs', 'takeoff', site]],
      sources: [process.execPath, ['--import', 'tsx', 'src/cli.ts', 'takeoff', site]],
      npm: ['npm', ['run', '-s', 'takeoff', '--', site]],
      npmNothing: ['npm', ['exec', '-c', 'true']],
    },
    ROUNDS,
  );
  rmSync(folder, { recursive: true, force: true });
  const about = { part: 'command line', size: '40 posts' };
  return {
    curves: [],
    figures: [
      told(
        {
          ...about,
          what: 'takeoff, whole process',
          found: inTime(times.takeoff),
          against: `node -e 0 ${inTime(times.nothing)}`,
          how: `median of ${String(ROUNDS)} processes each, in turn; the one file that npm ci leaves`,
        },
        times.takeoff / times.nothing,
      ),
      told(
        {
          ...about,
          what: 'the same where a source is newer',
          found: inTime(times.sources),
          against: `node -e 0 ${inTime(times.nothing)}`,
          how: 'tsx reading TypeScript as it stands, as after an edit',
        },
        times.sources / times.nothing,
      ),
      told(
        {
          ...about,
          what: 'the same as the README writes it',
          found: inTime(times.npm),
          against: `npm with nothing to do ${inTime(times.npmNothing)}`,
          how: `npm run -s takeoff, median of ${String(ROUNDS)}`,
        },
        times.npm / times.npmNothing,
      ),
    ],
  };
}
