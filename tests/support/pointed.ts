/** What a pointer is over, as far as listeners of pointers need it, and a hand that points there. */
export function pointedPlace() {
  const captured = new Set<number>();
  const classes = new Set<string>();
  const place = Object.assign(new EventTarget(), {
    classList: {
      add: (name: string) => classes.add(name),
      remove: (name: string) => classes.delete(name),
      contains: (name: string) => classes.has(name),
      toggle: (name: string, isOn: boolean) => (isOn ? classes.add(name) : classes.delete(name)),
    },
    setPointerCapture: (pointer: number) => captured.add(pointer),
    hasPointerCapture: (pointer: number) => captured.has(pointer),
    releasePointerCapture: (pointer: number) => captured.delete(pointer),
  });
  const point = (
    type: 'pointerdown' | 'pointermove' | 'pointerup' | 'pointercancel',
    [clientX, clientY]: readonly [number, number],
    { buttons = type === 'pointerup' ? 0 : 1, pointerId = 1, shiftKey = false } = {},
  ) =>
    place.dispatchEvent(
      Object.assign(new Event(type, { cancelable: true }), {
        ...{ clientX, clientY, button: 0, buttons, pointerId, isPrimary: true, shiftKey },
      }),
    );
  return { place: place as unknown as HTMLElement, point };
}

/** Does nothing, whatever it is asked for, and tells nothing. */
export function silent<T extends object>(): T {
  return new Proxy({}, { get: () => () => undefined }) as T;
}
