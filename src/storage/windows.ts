/** What other windows say. */
export interface WindowListeners {
  /** Acts of a notebook were written there, numbered from `first`. */
  acts(id: string, first: number, acts: readonly unknown[]): void;
  /** Notebooks came to the shelf, or were marked or erased. */
  shelf(): void;
  /** One of them has a newer build than this. */
  newer(): void;
}

/** The other windows of this browser that have the shelf open. */
export interface Windows {
  tellActs(id: string, first: number, acts: readonly Uint8Array[]): void;
  tellShelf(): void;
  leave(): void;
}

type Message =
  | { readonly say: 'here'; readonly format: number }
  | { readonly say: 'acts'; readonly id: string; readonly first: number; readonly acts: readonly unknown[] } // prettier-ignore
  | { readonly say: 'shelf' };

/** Joins the windows that share a shelf, and tells them which build this one has. */
export function joinWindows(name: string, format: number, listeners: WindowListeners): Windows {
  const channel = new BroadcastChannel(name);
  const tell = (message: Message): void => channel.postMessage(message);
  channel.onmessage = ({ data }: MessageEvent<Message>) => {
    switch (data.say) {
      case 'here':
        if (data.format > format) listeners.newer();
        // The other one is told only by an answer that this one is ahead.
        else if (data.format < format) tell({ say: 'here', format });
        return;
      case 'acts':
        listeners.acts(data.id, data.first, data.acts);
        return;
      case 'shelf':
        listeners.shelf();
    }
  };
  tell({ say: 'here', format });
  return {
    tellActs: (id, first, acts) => tell({ say: 'acts', id, first, acts }),
    tellShelf: () => tell({ say: 'shelf' }),
    leave: () => channel.close(),
  };
}
