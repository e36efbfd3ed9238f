import { afterEach, describe, expect, it } from 'vitest';
import '../../../src/ui/drawings/index.ts';
import { drawn, faults, texts } from './drawn.ts';
import { count, fakeBook } from './fake-book.ts';
import { JOB, treeRun } from './runs.ts';

afterEach(() => {
  document.body.replaceChildren();
});

describe('<bp-bags-picture>', () => {
  it('has nothing an accessibility check objects to', async () => {
    expect(await faults(await drawn('bp-bags-picture', { book: treeRun() }))).toEqual([]);
  });

  it('draws as many bags as each way of counting asks for', async () => {
    const picture = await drawn('bp-bags-picture', { book: treeRun() });
    expect(picture.shadowRoot?.querySelectorAll('.bag')).toHaveLength(7 + 8);
    expect(picture.shadowRoot?.querySelectorAll('.bag.more')).toHaveLength(1);
    expect(texts(picture, '.count')).toEqual(['7', '8']);
  });

  it('says which count is ordered', async () => {
    const picture = await drawn('bp-bags-picture', { book: treeRun({ bag_rounding: 'by hole' }) });
    expect(texts(picture, '.ordered')).toEqual(['by hole, as ordered']);
  });

  it('takes the mix that the job chose', async () => {
    const picture = await drawn('bp-bags-picture', { book: treeRun({ mix: '60 lb' }) });
    expect(texts(picture, '.count')).toEqual(['9', '10']);
  });

  // NIOSH 94-110: 51 lb is the best-case lift.
  it('sets the weight of a bag beside the best-case lift', async () => {
    const picture = await drawn('bp-bags-picture', { book: treeRun() });
    expect(texts(picture, 'figcaption').join()).toContain('80 lb. 51 lb is the best-case lift');
  });

  it('says what the count waits for', async () => {
    const picture = await drawn('bp-bags-picture', { book: treeRun({ mix: '50 lb' }) });
    expect(texts(picture, '.waits')).toEqual(['Bags of 50 lb: waits for hole width']);
  });

  it('names a mix that the sheet does not have', async () => {
    const picture = await drawn('bp-bags-picture', { book: treeRun({ mix: '90 lb' }) });
    expect(texts(picture, '.waits')).toEqual(['The bags sheet has no mix “90 lb”.']);
  });

  it('lets one bag stand for several where there are hundreds', async () => {
    const book = fakeBook({
      job: { job: JOB },
      bags: { b80: { mix: '80 lb', by_job: count(430), by_hole: count(520) } },
    });
    const picture = await drawn('bp-bags-picture', { book });
    expect(picture.shadowRoot!.querySelectorAll('.bag').length).toBeLessThanOrEqual(240);
    expect(texts(picture, 'figcaption').join()).toContain('each bag drawn stands for 5');
  });
});
