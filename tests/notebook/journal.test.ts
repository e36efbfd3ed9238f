import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  Notebook,
  actFromBytes,
  actToBytes,
  difference,
  fromJson,
  replay,
  toJson,
  type Act,
  type ActRecord,
  type NotebookDocument,
} from '../../src/notebook/index.ts';
import { crc32 } from '../../src/notebook/checksum.ts';
import { isProblem } from '../../src/units/index.ts';
import { acts, perform, row, someDocument, type Act as Deed } from './acts.ts';

/** A notebook whose every act is written down, as the store would hold it. */
function journaled(document: NotebookDocument): { notebook: Notebook; records: ActRecord[] } {
  const notebook = new Notebook(document);
  const records: ActRecord[] = [];
  notebook.subscribeToActs((step) => {
    const number = records.length + 1;
    const act: Act = { ...step, number, at: 0, by: 'here' };
    records.push({ number, bytes: actToBytes(act) });
  });
  return { notebook, records };
}

// A sheet whose rows are all gone counts as absent, and order among sheets means nothing.
function content({ sheets, ...rest }: NotebookDocument): unknown {
  return { ...rest, sheets: new Map([...sheets].filter(([, rows]) => rows.length > 0).sort()) };
}

function typed(edits: number): Deed[] {
  return Array.from({ length: edits }, (_, at) => ({
    do: 'act',
    steps: [{ edit: 'cell', sheet: 'posts', at, key: `column ${String(at)}`, text: `${String(at)} 3/8"` }], // prettier-ignore
  }));
}

describe('the checksum', () => {
  it('has the check value of CRC-32', () => {
    // Check value of CRC-32/ISO-HDLC for the bytes “123456789”: 0xcbf43926 (catalogue of parametrised CRC algorithms, from memory).
    expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926);
  });
});

describe('a journal', () => {
  it('replayed from the start or from any fold gives the notebook as it was, whatever was done', () => {
    fc.assert(
      fc.property(acts, fc.nat(), (deeds, cut) => {
        const { notebook, records } = journaled(someDocument());
        for (const deed of deeds) perform(deed, notebook);
        const again = new Notebook(someDocument());
        const at = records.length === 0 ? 0 : cut % (records.length + 1);
        replay(again, 0, records, at);
        const folded = fromJson(JSON.parse(JSON.stringify(toJson(again.document))));
        if (isProblem(folded)) throw new Error(folded.found);
        const later = new Notebook(folded);
        expect(replay(later, at, records)).toMatchObject({ last: records.length, setAside: [] });
        expect(content(later.document)).toEqual(content(notebook.document));
        expect(later.clashes.all()).toEqual([]);
      }),
      { numRuns: 300 },
    );
  });

  it('with any record torn at every byte of it loses that act alone, and says so', () => {
    // The model: what each cell of a run of posts says after the acts that are whole.
    const edit = fc.record({ row: fc.nat(3), column: fc.nat(2), text: fc.string({ maxLength: 6 }) }); // prettier-ignore
    fc.assert(
      fc.property(fc.array(edit, { minLength: 1, maxLength: 12 }), fc.nat(), (edits, which) => {
        const start = someDocument();
        start.sheets.set('posts', [0, 1, 2, 3].map((each) => row(`r${String(each)}`, {}))); // prettier-ignore
        const { notebook, records } = journaled(structuredClone(start));
        const model = new Map<string, string>();
        const torn = which % edits.length;
        for (const [at, { row: place, column: field, text }] of edits.entries()) {
          const [id, column] = [`r${String(place)}`, `reading ${String(field)}`];
          const before = notebook.rows('posts')[place]?.cells.get(column);
          notebook.do('type', [{ edit: 'cell', sheet: 'posts', row: id, column, before, after: text }]); // prettier-ignore
          if (at !== torn) model.set(`${id} ${column}`, text);
        }
        // An entry that is the same again is no act.
        fc.pre(records.length === edits.length);
        const whole = records[torn]!.bytes as Uint8Array;
        for (let end = 0; end < whole.length; end += 1) {
          const again = new Notebook(structuredClone(start));
          const stored = records.with(torn, { number: torn + 1, bytes: whole.slice(0, end) });
          const { last, setAside } = replay(again, 0, stored);
          expect([last, setAside]).toEqual([edits.length, [`Act ${String(torn + 1)} of the journal can’t be read: it was not written whole.`]]); // prettier-ignore
          const cells = again.rows('posts').flatMap(({ id, cells: each }) => [...each].map(([column, text]) => [`${id} ${column}`, text] as const)); // prettier-ignore
          expect(new Map(cells)).toEqual(model);
        }
      }),
      { numRuns: 20 },
    );
  });

  it('loses only the acts that are torn, wherever they stand and whatever the others are', () => {
    // The model: cells of a run of posts, each act writing one; a torn act leaves its cell alone.
    const edit = fc.record({ row: fc.nat(3), text: fc.string({ maxLength: 6 }), torn: fc.boolean(), cut: fc.nat() }); // prettier-ignore
    fc.assert(
      fc.property(fc.array(edit, { maxLength: 20 }), (edits) => {
        const start = someDocument();
        start.sheets.set(
          'posts',
          [0, 1, 2, 3].map((each) => row(`r${String(each)}`, {})),
        );
        const { notebook, records } = journaled(structuredClone(start));
        const model = new Map<string, string>();
        const unread = new Set<number>();
        for (const [at, { row: place, text, torn }] of edits.entries()) {
          const id = `r${String(place)}`;
          const column = `reading ${String(at)}`;
          notebook.do('type', [{ edit: 'cell', sheet: 'posts', row: id, column, before: undefined, after: text }]); // prettier-ignore
          if (torn) unread.add(at + 1);
          else model.set(`${id} ${column}`, text);
        }
        const stored = records.map(({ number, bytes }) => {
          if (!unread.has(number)) return { number, bytes };
          const whole = bytes as Uint8Array;
          return { number, bytes: whole.slice(0, edits[number - 1]!.cut % whole.length) };
        });
        const again = new Notebook(structuredClone(start));
        const { last, setAside } = replay(again, 0, stored);
        const cells = again.rows('posts').flatMap(({ id, cells: each }) => [...each].map(([column, text]) => [`${id} ${column}`, text] as const)); // prettier-ignore
        expect(new Map(cells)).toEqual(model);
        expect([last, setAside.length]).toEqual([edits.length, unread.size]);
      }),
      { numRuns: 300 },
    );
  });

  it('finds any one byte that was changed', () => {
    const { notebook, records } = journaled(someDocument());
    for (const deed of typed(1)) perform(deed, notebook);
    const whole = records[0]!.bytes as Uint8Array;
    for (let at = 0; at < whole.length; at += 1) {
      for (const flip of [1, 0x80]) {
        const changed = whole.slice();
        changed[at]! ^= flip;
        expect(actFromBytes(changed)).toBeUndefined();
      }
    }
  });

  it('tells a record that is missing, and goes on', () => {
    const { notebook, records } = journaled(someDocument());
    for (const deed of typed(3)) perform(deed, notebook);
    const again = new Notebook(someDocument());
    const { setAside, last } = replay(again, 0, [records[0]!, records[2]!]);
    expect([setAside, last]).toEqual([['Act 2 of the journal is missing.'], 3]);
  });

  it('writes as many bytes for a cell of a large notebook as for one of a small one', () => {
    const size = (rows: number): number => {
      const document = someDocument();
      document.sheets.set('posts', Array.from({ length: rows }, (_, at) => row(`r${String(at)}`, { post: String(at) }))); // prettier-ignore
      const { notebook, records } = journaled(document);
      notebook.do('type', [{ edit: 'cell', sheet: 'posts', row: 'r7', column: 'probe_depth', before: undefined, after: '1/8"' }]); // prettier-ignore
      return (records[0]!.bytes as Uint8Array).length;
    };
    expect(size(10_000)).toBe(size(10));
    expect(size(10)).toBeLessThan(300);
  });

  it.each([null, 5, 'text', [], new Uint8Array(0), new Uint8Array(9)])(
    'does not take %j for an act',
    (bytes) => {
      expect(actFromBytes(bytes)).toBeUndefined();
    },
  );
});

describe('the difference of two notebooks', () => {
  it('makes one into the other, and undo makes it the first again', () => {
    fc.assert(
      fc.property(acts, acts, (first, second) => {
        const [one, other] = [new Notebook(someDocument()), new Notebook(someDocument())];
        for (const deed of first) perform(deed, one);
        for (const deed of second) perform(deed, other);
        const start = structuredClone(content(one.document));
        const changes = difference(one.document, other.document);
        one.do('bring back', changes);
        const files = (document: NotebookDocument): string[] =>
          document.files.map(({ name }) => name).sort();
        expect({ ...(content(one.document) as object), files: [] }).toEqual({ ...(content(other.document) as object), files: [] }); // prettier-ignore
        expect(new Set(files(one.document))).toEqual(new Set(files(other.document)));
        if (changes.length > 0) one.undo();
        expect({ ...(content(one.document) as object), files: [] }).toEqual({ ...(start as object), files: [] }); // prettier-ignore
      }),
      { numRuns: 300 },
    );
  });
});

describe('two windows', () => {
  it('come to the same notebook and clashes, however their acts cross', () => {
    // Each window does acts of its own at once; the order of the journal then holds in both.
    fc.assert(
      fc.property(acts, acts, acts, (before, first, second) => {
        const start = new Notebook(someDocument());
        for (const deed of before) perform(deed, start);
        const [one, other] = [new Notebook(structuredClone(start.document)), new Notebook(structuredClone(start.document))]; // prettier-ignore
        one.rowMark = '-a';
        other.rowMark = '-b';
        const [ours, theirs] = [heard(one), heard(other)];
        for (const deed of first) perform(deed, one);
        for (const deed of second) perform(deed, other);

        // `one` wrote first: `other` takes its own acts back, takes those, and does its own again.
        for (const { made } of [...theirs].reverse()) other.unmake(made);
        other.clashes.reset([]);
        for (const { changes } of ours) other.take(changes);
        for (const { changes } of theirs) other.take(changes);
        for (const { changes } of theirs) one.take(changes);

        const third = new Notebook(structuredClone(start.document));
        for (const { changes } of [...ours, ...theirs]) third.take(changes);
        expect(content(one.document)).toEqual(content(other.document));
        expect(content(third.document)).toEqual(content(other.document));
        expect(clashes(one)).toEqual(clashes(other));
        expect(clashes(third)).toEqual(clashes(other));
      }),
      { numRuns: 300 },
    );
  });
});

function heard(notebook: Notebook): { changes: Act['changes']; made: Act['changes'] }[] {
  const all: { changes: Act['changes']; made: Act['changes'] }[] = [];
  notebook.subscribeToActs(({ changes }, made) => all.push({ changes, made }));
  return all;
}

function clashes(notebook: Notebook): unknown {
  return new Set(notebook.clashes.all().map((clash) => JSON.stringify(clash)));
}
