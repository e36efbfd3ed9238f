import { Notebook } from '../../src/notebook/index.ts';
import { startDocument } from '../../src/worksheet/index.ts';

/** A run of so many posts 8 ft apart that lean a little, every third soft at grade, where frost goes 24 in deep. */
export function runOfPosts(posts: number): Notebook {
  const document = startDocument('a run');
  document.inputs.set('frost_depth', '24 in');
  document.sheets.set(
    'posts',
    Array.from({ length: posts }, (_, at) => ({
      id: `r${String(at)}`,
      cells: new Map([
        ['post', String(at + 1)],
        ['station', `${String(at * 8)} ft`],
        ['lean_gap', '3/8 in'],
        ['level_length', '48 in'],
        ['probe_depth', at % 3 === 0 ? '1 in' : '0 in'],
        ['rock_test', 'firm'],
      ]),
    })),
  );
  return new Notebook(document);
}
