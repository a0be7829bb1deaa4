/** How many tests passed and failed, over all steps of a test run. */

export interface Totals {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
}

export const none: Totals = { passed: 0, failed: 0, skipped: 0 };

export const sum = (a: Totals, b: Totals): Totals => ({
  passed: a.passed + b.passed,
  failed: a.failed + b.failed,
  skipped: a.skipped + b.skipped,
});

/**
 * The totals of one vitest step from its JSON report.
 * @param report the report's text, or null when the step wrote none.
 * @param ended the exit code of the step. A step that failed without a failed test (a file that does not
 *   load, no test found, a crash) counts as one failure, so that it can't pass unnoticed.
 */
export function totalsOf(report: string | null, ended: number | null): Totals {
  const { numPassedTests = 0, numFailedTests = 0, numPendingTests = 0, numTodoTests = 0 } = read(report);
  const unexplained = ended !== 0 && numFailedTests === 0 ? 1 : 0;
  return {
    passed: numPassedTests,
    failed: numFailedTests + unexplained,
    skipped: numPendingTests + numTodoTests,
  };
}

/** The closing line that tools read. */
export const closingLine = ({ passed, failed, skipped }: Totals): string =>
  `${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`;

type Counts = Partial<
  Record<'numPassedTests' | 'numFailedTests' | 'numPendingTests' | 'numTodoTests', number>
>;

function read(report: string | null): Counts {
  if (report === null) return {};
  try {
    return JSON.parse(report) as Counts;
  } catch {
    // Cut off by a crash: the exit code tells the rest.
    return {};
  }
}
