import { beforeEach, describe, expect, it } from 'vitest';
import type { FromPage, ToPage } from '../messages.js';
import { PageLine } from './page-line.js';

/** A panel whose page says and hears what the test has it say and hear. */
class Panel {
  visible = true;
  readonly heard: ToPage[] = [];
  #said: ((data: unknown) => void) | undefined;
  #moved: (() => void) | undefined;

  readonly webview = {
    postMessage: (message: ToPage) => {
      this.heard.push(message);
      return Promise.resolve(true);
    },
    onDidReceiveMessage: (listener: (data: unknown) => void) => {
      this.#said = listener;
      return { dispose: () => (this.#said = undefined) };
    },
  };

  onDidChangeViewState = (listener: () => void) => {
    this.#moved = listener;
    return { dispose: () => (this.#moved = undefined) };
  };

  says(data: unknown): void {
    this.#said?.(data);
  }

  isShown(visible: boolean): void {
    this.visible = visible;
    this.#moved?.();
  }

  get isHeard(): boolean {
    return this.#said !== undefined || this.#moved !== undefined;
  }
}

describe('what is said with the page of a preview', () => {
  let panel: Panel;
  let received: FromPage['type'][];
  let warned: string[];
  let line: PageLine;
  beforeEach(() => {
    panel = new Panel();
    received = [];
    warned = [];
    line = new PageLine({
      panel: panel as never,
      log: { warn: (told: string) => warned.push(told) },
      received: ({ type }) => received.push(type),
    });
  });

  it('is lost on a page that does not listen yet, or is hidden', () => {
    line.post({ type: 'gone' });
    panel.says({ type: 'ready' });
    line.post({ type: 'copy' });
    panel.isShown(false);
    line.post({ type: 'gone' });
    expect(panel.heard).toEqual([{ type: 'copy' }]);
    expect(received).toEqual(['ready']);
  });

  it('is checked, and what is refused is told once for each reason', () => {
    panel.says({ type: 'restart' });
    panel.says({ type: 'ready' });
    panel.says({ type: 'restart' });
    for (const forged of [{ type: 'erase' }, { type: 'erase all' }, { type: 'view', view: 'none' }])
      panel.says(forged);
    expect(received).toEqual(['ready', 'restart']);
    expect(warned).toEqual(
      ['out of order', 'unknown', 'malformed'].map(
        (reason) => `A message of a preview was refused: ${reason}.`,
      ),
    );
  });

  it('can be waited for', async () => {
    const waited = Promise.all([line.ready(), line.ready()]);
    panel.says({ type: 'ready' });
    await waited;
    await line.ready();
  });

  it('is waited for no longer once the preview is closed', async () => {
    const waited = line.ready();
    line.dispose();
    await expect(waited).rejects.toThrow('There is no preview of the plan.');
    await expect(line.ready()).rejects.toThrow('There is no preview of the plan.');
    expect(panel.isHeard).toBe(false);
  });
});
