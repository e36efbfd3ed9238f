import { largeJob } from './large-job.ts';

const COLUMNS = [
  'post',
  'station',
  'lean_gap',
  'level_length',
  'lean_toward',
  'probe_depth',
  'rock_test',
  'footing_depth',
] as const;
const HEADERS = 'Post,Station,Lean gap,Level length,Leans toward,Probe,Rock test,Footing depth';

/** A crew's CSV with this many posts. */
export function siteFile(posts: number): Uint8Array {
  const lines = largeJob(posts)
    .rows('posts')
    .map(({ cells }) => COLUMNS.map((column) => cells.get(column) ?? '').join(','));
  return new TextEncoder().encode(`${[HEADERS, ...lines].join('\n')}\n`);
}
