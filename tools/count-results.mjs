/**
 * Passed and failed, counted from a test runner's own JSON report. Nothing that went wrong may count as nothing: a file that
 * could not be loaded, a runner that crashed or found no test, an error outside every test each count as one failed.
 */
export function countResults(report, exitCode) {
  const counts = { passed: 0, failed: 0, skipped: 0 };
  for (const file of report?.testResults ?? []) {
    const statuses = file.assertionResults.map((result) => result.status);
    for (const status of statuses) {
      if (status === 'passed') counts.passed += 1;
      else if (status === 'failed') counts.failed += 1;
      else counts.skipped += 1;
    }
    if (file.status === 'failed' && !statuses.includes('failed')) counts.failed += 1;
  }
  const ranNothing = counts.passed + counts.failed === 0;
  const brokeOutside = exitCode !== 0 && counts.failed === 0;
  if (ranNothing || brokeOutside) counts.failed += 1;
  return counts;
}
