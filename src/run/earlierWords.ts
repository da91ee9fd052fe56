/**
 * Receivers whose sheet, and scenarios whose texts, once had other words. A run file names its receiver by a hash of all that stands in its file; where only words have changed since, what the run earns is
 * the same to the last digit, and the file is judged like any other. Each line is such a hash of before, with the hash of what that receiver did: while the one of today does
 * the same the line holds, and once a value changes it holds no more by itself.
 */

import type { BenchSetup } from '../bench/setup.ts';
import { hashOf } from '../files/hash.ts';

type Design = Pick<BenchSetup, 'receiver' | 'deck'>;

export type EarlierWords = readonly (readonly [hash: string, does: string])[];

export const EARLIER_WORDS: EarlierWords = [
  [
    '1d69e24f5b0a4b411c759cb5766a92a9615d401f0108b4c6c72b86deeeb5354c',
    'b347d7187097e5064adc328a95db77cc10cb2ba8e2fda326d612ed3034c6643e',
  ],
  [
    'e89a57744330bccef5269a877561ba3404fb13071c4108a890845c8f26015ec3',
    '8e6cc8d9b8d331ef6f16d6087fa11787549eceb67780ad78a1d6af03a58a8d87',
  ],
  [
    '6b14fc2290ecf4cde3a31b0270eab7027db322d1cf6299da758f72de4e425326',
    'd7f4ae86cc4d85a67dd11cf6018828f9f20616ce595dd8ad3dca5c80ec2b63dc',
  ],
  [
    'ace49558da1ec0805d32d74ef9b47750720e7792dd9a704c48204f16756fd8da',
    'd53cbb8f8f8b48f730c8ca45ab8027d45611f0642c4b1fc5d89ef4f3ad45431d',
  ],
  [
    '37f1adad027e365509c9c8c8717e0f8f14d342a9b884c54b0d045b05d188531b',
    'c8a5008bb682df5074e04ffd006a9d201a6258c0dc35a446e07204593d7cec0e',
  ],
  [
    '51105b9166cf5b493f01129c3b26edfb4bbcf5125d4e3ff083b17342b834451c',
    'e52970eca13dc5b38d7df2d01eac969de7269c58dfd97270b11c2f535e7f868a',
  ],
  [
    '14c10ab6fd9126131ea88c2f9f94a908d6ac7d0adc39973494879a0f476f3ff8',
    '6f8cf0a5041f6378286877de31adbd8475276ade44e717cc18413897e33961fb',
  ],
  [
    '4e8587198ab4ba389fd1d0d88a5c8b7dde8171a95fadf2380247455524916dbf',
    'c05c665c47fa7aceeae404ca3d87d7180f5029bb2b66d2f88037ab22c04450f6',
  ],
  // Before its sheet asked for the slow sweep (`earlierSheet.ts`).
  [
    'd23d7f8855c5a534c1e1912c196df437eefae29c0d4142652f0bc9b1228caa38',
    'c05c665c47fa7aceeae404ca3d87d7180f5029bb2b66d2f88037ab22c04450f6',
  ],
  [
    'cb11b1aaec875a56a36dd720585ee9045688bb3d49ad4574ad3022b26faf929e',
    '3db3a2972047ed0596e33e5788dd807483cdafe105d1d7b367f7d2bd8ffe7c77',
  ],
  [
    '39e948c6ebd2458187329836df0dfdc68cf1e6aae663eff64b5ac39fc4bb7c79',
    '6324ef49e3dd3442fe6dff2cacbf4faa01199a436b4f35a43fdfb94328ba7404',
  ],
  [
    'd3e0a51c5f5c03ff8bbe2d0200ad87e144a6595e46c10e2555e08f954f35c9d1',
    '316e3c01f68f7f2346d9eb283e19d445a5c046a0ceda5c934c1ef93d1ad9de66',
  ],
  [
    '5550d9799766459070176b865dd2e98f0c895613f9bd272774e0f3e69a399fe4',
    '970ba76bf1b7fec46979bcb86f5dad601ff61c75c47d5440ea3b990a31adcf8f',
  ],
  [
    '0a0ca6bc284e7b759e4d559f8320c0c90383b6c74a2b4c188b67537fdb7a710c',
    'ac9df3a6537b9e3310ead8e8e5178d653278332798d16eca7c6770343e03146e',
  ],
];

/** The hash of a receiver without its words: of two that have the same every run earns the same. */
export function doesHash({ receiver, deck }: Design): string {
  const {
    setName,
    title,
    description,
    language,
    translations,
    adjusters,
    testPoints,
    responses,
    procedure,
    cautions,
    ...rest
  } = receiver;
  const wordless = {
    ...rest,
    adjusters: adjusters.map(({ label: _, does: __, ...adjuster }) => adjuster),
    testPoints: testPoints.map(({ label: _, note: __, ...point }) => point),
    responses: responses.map(({ title: _, ...response }) => response),
    // The bench asks a procedure for its points alone, and the cautions whether there are any.
    sweptFrom: [...new Set(procedure.flatMap(({ at }) => (at === undefined ? [] : [at])))].sort(),
    cautioned: cautions.length > 0,
  };
  return hashOf({ receiver: wordless, deck });
}

/** A receiver of before is today's but for its words. */
export function onlyWordsDiffer(hash: string, design: Design, table: EarlierWords = EARLIER_WORDS): boolean {
  return table.some(([before, does]) => before === hash && does === doesHash(design));
}

/**
 * Scenarios of which only words have changed since: the hash of before beside that of today. A run carries its own scenario, and what it earns is the same. Once anything else changes
 * the second hash is nobody's, and the line holds no more by itself.
 */
export type EarlierTexts = readonly (readonly [before: string, today: string])[];

export const EARLIER_TEXTS: EarlierTexts = [
  // Hints named the level as a setting of the source where the sheet names volts.
  [
    '87a59c13c833761945bcef180e7f1dec6ef4c63814f33ecc312d85a2adb9aa50',
    'b4c792601d8cd6a98b9d4f26224122b06d7931c579e26e1291bcbcdc24c8206a',
  ],
  [
    'a4869ef63c1cffcfe1e83b60741240fe855e2cfd7148c0cbb15adc39e27a120d',
    '971201609741ffca35078820741a8e302df320405f08516748186a4bba831dcd',
  ],
  [
    '9aea70305838f70e46739111b602b5a334183ea2af3f8ded4622f3b4d961e3b6',
    'b3dd87f8d1cfb13c499cefd4485399deec35326ff8bb42227a2a264267e542fc',
  ],
];

/** A scenario of before is today's but for its words. */
export function onlyTextsDiffer(before: string, today: string, table: EarlierTexts = EARLIER_TEXTS): boolean {
  return table.some(([first, now]) => first === before && now === today);
}
