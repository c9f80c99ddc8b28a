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

/** What became of a file: its own error, or that of a test. Only the first line, without the colours of a terminal. */
const firstLine = (text = '') => text.replace(/\u001b\[[0-9;]*m/g, '').split('\n')[0];

/**
 * A line for each test that failed, with its file and the first line of its error, and for each that passed only when it was
 * tried again: the end of a log is what is kept of it, and it should say what to look for.
 */
export function remarksOn(report, root) {
  const remarks = [];
  for (const file of report?.testResults ?? []) {
    const path = (file.name ?? '').replace(root, '');
    const failed = file.assertionResults.filter(({ status }) => status === 'failed');
    for (const { fullName, failureMessages } of failed) {
      remarks.push(`FAILED ${path}: ${fullName}: ${firstLine(failureMessages?.[0])}`);
    }
    if (file.status === 'failed' && failed.length === 0)
      remarks.push(`FAILED ${path}: ${firstLine(file.message)}`);
    for (const { fullName, status, failureMessages, meta } of file.assertionResults) {
      if (status !== 'passed' || !(meta?.triedAgain > 0)) continue;
      remarks.push(`passed only when tried again: ${path}: ${fullName}: ${firstLine(failureMessages?.[0])}`);
    }
  }
  return remarks;
}
