/**
 * A path of a plan that another one names, as a path from that other one: `parts/tools.svg` of `../oven.mahl` is
 * `../parts/tools.svg`. Steps that lead nowhere are taken out, so that one file has one path. What is no path from a
 * plan stays as it is, for the reader of files to refuse.
 *
 * @param plan the plan that names it, by its own path; nothing for the plan that all paths are from
 */
export function pathFrom(plan: string | undefined, path: string): string {
  const written = path.replaceAll('\\', '/');
  if (isNoPath(written)) return path;
  const folder = plan === undefined ? [] : plan.replaceAll('\\', '/').split('/').slice(0, -1);
  const steps: string[] = [];
  for (const step of [...folder, ...written.split('/')]) {
    if (step === '' || step === '.') continue;
    if (step === '..' && steps.length > 0 && steps.at(-1) !== '..') steps.pop();
    else steps.push(step);
  }
  return steps.length === 0 ? path : steps.join('/');
}

/** Empty, from the top of a disk, or an address. */
function isNoPath(written: string): boolean {
  return written.trim() === '' || written.startsWith('/') || /^[a-z][a-z0-9+.-]*:/iu.test(written);
}
