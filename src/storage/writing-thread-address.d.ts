declare module 'virtual:writing-thread' {
  /** Where the page finds the thread that writes acts down. */
  export const address: string;
}
