declare module 'virtual:reading-thread' {
  /** Where the page finds the thread that reads files. */
  export const address: string;
}
