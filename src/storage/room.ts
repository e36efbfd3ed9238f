/** How much room this browser gives, and whether it promised to keep what is there. */
export interface Room {
  /** [byte]; undefined where the browser does not say. */
  readonly used: number | undefined;
  readonly free: number | undefined;
  /** Whether the browser clears this page's data only when a person asks for it. */
  readonly isPromised: boolean;
}

/** Asks the browser how much room there is. */
export async function readRoom(): Promise<Room> {
  const { storage } = navigator as Partial<Navigator>;
  try {
    const { usage, quota } = (await storage?.estimate()) ?? {};
    const free = usage === undefined || quota === undefined ? undefined : quota - usage;
    return { used: usage, free, isPromised: (await storage?.persisted()) ?? false };
  } catch {
    return { used: undefined, free: undefined, isPromised: false };
  }
}

/** Asks the browser not to clear this page's data by itself; some ask the person. */
export async function askToStay(): Promise<boolean> {
  const { storage } = navigator as Partial<Navigator>;
  try {
    if (await storage?.persisted()) return true;
    return (await storage?.persist()) ?? false;
  } catch {
    return false;
  }
}
