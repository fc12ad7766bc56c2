import type { Frame, Page } from 'playwright-core';

/**
 * The page of a webview, by the title of its document: it lies in a frame within the frame that the editor makes for
 * it.
 */
export async function webviewTitled(page: Page, title: RegExp): Promise<Frame> {
  const end = Date.now() + 60_000;
  while (Date.now() < end) {
    for (const frame of page.frames().filter((each) => each.parentFrame()?.parentFrame()))
      if (title.test(await frame.title().catch(() => ''))) return frame;
    await page.waitForTimeout(100);
  }
  throw new Error(`There is no page ${String(title)}.`);
}

/** What came of trying something in a page. */
export interface Outcome {
  /** The directives of the policy that were told to be violated, in the order of the alphabet. */
  readonly refusedBy: readonly string[];
  /** It was done all the same, as far as a page can tell of itself. */
  readonly isDone: boolean;
}

/**
 * Tries in the page itself, by its own means, what its policy is to forbid, one thing after the other, and hears what
 * is refused. Nothing is asked of a debugger, which a policy does not bind.
 *
 * @param names of what is tried, where that is not all: what a policy lets a page do would be done
 */
export function attemptIn(
  frame: Frame,
  names?: readonly string[],
): Promise<Readonly<Record<string, Outcome>>> {
  return frame.evaluate(async (wanted) => {
    // So long a refusal may take that is told in a turn of its own; one thing that is tried is refused without being
    // told.
    const patienceMilliseconds = 3_000;
    const elsewhere = 'https://example.invalid';
    const marks = window as unknown as { done?: boolean };
    const added: Element[] = [];
    const add = (name: string, attributes: Readonly<Record<string, string>>, text = ''): HTMLElement => {
      const element = document.createElement(name);
      for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
      element.textContent = text;
      document.body.append(element);
      added.push(element);
      return element;
    };
    const finished = (does: Promise<unknown>) =>
      does.then(
        () => true,
        () => false,
      );
    const loaded = (element: HTMLElement) =>
      new Promise<boolean>((resolve) => {
        element.addEventListener('load', () => resolve(true));
        element.addEventListener('error', () => resolve(false));
        setTimeout(() => resolve(false), 400);
      });
    const ran = () => marks.done === true;
    const unknown = async (_done: unknown) => {
      await new Promise((resolve) => setTimeout(resolve, 200));
      return false;
    };
    const says = (run: () => unknown): boolean => {
      try {
        run();
        return ran();
      } catch {
        return false;
      }
    };
    const script = 'window.done = true';
    const tries: Readonly<Record<string, () => boolean | Promise<boolean>>> = {
      'a script in the page': () => (add('script', {}, script), ran()),
      'a script from elsewhere': () => loaded(add('script', { src: `${elsewhere}/a.js` })),
      'a script by a wrong nonce': () => (add('script', { nonce: '0'.repeat(32) }, script), ran()),
      'what a click is to run': () => (add('p', { onclick: script }).click(), ran()),
      'an address that runs': async () => {
        add('a', { href: `javascript:${script}` }).click();
        await new Promise((resolve) => setTimeout(resolve, 50));
        return ran();
      },
      // eslint-disable-next-line no-eval -- it is to be refused
      eval: () => says(() => (0, eval)(script)),
      // eslint-disable-next-line no-new-func, @typescript-eslint/no-implied-eval, @typescript-eslint/no-unsafe-call -- it is to be refused
      'a function of text': () => says(() => new Function(script)()),
      'a timer of text': async () => {
        // eslint-disable-next-line @typescript-eslint/no-implied-eval -- it is to be refused
        says(() => setTimeout(script, 0));
        await new Promise((resolve) => setTimeout(resolve, 50));
        return ran();
      },
      WebAssembly: () => finished(WebAssembly.compile(Uint8Array.of(0, 0x61, 0x73, 0x6d, 1, 0, 0, 0))),
      'a worker': () => {
        const address = URL.createObjectURL(new Blob(['postMessage(1)'], { type: 'text/javascript' }));
        return new Promise<boolean>((resolve) => {
          try {
            const worker = new Worker(address);
            worker.onmessage = () => resolve(true);
            worker.onerror = () => resolve(false);
          } catch {
            resolve(false);
          }
          setTimeout(() => resolve(false), 400);
        });
      },
      'a picture from elsewhere': () => loaded(add('img', { src: `${elsewhere}/a.png` })),
      'a picture written out': () =>
        loaded(add('img', { src: 'data:image/gif;base64,R0lGODlhAQABAAAAACwAAAAAAQABAAACADs=' })),
      'a sound from elsewhere': () => loaded(add('audio', { src: `${elsewhere}/a.ogg` })),
      'a style in the page': () => {
        add('style', {}, 'body { outline: 3px solid rgb(1, 2, 3) }');
        return getComputedStyle(document.body).outlineColor === 'rgb(1, 2, 3)';
      },
      'a style in an attribute': () =>
        getComputedStyle(add('p', { style: 'color: rgb(1, 2, 3)' })).color === 'rgb(1, 2, 3)',
      'a style from elsewhere': () => loaded(add('link', { rel: 'stylesheet', href: `${elsewhere}/a.css` })),
      'a font from elsewhere': () => finished(new FontFace('other', `url(${elsewhere}/a.woff)`).load()),
      'a fetch': () => finished(fetch(`${elsewhere}/a`)),
      'a fetch of a part of the editor': () => finished(fetch(document.baseURI)),
      'a socket': () =>
        new Promise<boolean>((resolve) => {
          try {
            new WebSocket('wss://example.invalid/a').onopen = () => resolve(true);
          } catch {
            resolve(false);
          }
          setTimeout(() => resolve(false), 200);
        }),
      // Of these three a page is not told whether they came to anything.
      'a beacon': () => unknown(navigator.sendBeacon(`${elsewhere}/a`, 'plan')),
      'a page in a frame': () => unknown(add('iframe', { src: `${elsewhere}/` })),
      'a form that is sent': () =>
        unknown((add('form', { action: `${elsewhere}/`, method: 'post' }) as HTMLFormElement).submit()),
      'an object': () => loaded(add('object', { data: `${elsewhere}/a.svg`, type: 'image/svg+xml' })),
      'another base': () => {
        const before = document.baseURI;
        const base = document.createElement('base');
        base.href = `${elsewhere}/`;
        document.head.prepend(base);
        added.push(base);
        return document.baseURI !== before;
      },
    };
    const outcomes: Record<string, { refusedBy: string[]; isDone: boolean }> = {};
    for (const [name, attempt] of Object.entries(tries)) {
      if (wanted && !wanted.includes(name)) continue;
      const refused = new Set<string>();
      const hear = ({ effectiveDirective }: SecurityPolicyViolationEvent) =>
        void refused.add(effectiveDirective);
      document.addEventListener('securitypolicyviolation', hear);
      marks.done = false;
      // In a turn of the page's own: a debugger's may make code of text.
      const isDone = await new Promise<boolean>((resolve, reject) => {
        setTimeout(() => void Promise.resolve(attempt()).then(resolve, reject), 0);
      });
      const end = Date.now() + patienceMilliseconds;
      do await new Promise((resolve) => setTimeout(resolve, 60));
      while (!isDone && refused.size === 0 && Date.now() < end);
      document.removeEventListener('securitypolicyviolation', hear);
      outcomes[name] = { refusedBy: [...refused].sort(), isDone };
    }
    for (const element of added) element.remove();
    return outcomes;
  }, names);
}
