import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { Notebook, fromJson, toJson, type Step } from '../../src/notebook/index.ts';
import { isProblem } from '../../src/units/index.ts';
import { acts, perform, someDocument } from './acts.ts';

describe('a notebook opened again from its acts', () => {
  it('takes back and does again what the one before would have', () => {
    fc.assert(
      fc.property(acts, (done) => {
        const { notebook, journal } = written();
        for (const act of done) perform(act, notebook);
        const again = opened(notebook, journal);
        expect([again.undoLabel, again.redoLabel]).toEqual([
          notebook.undoLabel,
          notebook.redoLabel,
        ]);
        while (notebook.undoLabel !== undefined) {
          notebook.undo();
          again.undo();
          expect(toJson(again.document)).toEqual(toJson(notebook.document));
        }
        while (notebook.redoLabel !== undefined) {
          notebook.redo();
          again.redo();
        }
        expect(toJson(again.document)).toEqual(toJson(notebook.document));
      }),
      { numRuns: 200 },
    );
  });

  it('goes through reload after reload', () => {
    const { notebook, journal } = written();
    notebook.do('one', [{ edit: 'input', name: 'a', before: undefined, after: '1' }]);
    notebook.do('two', [{ edit: 'input', name: 'a', before: '1', after: '2' }]);
    notebook.undo();
    const second = opened(notebook, journal);
    expect([second.undoLabel, second.redoLabel]).toEqual(['one', 'two']);
    second.redo();
    const third = opened(second, journal);
    expect([third.undoLabel, third.redoLabel]).toEqual(['two', undefined]);
    third.undo();
    third.do('three', [{ edit: 'input', name: 'a', before: '1', after: '3' }]);
    const fourth = opened(third, journal);
    expect([fourth.undoLabel, fourth.redoLabel]).toEqual(['three', undefined]);
    fourth.undo();
    expect(fourth.document.inputs.get('a')).toBe('1');
  });
});

function written(): { notebook: Notebook; journal: Step[] } {
  const notebook = new Notebook(someDocument());
  const journal: Step[] = [];
  notebook.subscribeToActs((act) => journal.push(act));
  return { notebook, journal };
}

function opened(notebook: Notebook, journal: Step[]): Notebook {
  const document = fromJson(JSON.parse(JSON.stringify(toJson(notebook.document))) as unknown);
  if (isProblem(document)) throw new Error(document.found);
  const again = new Notebook(document);
  again.recall(journal);
  again.subscribeToActs((act) => journal.push(act));
  return again;
}
