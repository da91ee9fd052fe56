/** Where the learner is, kept in the address behind `#` so that the page works from any folder and the back button does what it says. */

export type Route =
  | { readonly page: 'course' }
  | { readonly page: 'bench'; readonly scenarioId: string }
  | { readonly page: 'report'; readonly runId: string };

const ID = /^[a-z0-9][a-z0-9-]{0,80}$/i;

export function readRoute(hash: string): Route {
  const [page, id] = hash.replace(/^#\/?/, '').split('/');
  if (page === 'bench' && id !== undefined && ID.test(id)) return { page, scenarioId: id };
  if (page === 'report' && id !== undefined && ID.test(id)) return { page, runId: id };
  return { page: 'course' };
}

export function routeHash(route: Route): string {
  if (route.page === 'bench') return `#/bench/${route.scenarioId}`;
  if (route.page === 'report') return `#/report/${route.runId}`;
  return '#/course';
}
