/** Names by chance, also where the browser gives the page only what it gives to pages that came over plain http. Source of the form: RFC 9562, section 5.4. */
import { readFileSync } from 'node:fs';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { freshId } from '../../src/services/store/freshId.ts';
import { projectFiles } from '../projectFiles.ts';

afterEach(() => vi.unstubAllGlobals());

describe('a fresh name', () => {
  it('has the form of a version 4 UUID, and no two are alike', () => {
    const names = Array.from({ length: 1000 }, freshId);
    for (const name of names)
      expect(name).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
    expect(new Set(names).size).toBe(1000);
  });

  it('sets the four bits of the version and the two of the variant, and leaves the rest to chance', () => {
    const fill = (value: number) => ({ getRandomValues: (bytes: Uint8Array) => bytes.fill(value) });
    vi.stubGlobal('crypto', fill(0xff));
    expect(freshId()).toBe('ffffffff-ffff-4fff-bfff-ffffffffffff');
    vi.stubGlobal('crypto', fill(0));
    expect(freshId()).toBe('00000000-0000-4000-8000-000000000000');
  });

  it('is what every part of the page asks for: the browser’s own is missing over plain http', () => {
    const sources = projectFiles().filter((file) => /^src\/.*\.tsx?$/.test(file));
    expect(sources.length).toBeGreaterThan(50);
    expect(sources.filter((file) => readFileSync(file, 'utf8').includes('randomUUID'))).toEqual([]);
  });
});
