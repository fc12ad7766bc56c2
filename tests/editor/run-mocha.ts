/** Before a line of JSON with the numbers of a mocha run, for the runner of all tests. */
const resultMark = 'MOCHA-RESULT ';

/**
 * Runs the suites that were loaded, prints what they did and their numbers.
 * @returns settles when all passed; rejects when one failed or when there was none
 */
export async function runMocha(mocha: Mocha | BrowserMocha): Promise<void> {
  const { passed, failed } = await new Promise<{ passed: number; failed: number }>((resolve) => {
    let passed = 0;
    const runner = mocha.run((failed) => resolve({ passed, failed }));
    runner.on('pass', () => (passed += 1));
  });
  console.log(resultMark + JSON.stringify({ passed, failed }));
  if (failed > 0) throw new Error(`${failed} tests failed`);
  if (passed === 0) throw new Error('No test ran.');
}
