/** Gives something out as a file, where the browser puts files. */
export function download(content: BlobPart, name: string): void {
  const link = document.createElement('a');
  // A type of its own would be opened by some browsers instead of saved.
  link.href = URL.createObjectURL(new Blob([content], { type: 'application/octet-stream' }));
  link.download = name;
  link.click();
  // The download reads the address a moment later.
  setTimeout(() => {
    URL.revokeObjectURL(link.href);
  }, 60_000);
}
