/** Where the learner is, kept in the address behind `#` so that the page works from any folder and the back button does what it says. */

import { handbookHash } from '../present/handbook/address.ts';
import { PAPERS, type PaperId, papersHash } from '../present/papersAddress.ts';
import type { WorkshopPlace } from '../rooms/workshop/places.ts';

export type Route =
  | { readonly page: 'course' }
  /** a scenario that came in the address itself */
  | { readonly page: 'open'; readonly data: string }
  /** by the first signs of its hash */
  | { readonly page: 'exam'; readonly exam: string }
  /** null: whichever comes next; series: the seed of its looks, where the address names one */
  | { readonly page: 'drills'; readonly drill: string | null; readonly series: string | null }
  /** null: its contents */
  | { readonly page: 'handbook'; readonly pageId: string | null }
  /** guided: with the guide through a first bench */
  | { readonly page: 'bench'; readonly scenarioId: string; readonly guided?: true }
  /** null: its desk for scenarios; on: where a draft is begun on that receiver */
  | { readonly page: 'workshop'; readonly place: WorkshopPlace | null; readonly on?: string }
  /** the technician does it, and somebody watches */
  | { readonly page: 'shown'; readonly scenarioId: string }
  /** papers to print, of a job; null: of the first of the course */
  | { readonly page: 'papers'; readonly scenarioId: string | null; readonly paper: PaperId }
  /** a number: the report of that file of the class; null: the list */
  | { readonly page: 'class'; readonly fileNo: number | null }
  | { readonly page: 'report'; readonly runId: string };

const ID = /^[a-z0-9][a-z0-9-]{0,80}$/i;

const GUIDED = 'guided';
const SHOWN = 'shown';
const BEGIN_ON = 'on';

export function readRoute(hash: string): Route {
  // What a link brings is looked at by those who unpack it, whatever it is.
  const link = /^#\/?open\/(.*)$/s.exec(hash);
  if (link !== null) return { page: 'open', data: link[1]! };
  const [page, id, more] = hash.replace(/^#\/?/, '').split('/');
  if (page === 'bench' && id !== undefined && ID.test(id) && more === SHOWN) return { page: 'shown', scenarioId: id };
  if (page === 'bench' && id !== undefined && ID.test(id))
    return more === GUIDED ? { page, scenarioId: id, guided: true } : { page, scenarioId: id };
  if (page === 'report' && id !== undefined && ID.test(id)) return { page, runId: id };
  if (page === 'papers') return { page, scenarioId: named(id), paper: PAPERS.find((one) => one === more) ?? 'sheet' };
  if (page === 'exam' && id !== undefined && /^[0-9a-f]{16}$/.test(id)) return { page, exam: id };
  if (page === 'drills') return { page, drill: named(id), series: named(id) === null ? null : named(more) };
  if (page === 'workshop' && id === BEGIN_ON && more !== undefined && ID.test(more))
    return { page, place: null, on: more };
  if (page === 'workshop') return { page, place: id === 'receiver' || id === 'evening' ? id : null };
  if (page === 'class' && (id === undefined || id === '')) return { page, fileNo: null };
  if (page === 'class' && id !== undefined && /^[1-9]\d{0,5}$/.test(id)) return { page, fileNo: Number(id) };
  if (page === 'handbook' && (id === undefined || id === '')) return { page, pageId: null };
  if (page === 'handbook' && id !== undefined && ID.test(id)) return { page, pageId: id };
  return { page: 'course' };
}

const named = (part: string | undefined): string | null => (part !== undefined && ID.test(part) ? part : null);

export function routeHash(route: Route): string {
  if (route.page === 'exam') return `#/exam/${route.exam}`;
  if (route.page === 'open') return `#/open/${route.data}`;
  if (route.page === 'bench') return `#/bench/${route.scenarioId}${route.guided ? `/${GUIDED}` : ''}`;
  if (route.page === 'shown') return `#/bench/${route.scenarioId}/${SHOWN}`;
  if (route.page === 'papers') return papersHash(route.scenarioId, route.paper);
  if (route.page === 'report') return `#/report/${route.runId}`;
  if (route.page === 'drills') return ['#/drills', route.drill, route.series].filter((part) => part !== null).join('/');
  if (route.page === 'workshop' && route.on !== undefined) return `#/workshop/${BEGIN_ON}/${route.on}`;
  if (route.page === 'workshop') return ['#/workshop', route.place].filter((part) => part !== null).join('/');
  if (route.page === 'class') return route.fileNo === null ? '#/class' : `#/class/${route.fileNo}`;
  if (route.page === 'handbook') return handbookHash(route.pageId);
  return '#/course';
}
