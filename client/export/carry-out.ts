/** As much of a `vscode.CancellationToken` as can be asked at any time. */
interface Cancellable {
  readonly isCancellationRequested: boolean;
}

/**
 * Makes something and writes it. Once it is cancelled nothing more is begun: what is made by then is not written, and
 * that it could not be made is no news.
 *
 * @returns what was written; `undefined` when it was cancelled before that
 * @throws what making or writing throws, unless it was cancelled before it was written
 */
export async function carryOut<Made>(
  token: Cancellable,
  make: () => Promise<Made>,
  write: (made: Made) => Promise<void>,
): Promise<Made | undefined> {
  let made: Made;
  try {
    made = await make();
  } catch (error) {
    if (token.isCancellationRequested) return undefined;
    throw error;
  }
  if (token.isCancellationRequested) return undefined;
  await write(made);
  return made;
}
