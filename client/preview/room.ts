/**
 * In letters across. In less room captions that stand beside each other, and names in the picture, are too small to be
 * read.
 */
const LEAST_FOR_COLUMNS = 24;

/** Tells at once, and again whenever it changes, whether a place is so narrow that a drawing has to be set for it. */
export function watchRoom(place: HTMLElement, changed: (isNarrow: boolean) => void): void {
  let told: boolean | undefined;
  const look = (): void => {
    const letters = place.clientWidth / parseFloat(getComputedStyle(place).fontSize);
    const isNarrow = letters < LEAST_FOR_COLUMNS;
    // A page that is being hidden has no width at all.
    if (letters === 0 || isNarrow === told) return;
    told = isNarrow;
    changed(isNarrow);
  };
  look();
  new ResizeObserver(look).observe(place);
}
