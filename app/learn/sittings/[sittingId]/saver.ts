import type { ActResult } from '@/app/_ui/act-result';

/** How saving stands: `still` while nothing has changed, `lost` while no answer comes. */
export type Saving = { is: 'still' | 'saving' | 'saved' | 'lost' } | { is: 'refused'; error: string; asked: boolean };

/** What came of a try. */
export type Saved = 'saved' | 'refused' | 'lost';

interface Wires {
  /** What the server has already. */
  has: FormData;
  /** The form as it stands. */
  read: () => FormData;
  send: (form: FormData) => Promise<ActResult>;
  tell: (saving: Saving) => void;
  newKey: () => string;
  /** How long somebody may still be choosing or typing, ms. */
  pause: number;
  /** How long to wait before another try, ms: the last again and again. */
  again: readonly number[];
}

/** Saves a form as it changes, one send at a time, and again until the server has it. */
export class Saver {
  private saved: string;
  private seen: string;
  private timer: ReturnType<typeof setTimeout> | undefined;
  private running: Promise<Saved> | undefined;
  private tries = 0;
  /** One key for one answer: a retry of it finds it already stored. */
  private key = { of: '', is: '' };

  constructor(private readonly wires: Wires) {
    this.saved = this.seen = contents(wires.has);
  }

  get isUnsaved(): boolean {
    return contents(this.wires.read()) !== this.saved;
  }

  /** Saves in a while, where something has changed since the last look. */
  look(): void {
    const now = contents(this.wires.read());
    if (now === this.seen) return;
    this.seen = now;
    this.in(this.wires.pause);
  }

  /** Saves now. @param asked  Whether somebody asked for it, and wants to know what is wrong. */
  async save(asked: boolean): Promise<Saved> {
    clearTimeout(this.timer);
    while (this.running) await this.running;
    if (!this.isUnsaved && !asked) return 'saved';
    this.running = this.send(asked).finally(() => {
      this.running = undefined;
    });
    return this.running;
  }

  /** Tries no more. */
  stop(): void {
    clearTimeout(this.timer);
  }

  private in(pause: number): void {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => void this.save(false), pause);
  }

  private async send(asked: boolean): Promise<Saved> {
    const { read, send, tell, newKey, again } = this.wires;
    const form = read();
    const sent = contents(form);
    this.seen = sent;
    if (this.key.of !== sent) this.key = { of: sent, is: newKey() };
    form.set('key', this.key.is);
    tell({ is: 'saving' });
    try {
      const result = await send(form);
      this.tries = 0;
      if ('error' in result) {
        tell({ is: 'refused', error: result.error, asked });
        return 'refused';
      }
      this.saved = sent;
      tell({ is: 'saved' });
      return 'saved';
    } catch {
      tell({ is: 'lost' });
      this.in(again[Math.min(this.tries++, again.length - 1)] ?? this.wires.pause);
      return 'lost';
    }
  }
}

function contents(form: FormData): string {
  return JSON.stringify([...form]);
}
