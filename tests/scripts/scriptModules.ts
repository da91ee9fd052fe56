/** The plain scripts of scripts/, with the types that they cannot carry themselves. */
export interface ServeModule {
  serve(root: string, port?: number): Promise<{ readonly port: number; readonly url: string; close(): Promise<void> }>;
}

export interface BrowserModule {
  findBrowser(): Promise<string | null>;
  readonly BROWSER_ARGS: string[];
}

export interface InstallModule {
  nodeProblem(version?: string): string | null;
  missingPackages(project?: string): string[];
}

export interface BuildModule {
  sourcesPrint(project?: string): string;
}

export interface Counts {
  readonly passed: number;
  readonly failed: number;
  readonly skipped: number;
  /** tests that failed once and then passed */
  readonly second?: readonly string[];
}

export interface TestCountsModule {
  vitestCounts(report: unknown): Counts | null;
  playwrightCounts(report: unknown): Counts | null;
}

export async function script<T>(name: string): Promise<T> {
  return (await import(new URL(`../../scripts/${name}`, import.meta.url).href)) as T;
}
