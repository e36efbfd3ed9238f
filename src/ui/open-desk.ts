import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { BroughtIn, Desk, KeptJob, OpenJob, SavedMark } from './desk.ts';
import type { Preview } from './import-desk.ts';
import { ImportFlow } from './import-flow.ts';
import type { PastJob } from './keeping/keeping-desk.ts';
import type { StartChoice } from './start.ts';

// Fetched beside the first screen, and here before a job is opened.
const jobScreen = import('./job-screen.ts');

/**
 * Which job is open, and what came of asking the desk. The open job stands in the page's address, so
 * that reloading and going back lead where a person expects.
 */
export class OpenDesk implements ReactiveController {
  job: OpenJob | undefined;
  /** The job as it was at an earlier time, while that is looked at. */
  past: PastJob | undefined;
  /** Jobs kept on this device, for the start. */
  jobs: readonly KeptJob[] = [];
  /** What went wrong last, in words. */
  trouble = '';
  broughtIn: BroughtIn | undefined;
  /** The file that is looked at before it comes in. */
  readonly importing = new ImportFlow(() => {
    this.host.requestUpdate();
  });
  saved: SavedMark = { state: 'saved', words: '' };

  private readonly host: ReactiveControllerHost;
  /** Called once another job is on the screen, or none. */
  private readonly jobChanged: (job: OpenJob | undefined) => void;
  private desk: Desk | undefined;
  private leave: readonly (() => void)[] = [];

  constructor(host: ReactiveControllerHost, jobChanged: (job: OpenJob | undefined) => void) {
    this.host = host;
    this.jobChanged = jobChanged;
    host.addController(this);
  }

  hostConnected(): void {
    window.addEventListener('hashchange', this.followAddress);
  }

  hostDisconnected(): void {
    window.removeEventListener('hashchange', this.followAddress);
    for (const stop of this.leave) stop();
    this.leave = [];
  }

  /** Sits down at a desk, and opens the job that the address names. */
  sitAt(desk: Desk): void {
    for (const stop of this.leave) stop();
    this.desk = desk;
    this.leave = [
      desk.onSaved((mark) => {
        this.saved = mark;
        this.host.requestUpdate();
      }),
      desk.onShelf(() => {
        if (!this.job) void this.attempt(this.listJobs());
      }),
    ];
    this.followAddress();
  }

  /** What is on the screen: the job, or what it was. */
  get shown(): OpenJob | undefined {
    return this.past ?? this.job;
  }

  /** Shows the job as it was, or as it is. */
  lookBack(past: PastJob | undefined): void {
    this.past = past;
    if (this.shown) this.jobChanged(this.shown);
    this.host.requestUpdate();
  }

  begin(choice: StartChoice): Promise<void> {
    return this.attempt(this.follow(choice));
  }

  /** Brings a file into the open job, onto one of its sheets where that is meant. */
  bringIn(file: File, onto?: string): Promise<void> {
    const { desk, job } = this;
    return desk
      ? this.attempt(this.takeIfIn(this.importing.start(desk, file, job, onto)))
      : Promise.resolve();
  }

  /** Shows a file before it comes in, once it was read again. */
  lookAgain(coming: Promise<Preview>): Promise<void> {
    return this.attempt(this.importing.follow(coming));
  }

  /** Shows what comes of a file, once it has come. */
  take(coming: Promise<BroughtIn>): Promise<void> {
    return this.attempt(this.takeIfIn(this.importing.during(coming)));
  }

  private async takeIfIn(coming: Promise<BroughtIn | undefined>): Promise<void> {
    const came = await coming;
    if (!came) return;
    await this.show(came.job);
    this.broughtIn = came;
  }

  putAway(what: 'trouble' | 'broughtIn'): void {
    if (what === 'trouble') this.trouble = '';
    else this.broughtIn = undefined;
    this.host.requestUpdate();
  }

  private async follow(choice: StartChoice): Promise<void> {
    const { desk } = this;
    if (!desk) return;
    switch (choice.choose) {
      case 'demo':
        await this.show(await desk.openDemo());
        return;
      case 'empty':
        await this.show(await desk.startEmpty());
        return;
      case 'readings':
        await this.bringIn(choice.file);
        return;
      case 'notebook':
        await this.openFile(choice.file);
        return;
      case 'open':
        await this.openKept(choice.id);
    }
  }

  private async openFile(file: File): Promise<void> {
    const job = await this.importing.opening(file.name, (progress) =>
      this.desk?.openFile(file, progress),
    );
    if (job) await this.show(job);
    else await this.listJobs();
  }

  private async openKept(id: string): Promise<void> {
    const job = await this.importing.opening('the job', (progress) =>
      this.desk?.open(id, progress),
    );
    if (job) await this.show(job);
  }

  private async show(job: OpenJob): Promise<void> {
    await jobScreen;
    this.job = job;
    this.past = undefined;
    this.trouble = '';
    this.jobChanged(job);
    if (location.hash !== `#${job.id}`) location.hash = job.id;
  }

  private readonly followAddress = (): void => {
    const id = location.hash.slice(1);
    if (id !== '' && id === this.job?.id) return;
    this.broughtIn = undefined;
    if (id === '') {
      this.job = undefined;
      this.past = undefined;
      this.jobChanged(undefined);
    }
    void this.attempt(id === '' ? this.listJobs() : this.openKept(id));
  };

  private async listJobs(): Promise<void> {
    if (this.desk) this.jobs = await this.desk.list();
  }

  /** Does what may go wrong, and says so in words where it does. */
  private async attempt(deed: Promise<void>): Promise<void> {
    try {
      await deed;
    } catch (error) {
      this.trouble = error instanceof Error ? error.message : String(error);
      if (!this.job) await this.listJobs();
    }
    this.host.requestUpdate();
  }
}
