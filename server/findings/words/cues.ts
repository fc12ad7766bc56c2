/** Characters. */
const LONGEST_TOLD = 80;

/** A cue, or its first words, which are enough to know it by. */
export function cueOpening(cue: string): string {
  if (cue.length <= LONGEST_TOLD) return cue;
  const cut = cue.slice(0, LONGEST_TOLD);
  return `${cut.slice(0, Math.max(cut.lastIndexOf(' '), LONGEST_TOLD / 2))} …`;
}
