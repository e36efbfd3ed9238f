import type { Reference, Scope } from '../formula/index.ts';
import type { Reach, Rows } from '../graph/index.ts';
import type { BandModel, SheetModel } from './model.ts';

/** The names that formulas on a band may use. */
export function scopeOf(
  sheet: SheetModel,
  band: BandModel,
  models: ReadonlyMap<string, SheetModel>,
): Scope {
  const own = sheet.definition.id;
  const job = models.get('job');

  function ofJob(name: string): Reference | undefined {
    const column = job?.bands[0]?.columns.get(name);
    return column && reference('job', name, own === 'job' ? 'row' : 'whole', [column]);
  }

  return {
    sheet: own,
    bare(name) {
      const column = band.columns.get(name);
      return column ? reference(own, name, 'row', [column]) : ofJob(name);
    },
    member(sheetName, name, insideAggregate) {
      if (sheetName === 'job') return ofJob(name);
      const other = models.get(sheetName);
      const columns = other?.bands.flatMap(({ columns: all }) => all.get(name) ?? []) ?? [];
      if (!other || columns.length === 0) return undefined;
      return reference(sheetName, name, reachOf(other, sheet, band, insideAggregate), columns);
    },
    names: () => [
      ...band.columns.keys(),
      ...(job?.bands[0]?.columns.keys() ?? []),
      ...[...models].flatMap(([id, { definition }]) =>
        definition.columns.map((column) => `${id}.${column.id}`),
      ),
    ],
    sheets: () => [...models.keys()],
  };
}

function reachOf(
  other: SheetModel,
  sheet: SheetModel,
  band: BandModel,
  insideAggregate: boolean,
): Reach {
  if (other === sheet) return insideAggregate ? 'whole' : 'row';
  for (let rows: Rows | undefined = band.rows.parent; rows; rows = rows.parent) {
    if (rows === other.bands[0]?.rows) return 'follow';
  }
  return 'whole';
}

function reference(
  sheet: string,
  name: string,
  reach: Reach,
  columns: readonly {
    readonly definition: { readonly label: string };
    readonly kind: Reference['kind'];
    readonly result: Reference['columns'][number];
  }[],
): Reference | undefined {
  const [first] = columns;
  return (
    first && {
      sheet,
      name,
      label: first.definition.label,
      kind: first.kind,
      reach,
      columns: columns.map(({ result }) => result),
    }
  );
}
