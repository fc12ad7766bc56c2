/** Where the space bar presses what it is on. */
const presses = 'button, input, select, textarea, a, [role="button"], [role="option"]';

/**
 * Lets a drawing be drawn along by the middle button, or by the first one while the space bar is held. It comes before
 * all that a pointer does in the drawing otherwise.
 */
export function panByDragging(box: HTMLElement): void {
  let spaceHeld = false;
  let pointer: number | undefined;
  const show = () => {
    box.classList.toggle('can-pan', spaceHeld);
    box.classList.toggle('panning', pointer !== undefined);
  };

  window.addEventListener('keydown', (event) => {
    const { key, target, defaultPrevented } = event;
    if (key !== ' ' || defaultPrevented || (target instanceof Element && target.closest(presses) !== null))
      return;
    // It would scroll the page.
    event.preventDefault();
    spaceHeld = true;
    show();
  });
  window.addEventListener('keyup', ({ key }) => {
    if (key !== ' ') return;
    spaceHeld = false;
    show();
  });
  window.addEventListener('blur', () => {
    spaceHeld = false;
    show();
  });

  const take = (event: Event) => {
    event.preventDefault();
    event.stopPropagation();
  };
  /** A drag that ends on something has not clicked it. */
  let dragged = false;
  box.addEventListener(
    'pointerdown',
    (event) => {
      dragged = false;
      if (event.button !== 1 && !(event.button === 0 && spaceHeld)) return;
      take(event);
      pointer = event.pointerId;
      dragged = true;
      box.setPointerCapture(pointer);
      show();
    },
    { capture: true },
  );
  // The middle button would begin a scrolling of the browser's own.
  box.addEventListener('mousedown', (event) => event.button === 1 && event.preventDefault(), {
    capture: true,
  });
  box.addEventListener(
    'pointermove',
    (event) => {
      if (event.pointerId !== pointer) return;
      take(event);
      box.scrollBy(-event.movementX, -event.movementY);
    },
    { capture: true },
  );
  for (const end of ['pointerup', 'pointercancel'] as const) {
    box.addEventListener(
      end,
      (event) => {
        if (event.pointerId !== pointer) return;
        take(event);
        pointer = undefined;
        show();
      },
      { capture: true },
    );
  }
  box.addEventListener('click', (event) => dragged && take(event), { capture: true });
}
