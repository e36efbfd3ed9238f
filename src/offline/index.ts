const HOUR_MS = 60 * 60 * 1000;

/** What keeps the page on this device. */
export interface Keeping {
  /** The address of the service worker. */
  readonly worker: string;
  /** The path of the script that the open page runs, by which a worker knows a page of its own version. */
  readonly script: string;
  /** A newer version lies on this device, whole; the next reload shows it. */
  readonly onNewer: () => void;
}

/** Makes the page open without a network from its second visit on, and looks for newer versions. It never reloads. */
export async function keepOffline({ worker, script, onNewer }: Keeping): Promise<void> {
  // A browser in private mode may have none, or refuse; the page then works as long as it is served.
  if (!('serviceWorker' in navigator)) return;
  const { serviceWorker } = navigator;
  serviceWorker.addEventListener('message', ({ data }) => {
    if (data === 'newer') onNewer();
  });
  const registration = await serviceWorker
    .register(worker, { updateViaCache: 'none' })
    .catch(() => undefined);
  if (!registration) return;
  const greet = (): void => registration.waiting?.postMessage(script);
  greet();
  registration.addEventListener('updatefound', () => {
    const coming = registration.installing;
    coming?.addEventListener('statechange', () => {
      if (coming.state === 'installed') greet();
    });
  });
  lookNowAndThen(registration);
}

// The browser looks whenever the page is opened; a page may stay open for days.
function lookNowAndThen(registration: ServiceWorkerRegistration): void {
  let last = Date.now();
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible' || Date.now() - last < HOUR_MS) return;
    last = Date.now();
    // Without a network there is nothing new.
    registration.update().catch(() => undefined);
  });
}
