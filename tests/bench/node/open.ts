import { fromText, Notebook } from '../../../src/notebook/index.ts';
import { notebookFile } from '../../../src/output/index.ts';
import { isProblem } from '../../../src/units/index.ts';
import { openBook } from '../../../src/worksheet/index.ts';
import { leastTimes } from '../clock.ts';
import { inCount, inTime, slope, told, type Findings } from '../figure.ts';
import { largeJob } from '../large-job.ts';

/** A notebook file read and worked out, without a page, against reading its JSON alone. */
export function openingWithoutPage(sizes: readonly number[]): Findings {
  const all = sizes.map((posts) => {
    const text = notebookFile(largeJob(posts).document);
    const times = leastTimes(
      {
        open: () => {
          open(text);
        },
        json: () => void JSON.parse(text),
      },
      { rounds: 3, atLeastMs: 1 },
    );
    return { posts, ...times };
  });
  const curve = {
    name: 'opening a notebook',
    points: all.map(({ posts, open: ms }): [number, number] => [posts, ms]),
  };
  return {
    curves: [curve],
    figures: all.map(({ posts, open: ms, json }) =>
      told(
        {
          part: 'open',
          what: 'file text to all sheets worked out',
          size: `${inCount(posts)} posts`,
          found: inTime(ms),
          against: `JSON.parse alone ${inTime(json)}`,
          how: `fromText and openBook, least of a few; growth posts ^ ${slope(curve).toFixed(2)}`,
        },
        ms / json,
      ),
    ),
  };
}

function open(text: string): void {
  const document = fromText(text);
  if (isProblem(document)) throw new Error(document.found);
  openBook(new Notebook(document));
}
