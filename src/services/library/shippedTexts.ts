/** The texts of the receivers and scenarios that come with the page, each in a piece of its own that is fetched when it is asked for. */

const TEXTS = import.meta.glob<string>(
  ['../../../scenarios/*/*.json', '../../../scenarios/receivers/*/*', '!../../../scenarios/schema/*'],
  { query: '?raw', import: 'default' },
);

/** Paths of all of them, as the bundler has them. */
export const SHIPPED_PATHS: readonly string[] = Object.keys(TEXTS);

/** Ids of the receivers among them. */
export const SHIPPED_RECEIVERS: ReadonlySet<string> = new Set(
  SHIPPED_PATHS.flatMap((path) => /\/receivers\/([^/]+)\//.exec(path)?.[1] ?? []),
);

export interface ShippedText {
  readonly file: string;
  readonly text: string;
}

/** The text whose path ends so; null: there is none. Rejects when it cannot be fetched. */
export async function shippedText(ending: string): Promise<ShippedText | null> {
  const file = SHIPPED_PATHS.find((path) => path.endsWith(ending));
  return file === undefined ? null : { file, text: await TEXTS[file]!() };
}

/** All texts of a folder, fetched at a time. */
export function shippedFolderTexts(folder: string): Promise<readonly ShippedText[]> {
  const files = SHIPPED_PATHS.filter((path) => path.includes(`${folder}/`));
  return Promise.all(files.map(async (file) => ({ file, text: await TEXTS[file]!() })));
}
