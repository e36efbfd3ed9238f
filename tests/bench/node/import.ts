import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inCount, inTime, slope, told, type Findings } from '../figure.ts';
import { ran } from '../processes.ts';
import { siteFile } from '../site-file.ts';

interface Once {
  readonly ms: number;
  readonly lines: number;
  readonly kilobytes: number;
}

/** Bringing in a crew's file against papaparse alone on the same bytes. */
export function importing(sizes: readonly number[]): Findings {
  const folder = mkdtempSync(join(tmpdir(), 'backplumb-'));
  const most = Math.max(...sizes);
  const all = sizes.map((posts) => {
    const bytes = siteFile(posts);
    const path = join(folder, `${String(posts)}.csv`);
    writeFileSync(path, bytes);
    const best = (act: string) =>
      [0, 1, 2].map(() => once(act, path)).reduce((a, b) => (b.ms < a.ms ? b : a));
    return {
      posts,
      bytes: bytes.length,
      intake: best('intake'),
      papaparse: best('papaparse'),
      // Memory is told of the largest alone: smaller files are lost in what the process takes anyway.
      nothing: posts === most ? once('nothing', path) : undefined,
    };
  });
  rmSync(folder, { recursive: true, force: true });
  const curve = {
    name: 'bringing in a file',
    points: all.map(({ posts, intake }): [number, number] => [posts, intake.ms]),
  };
  return {
    curves: [curve],
    figures: all.flatMap(({ posts, bytes, intake, papaparse, nothing }) => {
      const about = { part: 'import', size: `${inCount(posts)} lines` };
      return [
        told(
          {
            ...about,
            what: 'bringing in a file',
            found: `${inCount((intake.lines / intake.ms) * 1000)} lines/s`,
            against: `papaparse alone ${inCount((papaparse.lines / papaparse.ms) * 1000)} lines/s`,
            how: `bytes to rows in a notebook, units, asks and report; best of 3 fresh processes (${inTime(intake.ms)}); growth lines ^ ${slope(curve).toFixed(2)}`,
          },
          intake.ms / papaparse.ms,
        ),
        ...(nothing === undefined
          ? []
          : [
              told(
                {
                  ...about,
                  what: 'peak memory of it',
                  found: `${inCount((intake.kilobytes - nothing.kilobytes) / 1024)} MB`,
                  against: `file ${(bytes / 2 ** 20).toFixed(1)} MB; papaparse ${inCount((papaparse.kilobytes - nothing.kilobytes) / 1024)} MB`,
                  how: 'most resident memory of the process, over one that only reads the file',
                },
                (intake.kilobytes - nothing.kilobytes) / (bytes / 1024),
              ),
            ]),
      ];
    }),
  };
}

function once(act: string, path: string): Once {
  const script = 'tests/bench/node/import-once.ts';
  return JSON.parse(ran(process.execPath, ['--import', 'tsx', script, act, path]).out) as Once;
}
