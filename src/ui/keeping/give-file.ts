import { fileName } from '../../output/index.ts';
import { download } from '../download.ts';
import type { WholeDeeds } from './keeping-desk.ts';

interface SavePicker {
  showSaveFilePicker?(options: {
    readonly suggestedName: string;
    readonly types: readonly {
      readonly description: string;
      readonly accept: Readonly<Record<string, readonly string[]>>;
    }[];
  }): Promise<FileSystemFileHandle>;
}

/** The jobs to back up, all where none are named; the file has the name of the one job, else the day. */
export interface BackupWish {
  readonly ids?: readonly string[] | undefined;
  readonly jobName: string | undefined;
  readonly isPacked: boolean;
}

/**
 * Writes a backup where the person says, or, where the browser asks no such thing, gives it out as a
 * download; says in words what came of it.
 */
export async function giveBackup(
  { ids, jobName, isPacked }: BackupWish,
  whole: Promise<WholeDeeds>,
): Promise<string> {
  const file = fileName(jobName ?? dayName(new Date()), isPacked ? 'json.gz' : 'json');
  const { showSaveFilePicker } = window as SavePicker;
  let handle: FileSystemFileHandle | undefined;
  try {
    // Asked first: a browser lets a page ask only while the press of the button is fresh.
    handle = await showSaveFilePicker?.call(window, {
      suggestedName: file,
      types: [isPacked ? PACKED : PLAIN],
    });
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return 'Not saved.';
  }
  const deeds = await whole;
  const backup = await deeds.backup(ids);
  const plain = new Blob([backup.text], { type: 'application/json' });
  const content = isPacked ? await packed(plain) : plain;
  if (handle) {
    const writable = await handle.createWritable();
    await writable.write(content);
    // Only now is the file in the place of what was there.
    await writable.close();
  } else download(content, file);
  await deeds.noteBackup(backup);
  const without = backup.setAside.length === 0 ? '' : ` Without: ${backup.setAside.join(' ')}`;
  return `${handle?.name ?? file} saved${handle ? '' : ' where this browser puts files'}.${without}`;
}

function dayName(at: Date): string {
  const part = (value: number) => String(value).padStart(2, '0');
  return `backplumb-${String(at.getFullYear())}-${part(at.getMonth() + 1)}-${part(at.getDate())}`;
}

const PLAIN = { description: 'Notebook', accept: { 'application/json': ['.json'] } } as const;
const PACKED = { description: 'Packed notebook', accept: { 'application/gzip': ['.gz'] } } as const;

function packed(content: Blob): Promise<Blob> {
  return new Response(content.stream().pipeThrough(new CompressionStream('gzip'))).blob();
}
