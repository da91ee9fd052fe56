/** Where problems stand in a text, and how little of a text made to do harm is looked at for it. Source: the house's own promises; common practice, no source for the harm. */
import { afterEach, describe, expect, it, vi } from 'vitest';
import type { Problem } from '../../src/base/result.ts';
import { withTextPlaces } from '../../src/files/textPlaces.ts';

const at = (place: string): Problem => ({ file: 'a.json', place, found: ['nothing'], wanted: ['digit'] });
const lines = (text: string, ...places: readonly string[]) =>
  withTextPlaces(places.map(at), 'a.json', text).map(({ place, at: spot }) => `${place} ${spot?.line}:${spot?.column}`);

afterEach(() => vi.restoreAllMocks());

describe('the place of a problem', () => {
  it('is found wherever it stands, a missing one at the nearest thing that is there', () => {
    const text = '{"a": [1,\n {"b": 2, "b": 3}],\n "c": "x"}';
    expect(lines(text, '/a/0', '/a/1/b', '/c')).toEqual(['/a/0 1:8', '/a/1/b 2:8', '/c 3:7']);
    expect(lines(text, '/a/1/d', '/e')).toEqual(['/e 1:1', '/a/1/d 2:2']);
    expect(lines(text, '/c', '/a/1')).toEqual(['/a/1 2:2', '/c 3:7']);
  });

  it('costs no walk through what comes after the last', () => {
    const count = 100_000;
    const text = `{"events":[${'0,'.repeat(count)}0]}`;
    const looks = vi.spyOn(RegExp.prototype, 'exec');
    expect(lines(text, '/events/0', '/events/2')).toEqual(['/events/0 1:12', '/events/2 1:16']);
    expect(looks.mock.calls.length).toBeLessThan(40);
  });
});
