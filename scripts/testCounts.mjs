/** Reads how many tests passed and failed from the reports of the two test runners. A skipped test has proved nothing: it counts as failed. */

/** From vitest's JSON report; a file that could not even be loaded counts as one failure. */
export function vitestCounts(report) {
  if (report === null) return null;
  const broken = report.testResults.filter(
    (file) => file.status === 'failed' && file.assertionResults.length === 0,
  ).length;
  const skipped = (report.numPendingTests ?? 0) + (report.numTodoTests ?? 0);
  return { passed: report.numPassedTests, failed: report.numFailedTests + broken + skipped, skipped };
}

/** From playwright's JSON report; errors outside any test count one by one. `second` names the tests that failed once and then passed. */
export function playwrightCounts(report) {
  if (report === null) return null;
  const { expected, unexpected, flaky, skipped } = report.stats;
  const failed = unexpected + skipped + report.errors.length;
  return { passed: expected + flaky, failed, skipped, second: report.suites.flatMap((suite) => secondGo(suite, [])) };
}

/** A file holds its tests and its groups, each with a title. */
function secondGo({ title, specs = [], suites = [] }, above) {
  const path = [...above, title];
  const here = specs.flatMap((spec) =>
    spec.tests
      .filter(({ status }) => status === 'flaky')
      .map(({ projectName }) => `${[...path, spec.title].join(', ')} (${projectName})`),
  );
  return [...here, ...suites.flatMap((suite) => secondGo(suite, path))];
}
